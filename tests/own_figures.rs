//! The figures of the job of common practice belong to the trade check (`common_practice.rs`) and to nothing else: no
//! scenario, help text, hint, example or other test repeats them.

use regex::Regex;
use std::fs;
use std::path::{Path, PathBuf};

/// Figures of the trade check, as people type them or as they come out in the other system of units.
const THEIRS: [&str; 9] = [
    r"\b17\.5 ?(ft3|ft³|cubic feet|cu)",
    r"\b13\.7 ?(ft3|ft³|cubic feet|cu)",
    r"\b44 ?(yd3|yd³|yards|cubic yards)",
    r"\b22 ?(yd3|yd³|yards of|cubic yards)($|[^/])",
    r"\b9(\.25|\.5)? ?(ft3|ft³|cubic feet|to 9\.5)",
    r"\b(60|70) ?(in|inch|inches)\b",
    r"\b2 h 0?1 min\b",
    r"\b33\.64? ?m3",
    r"\b0\.49(55|6) ?m3",
];

/// Where they may stand, and what is no text of ours.
const APART: [&str; 6] = [
    "tests/common_practice.rs",
    "tests/common_practice",
    "tests/own_figures.rs",
    "Cargo.lock",
    "target",
    ".git",
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if APART.iter().any(|apart| path.ends_with(apart)) {
            continue;
        } else if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push(path);
        }
    }
    found
}

/// The lines of a text that say one of these figures, from 1.
fn said(text: &str, theirs: &[Regex]) -> Vec<(usize, String)> {
    let lines = text.lines().enumerate();
    let hits = lines.filter(|(_, line)| theirs.iter().any(|figure| figure.is_match(line)));
    hits.map(|(at, line)| (at + 1, line.chars().take(120).collect())).collect()
}

fn theirs() -> Vec<Regex> {
    THEIRS.iter().map(|figure| Regex::new(&format!("(?i){figure}")).unwrap()).collect()
}

#[test]
fn nothing_but_the_trade_check_uses_its_figures() {
    let (files, theirs) = (files(&root()), theirs());
    assert!(files.len() > 500, "only {} files were found", files.len());
    let mut found = Vec::new();
    for file in files {
        let text = String::from_utf8_lossy(&fs::read(&file).unwrap()).into_owned();
        found
            .extend(said(&text, &theirs).iter().map(|(at, line)| format!("{}:{at}: {line}", file.display())));
    }
    assert!(found.is_empty(), "{} lines, such as\n{}", found.len(), found[..found.len().min(40)].join("\n"));
}

#[test]
fn the_figures_are_found_however_they_are_typed_and_others_are_not() {
    for line in [
        "heaped = \"17.5 ft3\"",
        "a bucket of 17.5 ft³",
        "44 yards of chips",
        "44yd3",
        "a truck brings 22 cubic yards",
        "such as \"22 yd3\" or \"17 m3\"",
        "9 to 9.5 ft3",
        "x,9 ft3,",
        "width = \"60 in\"",
        "took 2 h 01 min",
    ] {
        assert_eq!(said(line, &theirs()).len(), 1, "{line}");
    }
    for line in [
        "17 ft3",
        "144 yd3",
        "22 yd3/h",
        "19 ft3",
        "9.6 ft3",
        "160 in",
        "12 h 1 min",
        "in 60 instances",
        "9 ft",
    ] {
        assert_eq!(said(line, &theirs()), [], "{line}");
    }
}
