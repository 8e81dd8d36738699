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
    // Figures of runs are rounded, to the litre and to 0.1 s; those of the loads of one run are exact.
    assert!((sum("volume_m3") - number(run, "placed_m3")).abs() < 0.000_501);
    assert!((sum("waited_for_room_s") - number(run, "loaders_waiting_for_room_s")).abs() < 0.0501);
    let last = loads.iter().map(|load| number(load, "raked_out_clock_s")).fold(0.0, f64::max);
    assert!((last - number(run, "completion_clock_s")).abs() < 0.0501);
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
        // The rows are rounded to 0.1 s, the percentiles exact.
        assert!((number(row, "value") - finish[rank]).abs() < 0.0501);
        assert!(
            number(row, "low_95") <= finish[rank] + 0.05 && finish[rank] - 0.05 <= number(row, "high_95")
        );
        assert_eq!(row["unit"], "s");
    }
}

#[test]
fn every_runs_time_accounts_close() {
    let bench = forecast("40");
    for row in table(&bench.read("forecast/runs.csv")) {
        let sum = |prefix: &str| {
            let columns = row.keys().filter(|c| c.starts_with(prefix));
            let rounding = 0.0501 * columns.clone().count() as f64;
            (columns.map(|c| number(&row, c)).sum::<f64>(), rounding)
        };
        // One loader and one raker: each is on the job until it is finished.
        let finish = number(&row, "finish_working_s");
        for crew in ["loaders_", "rakers_"] {
            let (total, rounding) = sum(crew);
            assert!((total - finish).abs() < rounding + 0.05, "{row:?}");
        }
    }
}

#[test]
fn what_nobody_knows_is_empty_or_null_and_never_0() {
    let bench = forecast("20");
    let summary: serde_json::Value =
        serde_json::from_str(&bench.read("forecast/summary.json")).expect("JSON");
    let amounts = summary["amounts"].as_array().expect("a list");
    let cost = amounts.iter().find(|a| a["key"] == "cost").expect("cost");
    assert!(cost["said"].is_null() && cost["unknown"].is_string(), "the job names no prices: {cost}");
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

#[test]
fn a_row_of_runs_csv_is_short_and_rounded_to_what_can_be_used() {
    let bench = forecast("200");
    let text = bench.read("forecast/runs.csv");
    let rows: Vec<&str> = text.lines().skip(1).collect();
    let mean = rows.iter().map(|row| row.len() + 1).sum::<usize>() / rows.len();
    assert!(mean < 220, "{mean} bytes a row: 10,000 runs are to be far less than 7 MB");
    let most_decimals = |row: &HashMap<String, String>, ends: &str| {
        let fields = row.iter().filter(|(name, _)| name.ends_with(ends));
        fields.map(|(_, field)| field.split_once('.').map_or(0, |(_, d)| d.len())).max().expect("columns")
    };
    for row in table(&text) {
        assert!(most_decimals(&row, "_s") <= 1 && most_decimals(&row, "_m3") <= 3, "{row:?}");
    }
}

#[test]
fn the_table_of_runs_holds_as_many_as_asked_and_says_where_it_leaves_some_out() {
    let bench = Bench::with_job();
    let typed = ["forecast", "job.toml", "--runs", "300"];
    let said = bench.heapcast(typed.into_iter().chain(["--rows", "120"]));
    assert_eq!(said.code, Some(0), "{}", said.err);
    assert!(
        said.err.contains("runs.csv holds the first 120 of 300 runs; --rows 300 for all"),
        "{}",
        said.err
    );
    let first = bench.read("forecast/runs.csv");
    assert_eq!(first.lines().count(), 121);
    let said = bench.heapcast(typed);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    let all = bench.read("forecast/runs.csv");
    assert_eq!(all.lines().count(), 301);
    assert!(all.starts_with(&first), "the first rows are the same");
    // More than the usual most rows of them are only written when asked for.
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "10400"]);
    assert!(said.err.contains("the first 10,000 of 10,400 runs"), "{}", said.err);
    assert_eq!(bench.read("forecast/runs.csv").lines().count(), 10_001);
}

#[test]
fn compressed_runs_are_the_same_runs() {
    use std::io::Read;
    let bench = forecast("300");
    let plain = bench.read("forecast/runs.csv");
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "300", "--quiet", "--compress"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let files = names(&bench.path("forecast"));
    assert!(files.contains(&"runs.csv.gz".into()) && !files.contains(&"runs.csv".into()), "{files:?}");
    let compressed = std::fs::read(bench.path("forecast/runs.csv.gz")).expect("a file");
    assert!(compressed.len() < plain.len() / 2, "{} of {}", compressed.len(), plain.len());
    let mut text = String::new();
    flate2::read::GzDecoder::new(compressed.as_slice()).read_to_string(&mut text).expect("gzip");
    assert_eq!(text, plain);
}
