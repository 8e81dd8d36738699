use super::steps::Step;
use super::*;
use std::fs;

const NAMES: [&str; 2] = ["a.csv", "b.csv"];

fn documents(text: &str) -> Vec<Document> {
    NAMES.map(|name| Document { name, bytes: format!("{text} {name}").into_bytes() }).to_vec()
}

fn open(folder: &Path) -> Result<OutputFolder, OutputError> {
    OutputFolder::open(folder, &NAMES, &[], Interrupt::none())
}

fn report(folder: &Path, text: &str) {
    open(folder).unwrap().replace(&documents(text)).unwrap();
}

fn entries(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries.map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

fn read(folder: &Path, name: &str) -> String {
    fs::read_to_string(folder.join(name)).unwrap()
}

/// The report that stands there whole, by the word its files begin with.
fn whole(folder: &Path) -> Option<String> {
    let manifest = Manifest::read(folder)?;
    let ours = |name: &&str| manifest::whose(Some(&manifest), folder, name) == Whose::Ours;
    let word = |name: &str| read(folder, name).split(' ').next().map(str::to_owned);
    NAMES.iter().all(ours).then(|| word("a.csv")).flatten().filter(|w| word("b.csv").as_ref() == Some(w))
}

#[test]
fn a_new_folder_appears_whole_with_the_folders_above_it() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("deep/er");
    let folder = open(&wanted).unwrap();
    assert!(!wanted.exists(), "nothing is there before all is complete");
    folder.replace(&documents("new")).unwrap();
    assert_eq!(entries(&wanted), ["a.csv", "b.csv", MANIFEST]);
    assert_eq!(entries(place.path()), ["deep"], "no workplace is left");
}

#[test]
fn folders_written_at_once_may_share_a_folder_that_is_not_there_yet() {
    let place = tempfile::tempdir().unwrap();
    let wanted = ["deep/er/1", "deep/er/2", "deep/other"].map(|name| place.path().join(name));
    let folders = wanted.each_ref().map(|wanted| open(wanted).unwrap());
    folders.into_iter().for_each(|folder| folder.replace(&documents("new")).unwrap());
    assert!(wanted.iter().all(|wanted| whole(wanted).as_deref() == Some("new")));
    assert_eq!(entries(place.path()), ["deep"], "no workplace is left");
}

#[test]
fn what_heapcast_wrote_is_replaced_and_what_it_did_not_write_stays() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    fs::write(wanted.join("mine.txt"), "keep").unwrap();
    report(&wanted, "new");
    assert_eq!(whole(&wanted).as_deref(), Some("new"));
    assert_eq!(entries(&wanted), ["a.csv", "b.csv", MANIFEST, "mine.txt"]);
    assert_eq!(read(&wanted, "mine.txt"), "keep");
    assert_eq!(entries(place.path()), ["out"]);
}

#[test]
fn a_file_of_ours_that_is_not_written_again_does_not_stay_behind() {
    let place = tempfile::tempdir().unwrap();
    for others in [false, true] {
        let wanted = place.path().join(format!("out {others}"));
        report(&wanted, "old");
        if others {
            fs::write(wanted.join("mine.txt"), "keep").unwrap();
        }
        open(&wanted).unwrap().replace(&documents("new")[..1]).unwrap();
        assert!(!wanted.join("b.csv").exists() && wanted.join("mine.txt").exists() == others);
    }
}

#[test]
fn a_file_that_is_not_in_the_manifest_is_refused_with_a_folder_that_is_free() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    fs::create_dir(&wanted).unwrap();
    fs::create_dir(place.path().join("out-2")).unwrap();
    fs::write(wanted.join("b.csv"), "measured by hand").unwrap();
    let error = open(&wanted).err().unwrap();
    assert!(matches!(&error, OutputError::NotOurs { file, .. } if file.ends_with("b.csv")), "{error}");
    assert!(error.is_asked_wrongly() && error.to_string().contains("out-3"), "{error}");
    assert_eq!((read(&wanted, "b.csv").as_str(), entries(place.path()).len()), ("measured by hand", 2));
}

