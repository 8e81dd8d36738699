//! Every file that the fuzzer keeps, and every shipped and every bad scenario, is checked for what must hold of whatever is
//! typed: the same checks as in fuzzing, with the compiler everybody has.

use scenarios::Texts;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

#[path = "fuzz/check/mod.rs"]
mod check;

/// Longest that one small file may take; a hundred times what the slowest takes.
const LONGEST: Duration = Duration::from_secs(10);

fn tests() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests")
}

/// Puts every file of a folder to a check, in the order of their names.
fn each_of(folder: &Path, least: usize, check: impl Fn(&[u8])) {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = entries.filter(|path| path.is_file()).collect();
    files.sort();
    assert!(files.len() >= least, "only {} files in {}", files.len(), folder.display());
    for file in files {
        let bytes = fs::read(&file).unwrap();
        let since = Instant::now();
        let said = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| check(&bytes)));
        assert!(said.is_ok(), "see above: {}", file.display());
        assert!(since.elapsed() < LONGEST, "{} takes {:?}", file.display(), since.elapsed());
    }
}

fn each_text_of(folder: &Path, least: usize, check: impl Fn(&str)) {
    each_of(folder, least, |bytes| std::str::from_utf8(bytes).iter().for_each(|text| check(text)));
}

/// As a scenario, with the file of observed values that a shipped one names.
fn scenario(text: &str) {
    check::reading::check(text, &Texts::shipped());
}

#[test]
fn every_text_the_fuzzer_keeps_is_run_or_refused_in_good_order() {
    each_text_of(&tests().join("fuzz/corpus/scenario"), 50, scenario);
}

#[test]
fn every_shipped_and_every_bad_file_is_run_or_refused_in_good_order() {
    each_text_of(&tests().join("../scenarios/scenarios"), 10, scenario);
    each_text_of(&tests().join("bad_input"), 100, scenario);
}

#[test]
fn every_file_of_observed_values_the_fuzzer_keeps_is_used_or_refused_in_good_order() {
    each_of(&tests().join("fuzz/corpus/observed"), 10, check::observed::check);
}

#[test]
fn every_quantity_the_fuzzer_keeps_is_shown_so_that_it_can_be_typed_again() {
    each_of(&tests().join("fuzz/corpus/quantity"), 20, check::quantity::check);
}

#[test]
fn every_change_and_every_sweep_the_fuzzer_keeps_is_made_or_refused_in_words() {
    each_text_of(&tests().join("fuzz/corpus/change"), 20, check::change::check);
}

#[test]
fn every_list_of_buckets_is_read_or_refused_in_good_order() {
    each_text_of(&tests().join("fuzz/corpus/bucket_list"), 10, check::bucket_list::check);
    each_text_of(&tests().join("bad_input/lists"), 10, check::bucket_list::check);
}
