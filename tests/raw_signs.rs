//! Nothing that cannot be seen reaches a terminal or a page raw, whatever a file, an argument or a neighbour is called.

use crate::program::{Bench, JOB};
use std::fs;

/// Turns the direction of what follows, clears a screen, has no width.
const NASTY: &str = "jo\u{202e}b\u{1b}[2J\u{200b}";

fn raw(text: &str) -> bool {
    ["\u{202e}", "\u{1b}", "\u{200b}"].iter().any(|sign| text.contains(sign))
}

#[test]
fn names_of_files_are_shown_with_their_code_points() {
    let bench = Bench::with_job();
    let file = format!("{NASTY}.toml");
    fs::write(bench.path(&file), JOB).expect("a file of that name");
    for words in [
        vec!["check", &file],
        vec!["forecast", &file, "--runs", "50"],
        vec!["forecast", &file, "--runs", "50", "--quiet"],
        // Its neighbour is named as the nearest.
        vec!["check", "jo\u{202e}b\u{1b}[2J.toml"],
        vec!["new", &file],
        vec!["forecast", "job.toml", "--runs", "50", "--out", NASTY],
    ] {
        let said = bench.heapcast(words.clone());
        assert!(!raw(&said.out) && !raw(&said.err), "{words:?}: {:?} {:?}", said.out, said.err);
    }
    let page = fs::read_to_string(bench.path("forecast/report.html")).expect("a page");
    assert!(!raw(&page));
}

#[test]
fn arguments_are_shown_with_their_code_points() {
    let bench = Bench::with_job();
    let change = format!("rakers{NASTY} = 2");
    for words in [
        vec!["check", "job.toml", "--alternative", NASTY],
        vec!["check", "job.toml", "--change", &change],
        vec!["check", "job.toml", "--units", NASTY],
        vec!["forecast", "job.toml", "--by", NASTY],
        vec!["forecast", "job.toml", "--seed", NASTY],
        vec!["forecast", "job.toml", "--within", NASTY],
        vec!["sweep", "job.toml", "--vary", NASTY],
        vec!["compare", "job.toml", "--change", &change],
        vec!["new", "other.toml", "--from", NASTY],
        vec!["new", "other.toml", "--title", NASTY],
        vec!["new", "other.toml", "--material", NASTY],
        vec!["check", NASTY],
        vec![NASTY],
    ] {
        let said = bench.heapcast(words.clone());
        assert_eq!(said.code, Some(2), "{words:?}: {}", said.err);
        assert!(!raw(&said.out) && !raw(&said.err), "{words:?}: {:?}", said.err);
    }
}
