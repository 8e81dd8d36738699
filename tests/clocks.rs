//! One name, one meaning: in every file of every command a *clock* figure counts from midnight of the first day, a
//! *working* figure from the start of that day.

use crate::program::{Bench, names};
use std::collections::BTreeMap;
use std::fs;

/// Nothing is left to chance. Six loads of 0.1 m3, a round each: loading 60 s, 20 m there at 1 m/s, dumping 10 s, 20 m
/// back at 1 m/s. The last heap lies after 5 x 110 + 90 = 640 s and is raked out in 0.5 s. Work begins at half past seven.
const EVEN: &str = r#"
spread = "none"
units = "metric"

[material]
name = "leaf mould"
density = "400 kg/m3"
fill_factor = "100 %"

[[zone]]
name = "bed"
volume = "0.6 m3"
distance = "20 m"
room = 9

[[stockpile]]
name = "heap"
on_hand = "0.6 m3"

[[loader]]
name = "tractor"
heaped = "0.1 m3"
hydraulic_lift = "400 kg"
bucket_mass = "20 kg"
width = "70 cm"
speed_loaded = "1 m/s"
speed_empty = "1 m/s"
loading = "60 s"
dumping = "10 s"
start_and_stop = "0 s"
machine_cost = "EUR 20/h"

[[raker]]
name = "neighbour"
rate = "720 m3/h"
start = "bed"

[shift]
start = "7:30"
set_up = "0 min"
clean_up = "0 min"

[[alternative]]
name = "the same again"
change = { "raker.neighbour.count" = 1 }
"#;

const START_S: f64 = 7.5 * 3_600.0;
const FINISH_WORKING_S: f64 = 640.5;
const FINISH_CLOCK_S: f64 = START_S + FINISH_WORKING_S;

/// Every number in a folder with its name: columns of tables (of `percentiles.csv` the figure), paths of documents.
fn numbers(bench: &Bench, folder: &str) -> Vec<(String, f64)> {
    let mut all = Vec::new();
    for name in names(&bench.path(folder)) {
        let file = format!("{folder}/{name}");
        if name.ends_with(".csv") {
            of_table(&file, &bench.read(&file), &mut all);
        } else if name.ends_with(".json") {
            let document: serde_json::Value = serde_json::from_str(&bench.read(&file)).expect("JSON");
            of_document(&file, &document, &mut all);
        }
    }
    all
}

fn of_table(file: &str, text: &str, all: &mut Vec<(String, f64)>) {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().expect("a header").clone();
    for record in reader.records().map(|record| record.expect("a row")) {
        let figure = header.iter().zip(&record).find(|(column, _)| *column == "figure").map(|(_, f)| f);
        for (column, field) in header.iter().zip(&record) {
            let value = matches!(column, "value" | "low_95" | "high_95");
            let name = figure.filter(|_| value).unwrap_or(column);
            all.extend(field.parse().ok().map(|number| (format!("{file}: {name}"), number)));
        }
    }
}

fn of_document(name: &str, value: &serde_json::Value, all: &mut Vec<(String, f64)>) {
    match value {
        serde_json::Value::Object(fields) => {
            fields.iter().for_each(|(key, value)| of_document(&format!("{name}: {key}"), value, all));
        }
        serde_json::Value::Array(values) => {
            values.iter().for_each(|value| of_document(name, value, all));
        }
        other => all.extend(other.as_f64().map(|number| (name.to_owned(), number))),
    }
}

