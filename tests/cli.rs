//! The command line as people use it: what it prints where, and how it ends.

use crate::program::{Bench, JOB};
use std::fs;
use std::process::{Command, Stdio};

#[test]
fn a_forecast_answers_on_stdout_and_ends_with_0() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "200", "--full"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{}", said.out);
    for heading in
        ["Done by when", "By the handbook", "What holds it up", "What would help", "Assumed", "seed 1"]
    {
        assert!(said.out.contains(heading), "{heading} is missing:\n{}", said.out);
    }
    assert!(said.out.contains("Plan on "), "{}", said.out);
}

#[test]
fn the_same_file_gives_the_same_answer_on_any_number_of_threads() {
    let bench = Bench::with_job();
    let one =
        bench.heapcast(["forecast", "job.toml", "--runs", "600", "--threads", "1", "--json", "--out", "one"]);
    let many = bench.heapcast([
        "forecast",
        "job.toml",
        "--runs",
        "600",
        "--threads",
        "8",
        "--json",
        "--out",
        "many",
    ]);
    assert_eq!(one.code, Some(0), "{}", one.err);
    assert_eq!(one.out, many.out);
    assert_eq!(bench.read("one/runs.csv"), bench.read("many/runs.csv"));
    let other = bench.heapcast(["forecast", "job.toml", "--runs", "600", "--seed", "2", "--json"]);
    assert_ne!(one.out, other.out, "another seed is other random numbers");
}

#[test]
fn json_on_stdout_is_the_summary_and_nothing_else() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "200", "--json"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let summary: serde_json::Value = serde_json::from_str(&said.out).expect("JSON");
    assert_eq!(said.out, bench.read("forecast/summary.json"));
    assert_eq!(summary["provenance"]["seed"], 1);
    assert_eq!(summary["provenance"]["runs"], 200);
    assert_eq!(summary["reading"]["percentile_definition"], "Hyndman-Fan type 7");
    assert_eq!(summary["done_by"]["rows"].as_array().map(Vec::len), Some(5));
}

#[test]
fn quiet_says_the_line_to_plan_on_and_no_more() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "200", "--quiet"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    assert!(said.out.starts_with("Plan on ") && said.out.lines().count() == 1, "{}", said.out);
    assert!(bench.path("forecast/summary.json").exists());
}

#[test]
fn what_is_not_a_terminal_gets_no_colours() {
    let bench = Bench::with_job();
    let plain = bench.heapcast(["forecast", "job.toml", "--runs", "100"]);
    assert!(!plain.out.contains('\u{1b}'), "no escapes in a pipe");
    let forced = bench.run(|c| c.args(["forecast", "job.toml", "--runs", "100"]).env("CLICOLOR_FORCE", "1"));
    assert!(forced.out.contains('\u{1b}'), "bold headings where they are asked for");
    let refused = bench.run(|c| {
        c.args(["forecast", "job.toml", "--runs", "100"]).env("CLICOLOR_FORCE", "0").env("NO_COLOR", "1")
    });
    assert_eq!(refused.out, plain.out);
}

#[test]
fn the_percentiles_asked_for_are_told() {
    let bench = Bench::with_job();
    let said =
        bench.heapcast(["forecast", "job.toml", "--runs", "200", "--percentiles", "99,50", "--by", "23:00"]);
    assert!(said.out.contains("P50") && said.out.contains("P99"), "{}", said.out);
    assert!(said.out.contains("clean-up included"), "{}", said.out);
    assert_eq!(bench.heapcast(["forecast", "job.toml", "--percentiles", "120"]).code, Some(2));
}

#[test]
fn runs_go_on_until_the_p80_is_known_closely_enough() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--within", "1 min", "--json"]);
    let summary: serde_json::Value = serde_json::from_str(&said.out).expect("JSON");
    let p80 = &summary["done_by"]["plan"]["finish_working_s"];
    let at = |key: &str| p80[key].as_f64().expect(key);
    assert!(at("high") - at("value") <= 60.0 && at("value") - at("low") <= 60.0, "{p80}");
    assert_eq!(
        bench.heapcast(["forecast", "job.toml", "--within", "3"]).code,
        Some(2),
        "a time needs its unit"
    );
}

#[test]
fn both_systems_of_units_are_shown_as_the_person_chooses() {
    let bench = Bench::with_job();
    let us = bench.heapcast(["forecast", "job.toml", "--runs", "100", "--units", "us", "--full"]).out;
    let metric = bench.heapcast(["forecast", "job.toml", "--runs", "100", "--units", "metric", "--full"]).out;
    let placed =
        |said: &str| said.lines().find(|l| l.contains("Placed")).expect("the volume placed").to_owned();
    assert!(placed(&us).contains("yd3") && !placed(&us).contains(" m3"), "{us}");
    assert!(placed(&metric).contains(" m3") && !placed(&metric).contains("yd3"), "{metric}");
    assert!(us.contains(" am") && !metric.contains(" am"), "each has its clock");
    // Cautions and assumptions too, which `check` lists in full.
    let metric = bench.heapcast(["check", "job.toml", "--units", "metric"]).out;
    for foreign in ["yd3", "ft3", " lb", "mph", " gal", "yd "] {
        assert!(!metric.contains(foreign), "{foreign} in:\n{metric}");
    }
}

