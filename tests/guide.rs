//! Every screen in the README and the guide is what the program says of the command above it, and the page of keys what the
//! reader knows.
//!
//! `HEAPCAST_GUIDE=write` writes the screens and the page again.

use crate::program::Bench;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A folder with the shipped files in it, both where the guide and where the README has them.
fn bench() -> Bench {
    let bench = Bench::empty();
    let inside = bench.path("scenarios/scenarios");
    fs::create_dir_all(&inside).unwrap();
    for entry in fs::read_dir(root().join("scenarios/scenarios")).unwrap() {
        let path = entry.unwrap().path();
        for folder in [bench.folder(), inside.as_path()] {
            fs::copy(&path, folder.join(path.file_name().unwrap())).unwrap();
        }
    }
    bench
}

/// What a person types after `heapcast`, from the last line of a block of commands.
fn typed(command: &str) -> Option<Vec<String>> {
    let rest =
        command.strip_prefix("heapcast ").or_else(|| command.strip_prefix("cargo run --release -- "))?;
    Some(shell_words::split(rest).unwrap())
}

/// The text with each screen as the program says it now, and how many screens there are.
fn said_again(text: &str, bench: &Bench) -> (String, usize) {
    let (mut out, mut screens) = (Vec::new(), 0);
    let (mut command, mut skipping) = (None, false);
    let mut block = "";
    for line in text.lines() {
        if skipping && line != "```" {
            continue;
        }
        skipping = false;
        if let Some(kind) = line.strip_prefix("```") {
            block = if block.is_empty() { kind } else { "" };
            out.push(line.to_owned());
            if kind == "text" {
                let words = typed(command.take().expect("a command above the screen")).unwrap();
                let said = bench.heapcast(words.iter().map(String::as_str));
                assert_eq!(said.code, Some(0), "{words:?}: {}", said.err);
                out.extend(said.out.lines().map(|line| line.trim_end().to_owned()));
                (skipping, screens) = (true, screens + 1);
            }
            continue;
        }
        if block == "sh" && typed(line).is_some() {
            command = Some(line);
        }
        out.push(line.to_owned());
    }
    (out.join("\n") + "\n", screens)
}

fn hold(file: &str, least: usize) {
    let path = root().join(file);
    let text = fs::read_to_string(&path).unwrap();
    let (again, screens) = said_again(&text, &bench());
    assert!(screens >= least, "{file} has only {screens} screens");
    if std::env::var_os("HEAPCAST_GUIDE").is_some() {
        fs::write(&path, again).unwrap();
        return;
    }
    let differs = text.lines().zip(again.lines()).find(|(now, then)| now != then);
    assert_eq!(differs, None, "{file} is out of date: HEAPCAST_GUIDE=write cargo test --test heapcast guide");
    assert_eq!(text.lines().count(), again.lines().count(), "{file} is out of date");
}

#[test]
fn the_readme_shows_what_the_program_says() {
    hold("README.md", 1);
}

#[test]
fn the_guide_shows_what_the_program_says() {
    hold("scenarios/GUIDE.md", 10);
}

#[test]
fn the_page_of_keys_is_what_the_reader_knows() {
    let path = root().join("scenarios/KEYS.md");
    let made = reports::keys::keys_page(&scenarios::keys());
    if std::env::var_os("HEAPCAST_GUIDE").is_some() {
        fs::write(&path, made).unwrap();
        return;
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    let differs = kept.lines().zip(made.lines()).find(|(kept, made)| kept != made);
    let again = "HEAPCAST_GUIDE=write cargo test --test heapcast guide";
    assert_eq!(differs, None, "scenarios/KEYS.md is out of date: {again}");
    assert_eq!(kept.lines().count(), made.lines().count(), "scenarios/KEYS.md is out of date: {again}");
}

#[test]
fn the_readme_is_short() {
    let lines = fs::read_to_string(root().join("README.md")).unwrap().lines().count();
    assert!(lines < 180, "{lines} lines");
}