#[test]
fn a_file_changed_since_is_refused_even_where_it_would_only_be_removed() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    fs::write(wanted.join("b.csv"), "old b.csv, and a note of mine").unwrap();
    for names in [&NAMES[..], &NAMES[..1]] {
        let error = OutputFolder::open(&wanted, names, &[], Interrupt::none()).err().unwrap();
        assert!(matches!(&error, OutputError::Changed { file, .. } if file.ends_with("b.csv")), "{error}");
    }
    assert_eq!(read(&wanted, "b.csv"), "old b.csv, and a note of mine");
}

#[test]
fn a_file_changed_while_the_runs_are_made_is_refused_at_the_end() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    let folder = open(&wanted).unwrap();
    fs::write(wanted.join("a.csv"), "mine").unwrap();
    assert!(matches!(folder.replace(&documents("new")), Err(OutputError::Changed { .. })));
    assert_eq!((read(&wanted, "a.csv").as_str(), read(&wanted, "b.csv").as_str()), ("mine", "old b.csv"));
    assert_eq!(entries(place.path()), ["out"]);
}

#[test]
fn an_input_is_never_an_output() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    let input = wanted.join("../out/b.csv");
    let result = OutputFolder::open(&wanted, &NAMES, &[input], Interrupt::none());
    assert!(matches!(result.err(), Some(OutputError::Input { file, .. }) if file.ends_with("b.csv")));
}

#[cfg(unix)]
#[test]
fn an_input_is_found_behind_links_on_either_side() {
    use std::os::unix::fs::symlink;
    let place = tempfile::tempdir().unwrap();
    let (wanted, job) = (place.path().join("out"), place.path().join("job.toml"));
    report(&wanted, "old");
    symlink(wanted.join("a.csv"), &job).unwrap();
    symlink(&wanted, place.path().join("link")).unwrap();
    for folder in [&wanted, &place.path().join("link")] {
        let result = OutputFolder::open(folder, &NAMES, std::slice::from_ref(&job), Interrupt::none());
        assert!(matches!(result.err(), Some(OutputError::Input { .. })));
    }
    fs::write(place.path().join("typed.toml"), "").unwrap();
    fs::remove_file(wanted.join("b.csv")).unwrap();
    symlink(place.path().join("typed.toml"), wanted.join("b.csv")).unwrap();
    let inputs = [place.path().join("typed.toml")];
    let result = OutputFolder::open(&wanted, &NAMES, &inputs, Interrupt::none());
    assert!(matches!(result.err(), Some(OutputError::Input { .. })));
}

#[test]
fn a_second_writer_is_refused_and_harms_nothing() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    for _ in 0..2 {
        let first = open(&wanted).unwrap();
        assert!(matches!(open(&wanted), Err(OutputError::Busy(_))));
        first.replace(&documents("first")).unwrap();
        assert_eq!(whole(&wanted).as_deref(), Some("first"));
    }
    report(&wanted, "second");
    assert_eq!(entries(place.path()), ["out"]);
}

/// Stops after every number of steps, as a kill would, and tells what stands there then and after the next look.
fn stopped_after_each_step(prepare: impl Fn(&Path), check: impl Fn(&Path, usize, bool)) -> usize {
    let mut after = 0;
    loop {
        let place = tempfile::tempdir().unwrap();
        let wanted = place.path().join("out");
        prepare(&wanted);
        let mut folder = open(&wanted).unwrap();
        let (documents, old) = (documents("new"), Manifest::read(folder.place.folder()));
        let manifest = Manifest::of(&documents);
        let staged = Replacement::stage(&folder.place, &folder.workplace, &documents, &manifest, old);
        let replacement = staged.map_err(|(name, error)| format!("{name}: {error}")).unwrap();
        let steps = replacement.steps();
        steps.iter().take(after).for_each(|step| replacement.take(step).unwrap());
        folder.workplace.abandon();
        drop(folder);
        check(&wanted, after, true);
        drop(open(&wanted).unwrap());
        check(&wanted, after, false);
        let rest = if wanted.exists() { vec!["out"] } else { vec![] };
        assert_eq!(entries(place.path()), rest, "after {after} steps nothing is left behind");
        report(&wanted, "newest");
        assert_eq!(whole(&wanted).as_deref(), Some("newest"));
        if after == steps.len() {
            return after;
        }
        after += 1;
    }
}

