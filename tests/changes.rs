//! `--change "KEY = VALUE"`: the job changed from the command line, in every command that takes a job.

use crate::program::{Bench, JOB};
use std::fs;

/// What a forecast writes of the job as typed, but for the provenance.
fn tables(bench: &Bench, file: &str, changes: &[&str]) -> [String; 2] {
    let mut typed = vec!["forecast", file, "--runs", "150", "--quiet"];
    changes.iter().for_each(|change| typed.extend(["--change", change]));
    let said = bench.heapcast(typed);
    assert_eq!(said.code, Some(0), "{}", said.err);
    [bench.read("forecast/runs.csv"), bench.read("forecast/percentiles.csv")]
}

#[test]
fn a_change_does_what_the_same_line_in_the_file_does() {
    let bench = Bench::with_job();
    let second = JOB.replace("name = \"helper\"", "name = \"helper\"\ncount = 2");
    fs::write(bench.path("second.toml"), second.replace("room = 2", "room = 3")).unwrap();
    let by_file = tables(&bench, "second.toml", &[]);
    assert_eq!(tables(&bench, "job.toml", &["raker.helper.count = 2", "zone.north.room = 3"]), by_file);
    assert_eq!(tables(&bench, "job.toml", &["rakers = 2", "room = 3"]), by_file);
    assert_ne!(tables(&bench, "job.toml", &["rakers = 2"]), by_file);
}

#[test]
fn a_later_change_is_made_after_an_earlier_one() {
    let bench = Bench::with_job();
    let three = tables(&bench, "job.toml", &["rakers = 3"]);
    assert_eq!(tables(&bench, "job.toml", &["rakers = 2", "rakers = 3"]), three);
}

#[test]
fn the_command_told_makes_the_same_changes_again() {
    let bench = Bench::with_job();
    let change = "zone.\"north\".room = 4";
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "40", "--change", change, "--json"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let summary: serde_json::Value = serde_json::from_str(&said.out).expect("JSON");
    assert_eq!(summary["provenance"]["changes"][0], change);
    let command = summary["provenance"]["command"].as_str().expect("a command").to_owned();
    assert!(command.contains("--change 'zone.\"north\".room = 4'"), "{command}");
    let script = format!("{} --json", command.replace("heapcast forecast", "\"$0\" forecast"));
    let again = std::process::Command::new("bash")
        .args(["-c", &script, env!("CARGO_BIN_EXE_heapcast")])
        .current_dir(bench.folder())
        .output()
        .expect("bash");
    assert_eq!(String::from_utf8_lossy(&again.stdout), said.out);
}

#[test]
fn every_command_says_what_was_changed() {
    let bench = Bench::with_job();
    for command in ["forecast", "replay", "check"] {
        let said = bench.heapcast([command, "job.toml", "--change", "rakers = 2"]);
        assert_eq!(said.code, Some(0), "{command}: {}", said.err);
        assert!(said.out.contains("changed: rakers = 2"), "{command}: {}", said.out);
    }
    let page = bench.read("forecast/report.html");
    assert!(page.contains("Changed: rakers = 2") && page.contains("job.toml, changed: rakers = 2"));
}

#[test]
fn a_change_that_cannot_be_made_is_told_with_its_remedy_and_nothing_is_written() {
    let bench = Bench::with_job();
    for (change, words) in [
        ("raker.helpr.count = 2", "the nearest is \"helper\""),
        ("loader.tractor.heapd = 22 ft3", "heaped"),
        ("loader.tractor.heaped = 22 lb", "this is a mass"),
        ("rakers = 65", "64"),
        ("rakers", "there is no \"=\""),
        ("rakrs = 2", "rakers"),
    ] {
        let said = bench.heapcast(["forecast", "job.toml", "--change", change]);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{change}: {}", said.err);
        assert!(said.err.contains(words), "{change}: {}", said.err);
    }
    assert_eq!(bench.entries(), ["job.toml"]);
}
