//! The catalogue of malformed lists of buckets: `tests/bad_input/lists/NAME.csv` has one fault (one has several), `NAME.txt`
//! beside it the exact message, one line for each problem.

use crate::files;
use std::fs;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/bad_input/lists")
}

fn files(ending: &str) -> Vec<PathBuf> {
    let all =
        fs::read_dir(folder()).expect("the folder of bad lists").map(|entry| entry.expect("an entry").path());
    let mut files: Vec<_> = all.filter(|path| path.extension().is_some_and(|e| e == ending)).collect();
    files.sort();
    files
}

#[test]
fn each_bad_list_gets_its_exact_message() {
    let mut wrong = Vec::new();
    for path in files("csv") {
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let expected = fs::read_to_string(path.with_extension("txt")).unwrap_or_default();
        match files::buckets(&path) {
            Ok(list) => wrong.push(format!("{name}\n  accepted with {} buckets", list.buckets.len())),
            Err(refusal) => {
                let said = refusal.to_string().replace(&format!("{}/", folder().display()), "");
                if said.trim_end() != expected.trim_end() {
                    wrong.push(format!("{name}\n  expected: {}\n  said:     {said}", expected.trim_end()));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{} lists with another message:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn every_list_has_its_message_and_every_message_its_list() {
    assert!(files("csv").len() >= 25, "only {} bad lists", files("csv").len());
    assert_eq!(files("txt").len(), files("csv").len());
}

#[test]
fn every_message_about_a_cell_names_line_and_column() {
    let about_the_whole_list = ["heading_only", "only_comments", "spreadsheet_file"];
    for path in files("txt") {
        let stem = path.file_stem().expect("a name").to_string_lossy().into_owned();
        for line in fs::read_to_string(&path).expect("a message").lines() {
            let rest = line.strip_prefix(&format!("{stem}.csv:")).unwrap_or_else(|| panic!("{stem}: {line}"));
            let numbered = rest.starts_with(|c: char| c.is_ascii_digit());
            assert!(numbered || about_the_whole_list.contains(&stem.as_str()), "{stem}: {line}");
        }
    }
}

#[test]
fn the_shipped_lists_are_accepted() {
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../scenarios/scenarios/arena-buckets.csv");
    let list = files::buckets(&shipped).unwrap_or_else(|refusal| panic!("{refusal}"));
    assert_eq!(list.buckets.len(), 6);
}