#[test]
fn help_is_short_or_long_with_examples() {
    let bench = Bench::empty();
    let short = bench.heapcast(["forecast", "-h"]);
    let long = bench.heapcast(["forecast", "--help"]);
    assert_eq!((short.code, long.code), (Some(0), Some(0)));
    assert!(long.out.contains("Examples:") && !short.out.contains("Examples:"));
    assert!(bench.heapcast(["--help"]).out.contains("Exit codes:"));
    assert!(bench.heapcast(["--version"]).out.starts_with("heapcast 0."));
}

#[test]
fn what_is_typed_wrong_ends_with_2() {
    let bench = Bench::with_job();
    for typed in [
        vec!["forecasts", "job.toml"],
        vec!["forecast"],
        vec!["forecast", "job.toml", "--runs", "0"],
        vec!["forecast", "job.toml", "--runs", "-5"],
        vec!["forecast", "job.toml", "--units", "imperial"],
        vec!["forecast", "job.toml", "--by", "noon"],
        vec!["forecast", "job.toml", "--alternative", "no such"],
        vec!["forecast", "no-such-file.toml"],
        vec!["forecast", "."],
        vec!["new", "x.toml", "--from", "no such"],
    ] {
        let said = bench.heapcast(typed.clone());
        assert_eq!(said.code, Some(2), "{typed:?}\n{}\n{}", said.out, said.err);
        assert_eq!(said.out, "", "{typed:?} prints no result");
        assert!(!said.err.is_empty(), "{typed:?} is told why");
    }
    assert_eq!(bench.entries(), ["job.toml"], "nothing was written");
}

#[test]
fn every_problem_of_a_file_is_told_in_one_go_with_its_line() {
    let bench = Bench::empty();
    let bad = JOB.replace("volume = \"10 yd3\"", "volume = \"10 lb\"").replace("heaped =", "heapd =");
    fs::write(bench.path("bad.toml"), &bad).unwrap();
    let said = bench.heapcast(["check", "bad.toml"]);
    assert_eq!(said.code, Some(2));
    let line = |needle: &str| bad.lines().position(|l| l.contains(needle)).unwrap() + 1;
    for needle in ["10 lb", "heapd"] {
        let start = format!("bad.toml:{}:", line(needle));
        assert!(said.err.lines().any(|l| l.starts_with(&start)), "{start}\n{}", said.err);
    }
    assert!(said.err.contains("; nothing was written"), "{}", said.err);
}

#[test]
fn a_check_lists_every_assumption_and_caution() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["check", "job.toml", "--full"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let json = bench.heapcast(["check", "job.toml", "--json"]);
    let check: serde_json::Value = serde_json::from_str(&json.out).expect("JSON");
    let all = check["assumed"]["all"].as_array().expect("a list");
    assert!(all.len() > 5, "a bare file leaves much to assume: {all:?}");
    for assumed in all {
        // Words are folded over lines; the last of each is there.
        let words = assumed["words"].as_str().expect("words");
        let last = words.split_whitespace().last().expect("a word");
        assert!(said.out.contains(last), "\"{words}\" is missing:\n{}", said.out);
    }
    assert!(!check["warnings"]["usual"].as_array().expect("a list").is_empty());
    assert_eq!(bench.entries(), ["job.toml"], "a check writes nothing");
}

#[test]
fn a_reader_who_goes_away_is_no_failure() {
    let bench = Bench::with_job();
    let shell =
        "\"$0\" forecast job.toml --runs 100 --json | head -c 10 > /dev/null; echo \"${PIPESTATUS[0]}\"";
    let output = Command::new("bash")
        .args(["-c", shell, env!("CARGO_BIN_EXE_heapcast")])
        .current_dir(bench.folder())
        .stderr(Stdio::piped())
        .output()
        .expect("bash");
    assert_eq!(String::from_utf8_lossy(&output.stdout).trim(), "0");
    let err = String::from_utf8_lossy(&output.stderr);
    assert!(!err.contains("cannot write") && !err.contains("Broken pipe"), "{err}");
}

#[test]
fn a_new_file_reads_back_and_never_overwrites_another() {
    let bench = Bench::empty();
    let made =
        bench.heapcast(["new", "mine.toml", "--volume", "30 m3", "--units", "metric", "--gate", "2 m"]);
    assert_eq!(made.code, Some(0), "{}", made.err);
    let checked = bench.heapcast(["check", "mine.toml"]);
    assert_eq!(checked.code, Some(0), "{}", checked.err);
    let before = bench.read("mine.toml");
    let again = bench.heapcast(["new", "mine.toml", "--volume", "99 m3"]);
    assert_eq!(again.code, Some(1));
    assert!(again.err.contains("is there already"), "{}", again.err);
    assert_eq!(bench.read("mine.toml"), before);
}

#[test]
fn an_answer_that_makes_no_sense_writes_no_file() {
    let bench = Bench::empty();
    let said = bench.heapcast(["new", "mine.toml", "--volume", "30 lb"]);
    assert_eq!(said.code, Some(2), "{}", said.out);
    assert!(said.err.contains("30 lb"), "{}", said.err);
    assert!(bench.entries().is_empty());
}

#[test]
fn shipped_scenarios_can_be_copied_and_used() {
    let bench = Bench::empty();
    let (name, _) = scenarios::shipped().first().expect("a shipped scenario");
    let made = bench.heapcast(["new", "mine.toml", "--from", name]);
    assert_eq!(made.code, Some(0), "{}", made.err);
    assert!(bench.path("mine.toml").exists());
    let unknown = bench.heapcast(["new", "other.toml", "--from", "nowhere"]);
    assert!(unknown.err.contains(name), "the names there are: {}", unknown.err);
}
