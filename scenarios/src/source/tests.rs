use crate::{Selection, read};
use std::path::PathBuf;

struct Folder(PathBuf);

impl Folder {
    fn new(test: &str) -> Self {
        let path = std::env::temp_dir().join(format!("heapcast-source-{test}-{}", std::process::id()));
        std::fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    fn said_of(&self, name: &str, bytes: &[u8]) -> String {
        let path = self.0.join(name);
        std::fs::write(&path, bytes).unwrap();
        read(&path, &Selection::default()).unwrap_err().to_string()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

#[test]
fn files_that_are_no_text_are_refused_in_words() {
    let folder = Folder::new("texts");
    assert!(folder.said_of("binary.toml", b"a = 1\0\n").contains("not a text file"));
    let said = folder.said_of("latin.toml", b"a = 1\nb = \"\xe9\"\n");
    assert!(said.contains("latin.toml:2:1: this line is not UTF-8 text"), "{said}");
    assert!(folder.said_of("large.toml", &vec![b'#'; 1_000_001]).contains("larger than"));
    assert!(folder.said_of("empty.toml", b"").contains("empty"));
}

#[test]
fn a_folder_and_a_missing_file_are_refused_with_the_nearest_name() {
    let folder = Folder::new("folder");
    std::fs::write(folder.0.join("orchard.toml"), "").unwrap();
    let said = read(&folder.0, &Selection::default()).unwrap_err().to_string();
    assert!(said.contains("this is a folder"), "{said}");
    let said = read(&folder.0.join("orchad.toml"), &Selection::default()).unwrap_err().to_string();
    assert!(said.contains("no such file; the nearest beside it is \"orchard.toml\""), "{said}");
}

#[test]
fn a_sound_file_is_read_from_disk_and_named_as_typed() {
    let folder = Folder::new("sound");
    let path = folder.0.join("small job.toml");
    std::fs::write(&path, crate::testing::SOUND).unwrap();
    let scenario = read(&path, &Selection::default()).unwrap();
    assert_eq!((scenario.title.as_str(), scenario.file), ("small job", path.display().to_string()));
    assert_eq!(scenario.hash.len(), 64);
}
