//! The files written, read back as a spreadsheet or a program would.

use crate::program::{Bench, names};
use std::collections::HashMap;

fn table(text: &str) -> Vec<HashMap<String, String>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().expect("a header").clone();
    let row = |record: csv::StringRecord| {
        header.iter().map(str::to_owned).zip(record.iter().map(str::to_owned)).collect()
    };
    reader.records().map(|record| row(record.expect("a row as wide as the header"))).collect()
}

fn number(row: &HashMap<String, String>, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{column} = {}", row[column]))
}

fn forecast(runs: &str) -> Bench {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", runs, "--quiet"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    bench
}

#[test]
fn the_folder_holds_all_that_is_promised() {
    let bench = forecast("100");
    let expected = [
        "completion.svg",
        "heapcast.manifest.json",
        "percentiles.csv",
        "progress.svg",
        "relief.svg",
        "report.html",
        "runs.csv",
        "summary.json",
        "timeline.svg",
        "waiting.svg",
    ];
    assert_eq!(names(&bench.path("forecast")), expected);
    let said = bench.heapcast(["replay", "job.toml", "--run", "3"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let expected =
        ["events.csv", "heapcast.manifest.json", "loads.csv", "replay.json", "run.csv", "timeline.svg"];
    assert_eq!(names(&bench.path("replay")), expected);
}

#[test]
fn the_replay_of_a_run_is_its_row_in_runs_csv() {
    let bench = forecast("50");
    let runs = bench.read("forecast/runs.csv");
    let header = runs.lines().next().expect("a header");
    for k in [0, 17, 49] {
        let said = bench.heapcast(["replay", "job.toml", "--run", &k.to_string()]);
        assert_eq!(said.code, Some(0), "{}", said.err);
        let row = runs.lines().nth(k + 1).expect("a row");
        assert_eq!(bench.read("replay/run.csv"), format!("{header}\n{row}\n"), "run {k}");
    }
}

#[test]
fn the_loads_of_a_replay_add_up_to_its_run() {
    let bench = forecast("1");
    assert_eq!(bench.heapcast(["replay", "job.toml", "--run", "0"]).code, Some(0));
    let run = &table(&bench.read("replay/run.csv"))[0];
    let loads = table(&bench.read("replay/loads.csv"));
    assert_eq!(loads.len() as f64, number(run, "loads"));
    let numbers: Vec<String> = (1..=loads.len()).map(|n| n.to_string()).collect();
    assert_eq!(loads.iter().map(|load| load["load"].clone()).collect::<Vec<_>>(), numbers);
    let sum = |column: &str| loads.iter().map(|load| number(load, column)).sum::<f64>();
    assert!((sum("volume_m3") - number(run, "placed_m3")).abs() < 1e-9);
    assert!((sum("waited_for_room_s") - number(run, "loaders_waiting_for_room_s")).abs() < 1e-6);
    let last = loads.iter().map(|load| number(load, "raked_out_clock_s")).fold(0.0, f64::max);
    assert!((last - number(run, "completion_clock_s")).abs() < 1e-9);
    for load in &loads {
        let times = [
            "load_start_clock_s",
            "load_end_clock_s",
            "arrival_clock_s",
            "dump_start_clock_s",
            "dump_end_clock_s",
            "rake_start_clock_s",
            "raked_out_clock_s",
        ]
        .map(|column| number(load, column));
        assert!(times.is_sorted(), "{load:?}");
        assert_eq!(load["raked_by"], "helper");
        assert_eq!((load["stockpile"].as_str(), load["zone"].as_str()), ("pile", "north"));
    }
}

#[test]
fn the_event_log_runs_forwards_and_ends_with_the_job() {
    let bench = forecast("1");
    assert_eq!(bench.heapcast(["replay", "job.toml", "--run", "0"]).code, Some(0));
    let events = table(&bench.read("replay/events.csv"));
    let times: Vec<f64> = events.iter().map(|e| number(e, "clock_s")).collect();
    assert!(times.is_sorted() && !times.is_empty());
    let raked = events.iter().filter(|e| e["event"] == "raked out").count() as f64;
    assert_eq!(raked, number(&table(&bench.read("replay/run.csv"))[0], "loads"));
}

#[test]
fn percentiles_are_type_7_of_the_rows_in_runs_csv() {
    let bench = forecast("101");
    let mut finish: Vec<f64> =
        table(&bench.read("forecast/runs.csv")).iter().map(|r| number(r, "finish_working_s")).collect();
    finish.sort_by(f64::total_cmp);
    // With 101 values type 7 has the P10 at the 11th, the P50 at the 51st, the P80 at the 81st.
    let told = table(&bench.read("forecast/percentiles.csv"));
    for (percent, rank) in [("10", 10), ("50", 50), ("80", 80)] {
        let row = told
            .iter()
            .find(|r| r["figure"] == "finish_working" && r["percentile"] == percent)
            .unwrap_or_else(|| panic!("no P{percent}"));
        assert!((number(row, "value") - finish[rank]).abs() < 1e-6);
        assert!(number(row, "low_95") <= finish[rank] && finish[rank] <= number(row, "high_95"));
        assert_eq!(row["unit"], "s");
    }
}

#[test]
fn every_runs_books_close() {
    let bench = forecast("40");
    for row in table(&bench.read("forecast/runs.csv")) {
        let sum = |prefix: &str| {
            let columns = row.keys().filter(|c| c.starts_with(prefix));
            columns.map(|c| number(&row, c)).sum::<f64>()
        };
        // One loader and one raker: each is on the job until it is finished.
        let finish = number(&row, "finish_working_s");
        assert!((sum("loaders_") - finish).abs() < 1e-6, "{row:?}");
        assert!((sum("rakers_") - finish).abs() < 1e-6, "{row:?}");
    }
}

#[test]
fn what_nobody_knows_is_empty_or_null_and_never_0() {
    let bench = forecast("20");
    let summary: serde_json::Value =
        serde_json::from_str(&bench.read("forecast/summary.json")).expect("JSON");
    let amounts = summary["amounts"].as_array().expect("a list");
    let cost = amounts.iter().find(|a| a["key"] == "cost").expect("cost");
    assert!(cost["said"].is_null() && cost["unknown"].is_string(), "the file names no prices: {cost}");
    assert!(table(&bench.read("forecast/runs.csv")).iter().all(|row| row["cost"].is_empty()));
}

#[test]
fn headers_do_not_depend_on_the_data() {
    let bench = forecast("5");
    let header = |bench: &Bench, file: &str| bench.read(file).lines().next().expect("a header").to_owned();
    let (runs, percentiles) =
        (header(&bench, "forecast/runs.csv"), header(&bench, "forecast/percentiles.csv"));
    let (_, text) = scenarios::shipped().first().expect("a shipped scenario");
    std::fs::write(bench.path("other.toml"), text).expect("other.toml");
    let said = bench.heapcast([
        "forecast",
        "other.toml",
        "--runs",
        "5",
        "--units",
        "metric",
        "--out",
        "other",
        "--quiet",
    ]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    assert_eq!(header(&bench, "other/runs.csv"), runs);
    assert_eq!(header(&bench, "other/percentiles.csv"), percentiles);
}

#[test]
fn every_document_names_seed_version_and_scenario() {
    let bench = forecast("5");
    let summary: serde_json::Value =
        serde_json::from_str(&bench.read("forecast/summary.json")).expect("JSON");
    let hash = summary["provenance"]["scenario_hash"].as_str().expect("a hash");
    assert_eq!(hash.len(), 64);
    for file in ["completion.svg", "progress.svg", "waiting.svg", "relief.svg", "timeline.svg", "report.html"]
    {
        let text = bench.read(&format!("forecast/{file}"));
        assert!(text.contains(&hash[..12]), "{file} names the scenario");
        assert!(text.contains("seed 1"), "{file} names the seed");
    }
}