#[test]
fn a_kill_at_any_step_leaves_a_folder_of_ours_old_or_new_at_every_moment() {
    let steps = stopped_after_each_step(
        |wanted| report(wanted, "old"),
        |wanted, after, _| {
            assert_eq!(whole(wanted).as_deref(), Some(if after == 0 { "old" } else { "new" }));
        },
    );
    if cfg!(target_os = "linux") {
        assert_eq!(steps, 1, "the folders change places in one step");
    }
}

#[test]
fn a_kill_at_any_step_leaves_a_new_folder_whole_or_unseen() {
    let steps = stopped_after_each_step(
        |_| {},
        |wanted, after, _| assert_eq!(whole(wanted).as_deref(), (after > 0).then_some("new")),
    );
    assert_eq!(steps, 1);
}

#[test]
fn a_kill_at_any_step_in_a_folder_with_other_files_is_put_right_by_the_next_run() {
    let prepare = |wanted: &Path| {
        report(wanted, "old");
        fs::write(wanted.join("mine.txt"), "keep").unwrap();
    };
    let steps = stopped_after_each_step(prepare, |wanted, after, before_the_next_run| {
        assert_eq!(read(wanted, "mine.txt"), "keep");
        if !before_the_next_run {
            // A journal, three moved aside, three moved in, the journal removed.
            assert_eq!(
                whole(wanted).as_deref(),
                Some(if after < 8 { "old" } else { "new" }),
                "after {after}"
            );
        }
    });
    assert_eq!(steps, 8);
}

#[test]
fn a_kill_at_any_step_in_a_folder_that_had_no_report_leaves_it_as_it_was() {
    let prepare = |wanted: &Path| {
        fs::create_dir(wanted).unwrap();
        fs::write(wanted.join("mine.txt"), "keep").unwrap();
    };
    let steps = stopped_after_each_step(prepare, |wanted, after, before_the_next_run| {
        if !before_the_next_run {
            let all: &[&str] =
                if after < 5 { &["mine.txt"] } else { &["a.csv", "b.csv", MANIFEST, "mine.txt"] };
            assert_eq!(entries(wanted), all, "after {after}");
        }
    });
    assert_eq!(steps, 5);
}

#[test]
fn a_step_that_fails_is_undone() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    fs::write(wanted.join("mine.txt"), "keep").unwrap();
    let folder = open(&wanted).unwrap();
    let (documents, old) = (documents("new"), Manifest::read(&wanted));
    let manifest = Manifest::of(&documents);
    let staged = Replacement::stage(&folder.place, &folder.workplace, &documents, &manifest, old);
    let replacement = staged.map_err(|(name, _)| name).unwrap();
    // The new b.csv is lost on the way: everything goes well up to it.
    fs::remove_file(folder.workplace.path().join("new/b.csv")).unwrap();
    let (name, _) = replacement.carry_out().unwrap_err();
    assert_eq!(name, "b.csv");
    restore::restore(&folder.place, folder.workplace.path()).unwrap();
    drop(folder);
    assert_eq!(whole(&wanted).as_deref(), Some("old"));
    assert_eq!((entries(place.path()), entries(&wanted).len()), (vec!["out".to_owned()], 4));
}

#[test]
fn a_file_somebody_made_while_the_folder_was_half_replaced_is_kept_beside_the_old_one() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    fs::write(wanted.join("mine.txt"), "keep").unwrap();
    let mut folder = open(&wanted).unwrap();
    let (documents, old) = (documents("new"), Manifest::read(&wanted));
    let manifest = Manifest::of(&documents);
    let staged = Replacement::stage(&folder.place, &folder.workplace, &documents, &manifest, old);
    let replacement = staged.map_err(|(name, _)| name).unwrap();
    let until = replacement.steps().iter().position(|step| matches!(step, Step::MoveIn(_))).unwrap();
    replacement.steps().iter().take(until).for_each(|step| replacement.take(step).unwrap());
    folder.workplace.abandon();
    drop(folder);
    fs::write(wanted.join("a.csv"), "made meanwhile").unwrap();
    assert!(matches!(open(&wanted), Err(OutputError::Changed { .. })));
    assert_eq!(read(&wanted, "a.csv"), "made meanwhile");
    assert_eq!(read(&wanted, "a.csv.kept"), "old a.csv");
}

