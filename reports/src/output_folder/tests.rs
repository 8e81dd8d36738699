use super::*;

const NAMES: [&str; 2] = ["a.csv", "b.csv"];

fn documents(text: &str) -> Vec<Document> {
    NAMES.map(|name| Document { name, bytes: text.as_bytes().to_vec() }).to_vec()
}

fn open(folder: &Path) -> Result<OutputFolder, OutputError> {
    OutputFolder::open(folder, &NAMES, Interrupt::none())
}

fn entries(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries.map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

#[test]
fn a_new_folder_appears_whole_with_the_folders_above_it() {
    let place = tempfile::tempdir().unwrap();
    let wanted = place.path().join("deep/er");
    let folder = open(&wanted).unwrap();
    assert!(!wanted.exists(), "nothing is there before all is complete");
    folder.replace(&documents("new")).unwrap();
    assert_eq!(entries(&wanted), NAMES);
    assert_eq!(entries(place.path()), ["deep"], "no staging is left");
}

#[test]
fn in_an_existing_folder_only_our_files_change() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("mine.txt"), "keep").unwrap();
    fs::write(place.path().join("a.csv"), "old").unwrap();
    open(place.path()).unwrap().replace(&documents("new")).unwrap();
    assert_eq!(entries(place.path()), ["a.csv", "b.csv", "mine.txt"]);
    assert_eq!(fs::read_to_string(place.path().join("mine.txt")).unwrap(), "keep");
    assert_eq!(fs::read_to_string(place.path().join("a.csv")).unwrap(), "new");
}

#[test]
fn a_file_of_ours_that_is_not_written_again_does_not_stay_behind() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("b.csv"), "of an older report").unwrap();
    open(place.path()).unwrap().replace(&documents("new")[..1]).unwrap();
    assert_eq!(entries(place.path()), ["a.csv"]);
}

#[test]
fn an_error_half_way_puts_the_old_report_back() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("a.csv"), "old").unwrap();
    let folder = open(place.path()).unwrap();
    // A folder of somebody else's that gets in the way after it was looked for.
    fs::create_dir_all(place.path().join("b.csv/inside")).unwrap();
    let error = folder.replace(&documents("new")).unwrap_err();
    assert!(matches!(error, OutputError::File { name: "b.csv", .. }), "{error}");
    assert_eq!(fs::read_to_string(place.path().join("a.csv")).unwrap(), "old");
    assert_eq!(entries(place.path()), ["a.csv", "b.csv"]);
    assert!(place.path().join("b.csv/inside").is_dir());
}

#[test]
fn a_file_in_place_of_the_folder_is_found_out_before_the_work() {
    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("report");
    fs::write(&file, "").unwrap();
    assert!(matches!(open(&file), Err(OutputError::NotAFolder(_))));
    assert!(matches!(open(&file.join("below")), Err(OutputError::NotAFolder(_))));
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

#[test]
fn a_name_without_a_folder_stands_in_the_current_one() {
    assert_eq!(nearest_folder(Path::new("surely-not-there/either")), Path::new("."));
}
