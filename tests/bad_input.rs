//! The catalogue of malformed and impossible scenario files: `tests/bad_input/NAME.toml` has one fault (a few have
//! several), `NAME.txt` beside it the exact message, one line for each problem.

use crate::files;
use scenarios::{Selection, Texts};
use std::fs;
use std::path::{Path, PathBuf};

/// The job all files of the catalogue are made from, without a fault.
pub(crate) const SOUND: &str = r#"
[material]
name = "wood chips, green"

[[zone]]
name = "north"
volume = "10 yd3"
distance = "20 yd"

[[stockpile]]
name = "pile"
on_hand = "12 yd3"

[[loader]]
name = "tractor"
heaped = "14 ft3"

[[raker]]
name = "helper"
"#;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/bad_input")
}

fn catalogue() -> Vec<PathBuf> {
    let mut files: Vec<_> = fs::read_dir(folder())
        .expect("the folder of bad files")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "toml"))
        .collect();
    files.sort();
    files
}

/// What is said of a file, with its folder left out so that the message is the same on every machine.
fn said_of(path: &Path) -> Result<String, String> {
    match files::job_file(path).and_then(|file| file.scenario(&Selection::default())) {
        Ok(scenario) => Err(format!("accepted as \"{}\"", scenario.title)),
        Err(refusal) => Ok(refusal.to_string().replace(&format!("{}/", folder().display()), "")),
    }
}

#[test]
fn each_bad_file_gets_its_exact_message() {
    let mut wrong = Vec::new();
    for path in catalogue() {
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let expected = fs::read_to_string(path.with_extension("txt")).unwrap_or_default();
        match said_of(&path) {
            Ok(said) if said.trim_end() == expected.trim_end() => {}
            Ok(said) => {
                wrong.push(format!("{name}\n  expected: {}\n  said:     {said}", expected.trim_end()))
            }
            Err(accepted) => wrong.push(format!("{name}\n  {accepted}")),
        }
    }
    assert!(wrong.is_empty(), "{} files with another message:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn the_job_they_are_made_from_is_accepted() {
    let read = scenarios::read_text(SOUND, "sound.toml", Texts::default(), &Selection::default());
    assert!(read.is_ok(), "{}", read.expect_err("a refusal"));
}

#[test]
fn every_file_has_its_message_and_every_message_its_file() {
    let files = catalogue();
    assert!(files.len() >= 50, "only {} bad files", files.len());
    for path in &files {
        assert!(path.with_extension("txt").is_file(), "no message beside {}", path.display());
    }
    let texts = fs::read_dir(folder()).expect("the folder").filter_map(Result::ok);
    let texts = texts.filter(|e| e.path().extension().is_some_and(|e| e == "txt")).count();
    assert_eq!(texts, files.len());
}

#[test]
fn every_message_names_the_file_and_the_line() {
    let about_the_whole_file = [
        "binary_file",
        "empty_file",
        "no_loader",
        "no_material",
        "no_raker",
        "no_stockpile",
        "no_zone",
        "only_a_comment",
    ];
    for path in catalogue() {
        let stem = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let message = fs::read_to_string(path.with_extension("txt")).expect("a message");
        for line in message.lines() {
            let rest =
                line.strip_prefix(&format!("{stem}.toml:")).unwrap_or_else(|| panic!("{stem}: {line}"));
            let numbered = rest.starts_with(|c: char| c.is_ascii_digit());
            assert!(numbered || about_the_whole_file.contains(&stem.as_str()), "{stem}: {line}");
        }
    }
}

#[test]
fn a_folder_and_a_missing_file_are_refused_in_words() {
    let folder = folder();
    let refusal = files::job_file(&folder)
        .and_then(|file| file.scenario(&Selection::default()))
        .expect_err("a folder is no scenario");
    assert!(refusal.to_string().contains("folder"), "{refusal}");
    let missing = folder.join("no_such_file.toml");
    let refusal = files::job_file(&missing)
        .and_then(|file| file.scenario(&Selection::default()))
        .expect_err("there is no such file");
    assert!(refusal.to_string().contains("no_such_file.toml"), "{refusal}");
}

/// Whatever is cut off a sound file, or put into it, the reader answers; it never gives up the ghost.
#[test]
fn cut_and_spoilt_files_are_answered_without_a_panic() {
    for end in (0..SOUND.len()).filter(|end| SOUND.is_char_boundary(*end)) {
        drop(scenarios::read_text(&SOUND[..end], "cut.toml", Texts::default(), &Selection::default()));
        for put in ["\0", "\"", "]", "=", "-", "nan", "é", "9e999"] {
            let spoilt = format!("{}{put}{}", &SOUND[..end], &SOUND[end..]);
            drop(scenarios::read_text(&spoilt, "spoilt.toml", Texts::default(), &Selection::default()));
        }
    }
}