#[test]
fn a_note_that_was_put_into_the_old_folder_at_the_last_moment_comes_back() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("out");
    report(&wanted, "old");
    let folder = open(&wanted).unwrap();
    let (documents, old) = (documents("new"), Manifest::read(&wanted));
    let manifest = Manifest::of(&documents);
    let staged = Replacement::stage(&folder.place, &folder.workplace, &documents, &manifest, old);
    let replacement = staged.map_err(|(name, _)| name).unwrap();
    fs::write(wanted.join("note.txt"), "just now").unwrap();
    replacement.carry_out().unwrap();
    drop(folder);
    assert_eq!(whole(&wanted).as_deref(), Some("new"));
    assert_eq!(read(&wanted, "note.txt"), "just now");
    assert_eq!(entries(place.path()), ["out"]);
}

#[test]
fn a_journal_that_leads_out_of_the_folder_is_not_followed() {
    let place = tempfile::tempdir().unwrap();
    let (wanted, victim) = (place.path().join("out"), place.path().join("victim.txt"));
    fs::create_dir_all(&wanted).unwrap();
    fs::write(&victim, "keep").unwrap();
    let hash = manifest::hash_of(&victim).unwrap();
    let workplace = place.path().join(".heapcast-out");
    fs::create_dir(&workplace).unwrap();
    fs::write(workplace.join("journal.json"), format!("{{\"files\":[[\"../victim.txt\",\"{hash}\"]]}}"))
        .unwrap();
    assert!(matches!(open(&wanted), Err(OutputError::NotRestored { .. })));
    assert_eq!(fs::read_to_string(victim).unwrap(), "keep");
}

#[test]
fn a_folder_that_only_looks_like_a_workplace_is_left_alone() {
    let place = tempfile::tempdir().unwrap();
    fs::create_dir_all(place.path().join(".heapcast-out/photos")).unwrap();
    assert!(matches!(open(&place.path().join("out")), Err(OutputError::InTheWay(_))));
    assert!(place.path().join(".heapcast-out/photos").is_dir());
}

#[cfg(unix)]
#[test]
fn the_modes_of_a_private_folder_and_its_files_are_kept() {
    use std::os::unix::fs::PermissionsExt;
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    let set = |path: &Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    for others in [false, true] {
        let place = tempfile::tempdir().unwrap();
        let wanted = place.path().join("out");
        open(&wanted).unwrap().replace(&documents("old")[..1]).unwrap();
        if others {
            fs::write(wanted.join("mine.txt"), "keep").unwrap();
        }
        set(&wanted, 0o700);
        set(&wanted.join("a.csv"), 0o640);
        report(&wanted, "new");
        assert_eq!((mode(&wanted), mode(&wanted.join("a.csv"))), (0o700, 0o640));
        assert_eq!(mode(&wanted.join("b.csv")), 0o600, "no more open than the folder");
    }
}

#[cfg(unix)]
#[test]
fn a_link_to_a_folder_stays_a_link() {
    let place = tempfile::tempdir().unwrap();
    let (real, link) = (place.path().join("real"), place.path().join("link"));
    report(&real, "old");
    std::os::unix::fs::symlink(&real, &link).unwrap();
    report(&link, "new");
    assert!(link.symlink_metadata().unwrap().is_symlink());
    assert_eq!(whole(&real).as_deref(), Some("new"));
    fs::remove_file(&link).unwrap();
    std::os::unix::fs::symlink(place.path().join("nowhere"), &link).unwrap();
    assert!(matches!(open(&link), Err(OutputError::NotAFolder(_))));
}

#[test]
fn a_file_in_place_of_the_folder_is_found_out_before_the_work() {
    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("report");
    fs::write(&file, "").unwrap();
    assert!(matches!(open(&file), Err(OutputError::NotAFolder(_))));
    assert!(matches!(open(&file.join("below")), Err(OutputError::NotAFolder(_))));
    assert!(matches!(open(&place.path().join("a/../b")), Err(OutputError::GoesUp(_))));
}

#[test]
fn a_folder_in_place_of_a_file_is_found_out_before_the_work() {
    let place = tempfile::tempdir().unwrap();
    fs::create_dir(place.path().join("b.csv")).unwrap();
    assert!(matches!(open(place.path()), Err(OutputError::InTheWay(p)) if p.ends_with("b.csv")));
}

#[test]
fn giving_up_leaves_nothing_behind() {
    let place = tempfile::tempdir().unwrap();
    drop(open(&place.path().join("new")).unwrap());
    assert!(entries(place.path()).is_empty());
}
