//! What is read from disk: plain files, those of a scenario from its folder or below.

use crate::bad_input::SOUND;
use crate::files;
use scenarios::Selection;
use std::fs;
use std::path::Path;
use tempfile::TempDir;

/// A folder with a job that has a folder of its own in it.
struct Place(TempDir);

const LIST: &str = "loading\n20\n25\n30\n";

impl Place {
    fn new() -> Self {
        let place = Self(tempfile::tempdir().unwrap());
        fs::create_dir_all(place.path().join("job/times")).unwrap();
        place
    }

    fn path(&self) -> &Path {
        self.0.path()
    }

    /// What is said of a job whose loading times stand in a file.
    fn said(&self, file: &str) -> Result<(), String> {
        let heaped = "heaped = \"14 ft3\"";
        let law = format!("{{ family = \"observed\", file = '{file}', column = 'loading', unit = \"s\" }}");
        let job = self.path().join("job/job.toml");
        fs::write(&job, SOUND.replace(heaped, &format!("{heaped}\nloading = {law}"))).unwrap();
        read(&job)
    }

    fn said_of(&self, name: &str, bytes: &[u8]) -> String {
        let path = self.path().join(name);
        fs::write(&path, bytes).unwrap();
        read(&path).unwrap_err()
    }
}

fn read(path: &Path) -> Result<(), String> {
    files::job_file(path)
        .and_then(|file| file.scenario(&Selection::default()))
        .map(drop)
        .map_err(|refusal| refusal.to_string())
}

#[test]
fn observed_values_come_from_beside_the_scenario_or_below_it() {
    let place = Place::new();
    for file in ["job/a.csv", "job/times/b.csv", "outside.csv"] {
        fs::write(place.path().join(file), LIST).unwrap();
    }
    for name in ["a.csv", "./a.csv", "times/b.csv", "times/../a.csv"] {
        assert_eq!(place.said(name), Ok(()), "{name}");
    }
    let whole = place.path().join("job/a.csv").display().to_string();
    for name in ["../outside.csv", "times/../../outside.csv", "../job/a.csv", "../no_such.csv", &whole] {
        let said = place.said(name).unwrap_err();
        assert!(said.contains("outside the folder of the scenario"), "{name}: {said}");
    }
}

#[cfg(unix)]
#[test]
fn links_are_followed_and_may_not_lead_out() {
    use std::os::unix::fs::symlink;
    let place = Place::new();
    fs::write(place.path().join("outside.csv"), LIST).unwrap();
    fs::write(place.path().join("job/times/b.csv"), LIST).unwrap();
    for (to, link) in [
        (place.path().join("outside.csv"), "out.csv"),
        (place.path().join("job/times/b.csv"), "in.csv"),
        (place.path().to_owned(), "up"),
        (place.path().join("gone.csv"), "broken.csv"),
        (place.path().join("job/round.csv"), "round.csv"),
    ] {
        symlink(to, place.path().join("job").join(link)).unwrap();
    }
    assert_eq!(place.said("in.csv"), Ok(()));
    for name in ["out.csv", "up/outside.csv"] {
        assert!(place.said(name).unwrap_err().contains("outside the folder"), "{name}");
    }
    for name in ["broken.csv", "round.csv"] {
        assert!(place.said(name).unwrap_err().contains("a link to a file that is not there"), "{name}");
    }
    symlink("gone.toml", place.path().join("job.toml")).unwrap();
    let said = read(&place.path().join("job.toml")).unwrap_err();
    assert!(said.contains("a link to a file that is not there; put the file there again"), "{said}");
}

#[cfg(unix)]
#[test]
fn devices_pipes_and_sockets_are_refused_without_waiting_for_them() {
    let place = Place::new();
    let socket = place.path().join("job/socket.csv");
    let _socket = std::os::unix::net::UnixListener::bind(&socket).unwrap();
    assert!(place.said("socket.csv").unwrap_err().contains("not a plain file"));
    let pipe = place.path().join("job/pipe.csv");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status().is_ok_and(|status| status.success());
    if made {
        assert!(place.said("pipe.csv").unwrap_err().contains("not a plain file"));
    }
    for path in [
        socket.as_path(),
        &pipe,
        Path::new("/dev/zero"),
        Path::new("/dev/null"),
        Path::new("/proc/self/environ"),
    ] {
        if path.exists() {
            let said = read(path).unwrap_err();
            assert!(said.contains("this is not a plain file; name a scenario file"), "{said}");
        }
    }
}

#[test]
fn files_that_are_no_text_are_refused_in_words() {
    let place = Place::new();
    assert!(place.said_of("binary.toml", b"a = 1\0\n").contains("not a text file"));
    let said = place.said_of("latin.toml", b"a = 1\nb = \"\xe9\"\n");
    assert!(said.contains("latin.toml:2:1: this line is not UTF-8 text"), "{said}");
    assert!(place.said_of("large.toml", &vec![b'#'; 1_000_001]).contains("larger than"));
    assert!(place.said_of("empty.toml", b"").contains("empty"));
}

#[test]
fn a_folder_and_a_missing_file_are_refused_with_the_nearest_name() {
    let place = Place::new();
    fs::write(place.path().join("orchard.toml"), "").unwrap();
    let said = read(place.path()).unwrap_err();
    assert!(said.contains("this is a folder"), "{said}");
    let said = read(&place.path().join("orchad.toml")).unwrap_err();
    assert!(said.contains("no such file; the nearest beside it is \"orchard.toml\""), "{said}");
}

#[test]
fn a_sound_file_is_read_from_disk_and_named_as_typed() {
    let place = Place::new();
    let path = place.path().join("small job.toml");
    fs::write(&path, SOUND).unwrap();
    let scenario = files::job_file(&path).and_then(|file| file.scenario(&Selection::default())).unwrap();
    assert_eq!((scenario.title.as_str(), scenario.file), ("small job", path.display().to_string()));
    assert_eq!(scenario.hash.len(), 64);
}

#[test]
fn a_list_that_cannot_be_opened_is_told() {
    let told = files::buckets(Path::new("no/such/list.csv")).unwrap_err().to_string();
    assert!(
        told.starts_with("no/such/list.csv: there is no such file; write one with the heading line"),
        "{told}"
    );
    let told = files::buckets(Path::new(env!("CARGO_MANIFEST_DIR"))).unwrap_err().to_string();
    assert!(told.contains("this is a folder; name a list of buckets in it, ending in .csv"), "{told}");
}