/// The folder of every command that writes one.
fn folders() -> (Bench, [&'static str; 6]) {
    let bench = Bench::empty();
    fs::write(bench.path("even.toml"), EVEN).expect("even.toml");
    fs::write(bench.path("list.csv"), "name,heaped,price\nlarger,0.2 m3,EUR 300\n").expect("list.csv");
    let commands: [&[&str]; 6] = [
        &["forecast", "even.toml", "--runs", "200", "--by", "8:00"],
        &["replay", "even.toml", "--run", "3"],
        &["compare", "even.toml", "--alternative", "the same again", "--runs", "200"],
        &["sweep", "even.toml", "--vary", "rakers 1..2", "--by", "8:00", "--runs", "200"],
        &["buckets", "even.toml", "list.csv", "--runs", "200"],
        &["quote", "even.toml", "--runs", "200", "--price", "EUR 500"],
    ];
    for typed in commands {
        let said = bench.heapcast(typed.iter().copied().chain(["--quiet"]));
        assert_eq!(said.code, Some(0), "{typed:?}: {}", said.err);
    }
    (bench, ["forecast", "replay", "comparison", "sweep", "buckets", "quote"])
}

#[test]
fn a_clock_figure_counts_from_midnight_and_a_working_figure_from_the_start_in_every_file() {
    let (bench, folders) = folders();
    let mut seen: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for folder in folders {
        for (name, value) in numbers(&bench, folder) {
            let last = name.rsplit_once(": finish").map(|(_, after)| after);
            // What was asked for and widths of time are no moments of the job; hand barrows are slower.
            if name.contains("saved")
                || name.contains("barrow")
                || name.contains("by: clock_s")
                || name.contains("by_clock_s")
            {
                continue;
            }
            if name.contains("clock") {
                *seen.entry((folder, "clock")).or_default() += 1;
                assert!((START_S..=FINISH_CLOCK_S + 1e-6).contains(&value), "{name} = {value}");
            }
            match last {
                Some(after) if after.contains("clock") => {
                    *seen.entry((folder, "finish clock")).or_default() += 1;
                    // The faster of the jobs in a folder may be done sooner, never later.
                    assert!(value > START_S + 300.0 && value <= FINISH_CLOCK_S + 1e-6, "{name} = {value}");
                }
                Some(after) if after.contains("working") => {
                    *seen.entry((folder, "finish working")).or_default() += 1;
                    // In `buckets.csv` a row of hand barrows is slower.
                    let most = if folder == "buckets" { START_S } else { FINISH_WORKING_S + 1e-6 };
                    assert!(value > 300.0 && value <= most, "{name} = {value}");
                }
                _ => {}
            }
        }
    }
    for folder in ["forecast", "replay", "comparison", "sweep"] {
        for kind in ["clock", "finish clock", "finish working"] {
            assert!(seen.contains_key(&(folder, kind)), "{folder} tells no {kind}: {seen:?}");
        }
    }
}

#[test]
fn the_same_moment_is_the_same_number_wherever_it_stands() {
    let (bench, _) = folders();
    let of = |folder: &str, name: &str| -> Vec<f64> {
        let all = numbers(&bench, folder).into_iter();
        all.filter(|(full, _)| full == &format!("{folder}/{name}")).map(|(_, value)| value).collect()
    };
    for (folder, name) in [
        ("forecast", "runs.csv: finish_clock_s"),
        ("forecast", "runs.csv: completion_clock_s"),
        ("forecast", "percentiles.csv: finish_clock"),
        ("forecast", "percentiles.csv: completion_clock"),
        ("forecast", "summary.json: done_by: plan: finish_clock_s: value"),
        ("forecast", "summary.json: done_by: rows: completion_clock_s: value"),
        ("replay", "run.csv: finish_clock_s"),
        ("replay", "replay.json: finish_clock_s"),
        ("replay", "replay.json: completion_clock_s"),
        ("comparison", "runs.csv: finish_clock_s"),
        ("comparison", "comparison.csv: finish_clock_p80_s"),
        ("sweep", "sweep.csv: finish_clock_s_p80"),
        ("sweep", "summary.json: sweep: points: finish_clock_s: value"),
    ] {
        let values = of(folder, name);
        assert!(!values.is_empty(), "{folder} has no {name}");
        assert!(values.iter().all(|v| (v - FINISH_CLOCK_S).abs() < 1e-6), "{name}: {values:?}");
    }
    let last = |name: &str| of("replay", name).into_iter().fold(0.0, f64::max);
    assert!((last("loads.csv: raked_out_clock_s") - FINISH_CLOCK_S).abs() < 1e-6);
    assert!((last("events.csv: clock_s") - FINISH_CLOCK_S).abs() < 1e-6);
    for name in ["runs.csv: finish_working_s", "percentiles.csv: finish_working"] {
        assert!(of("forecast", name).iter().all(|v| (v - FINISH_WORKING_S).abs() < 1e-6), "{name}");
    }
    assert!(of("sweep", "sweep.csv: by_clock_s").iter().all(|v| *v == 28_800.0));
}
