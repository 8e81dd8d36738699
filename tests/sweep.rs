//! A job over a range: every point is the single run of the job so changed, to the last bit.

use crate::program::{Bench, JOB, names};
use std::collections::HashMap;
use std::fs;

const RUNS: &str = "120";

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

/// The shipped arena, which has prices, a delivery, a gate and breaks.
fn with_arena() -> Bench {
    let bench = Bench::with_job();
    for (name, text) in scenarios::shipped() {
        fs::write(bench.path(&format!("{name}.toml")), text).expect("a shipped file");
    }
    bench
}

fn sweep(bench: &Bench, typed: &[&str]) -> Vec<HashMap<String, String>> {
    let all = ["sweep"].into_iter().chain(typed.iter().copied()).chain(["--runs", RUNS, "--quiet"]);
    let said = bench.heapcast(all);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{typed:?}");
    table(&bench.read("sweep/sweep.csv"))
}

/// Compares a row with `percentiles.csv` of a forecast, field by field as text.
fn assert_is_the_forecast(row: &HashMap<String, String>, bench: &Bench, typed: &[&str]) {
    let all = ["forecast"].into_iter().chain(typed.iter().copied());
    let said = bench.heapcast(all.chain(["--runs", RUNS, "--percentiles", "10,50,80,90", "--quiet"]));
    assert_eq!(said.code, Some(0), "{typed:?}: {}", said.err);
    let told = table(&bench.read("forecast/percentiles.csv"));
    for (column, figure, unit) in [
        ("finish_working_s", "finish_working", "s"),
        ("finish_clock_s", "finish_clock", "s"),
        ("loads", "loads", "loads"),
        ("labour_h", "labour", "h"),
        ("cost", "cost", row["currency"].as_str()),
    ] {
        for percent in ["10", "50", "80", "90"] {
            let is = |r: &&HashMap<String, String>| {
                r["figure"] == figure && r["unit"] == unit && r["percentile"] == percent
            };
            let single = told.iter().find(is).unwrap_or_else(|| panic!("no {figure} P{percent}"));
            for (ending, field) in [("", "value"), ("_low_95", "low_95"), ("_high_95", "high_95")] {
                let name = format!("{column}_p{percent}{ending}");
                assert_eq!(row[&name], single[field], "{name} with {typed:?}");
            }
        }
    }
}

#[test]
fn every_point_is_the_forecast_of_the_job_so_changed_to_the_last_bit() {
    let bench = with_arena();
    let arena = "riding-arena.toml";
    for (vary, change) in [
        ("rakers 1..3", "rakers = "),
        ("loaders 1..2", "loaders = "),
        ("bucket 8, 10, 12 ft3", "bucket = "),
        ("haul 20, 60 yd", "haul = "),
        ("room 1, 4", "room = "),
        ("loader.compact tractor.loading = 15, 30 s", "loader.compact tractor.loading = "),
    ] {
        let rows = sweep(&bench, &[arena, "--vary", vary]);
        for row in [rows.first(), rows.last()].into_iter().flatten() {
            let change = format!("{change}{}", row["value_1_typed"]);
            assert_is_the_forecast(row, &bench, &[arena, "--change", &change]);
        }
    }
}

#[test]
fn a_point_is_the_forecast_of_a_file_that_says_the_same() {
    let bench = Bench::with_job();
    let three = JOB.replace("name = \"helper\"", "name = \"helper\"\ncount = 3");
    fs::write(bench.path("three.toml"), three.replace("\"18 ft3\"", "\"22 ft3\"")).unwrap();
    let rows = sweep(&bench, &["job.toml", "--vary", "rakers 1..3", "--vary", "bucket 18, 22 ft3"]);
    let point =
        rows.iter().find(|r| r["value_1_typed"] == "3" && r["value_2_typed"] == "22 ft3").expect("a row");
    assert_is_the_forecast(point, &bench, &["three.toml"]);
}

#[test]
fn in_a_grid_too_and_beside_an_alternative_and_further_changes() {
    let bench = with_arena();
    let arena = "riding-arena.toml";
    let chosen =
        ["--alternative", "all sand there at eight", "--change", "shift.start = 07:30", "--seed", "5"];
    let mut typed = vec![arena, "--vary", "rakers 1..2", "--vary", "room 2..3"];
    typed.extend(chosen);
    let rows = sweep(&bench, &typed);
    assert_eq!(rows.len(), 4);
    assert!(rows.iter().map(|r| (r["value_1_typed"].as_str(), r["value_2_typed"].as_str())).eq([
        ("1", "2"),
        ("1", "3"),
        ("2", "2"),
        ("2", "3")
    ]));
    let mut typed = vec![arena];
    typed.extend(chosen);
    typed.extend(["--change", "rakers = 2", "--change", "room = 2"]);
    assert_is_the_forecast(&rows[2], &bench, &typed);
}

#[test]
fn savings_are_the_means_of_the_differences_between_two_forecasts_run_by_run() {
    let bench = Bench::with_job();
    let rows = sweep(&bench, &["job.toml", "--vary", "rakers 1..2"]);
    let finish = |change: &str| -> Vec<f64> {
        let said = bench.heapcast(["forecast", "job.toml", "--change", change, "--runs", RUNS, "--quiet"]);
        assert_eq!(said.code, Some(0), "{}", said.err);
        table(&bench.read("forecast/runs.csv")).iter().map(|row| number(row, "finish_working_s")).collect()
    };
    let (one, two) = (finish("rakers = 1"), finish("rakers = 2"));
    let saved: Vec<f64> = one.iter().zip(&two).map(|(a, b)| a - b).collect();
    let n = saved.len() as f64;
    let mean = saved.iter().sum::<f64>() / n;
    let sd = (saved.iter().map(|s| (s - mean) * (s - mean)).sum::<f64>() / (n - 1.0)).sqrt();
    // Student's t for 119 degrees of freedom at 97.5 %: 1.9801 (table of quantiles, from memory).
    let half = 1.9801 * sd / n.sqrt();
    // The rows are rounded to 0.1 s: the mean of differences of two is off with a standard error of 0.04 over the root of n.
    let off = 4.0 * 0.1 / 6f64.sqrt() / n.sqrt();
    assert!((number(&rows[1], "saved_along_1_s") - mean).abs() < off);
    assert!((number(&rows[1], "saved_along_1_s_high_95") - mean - half).abs() < 1e-3 * half + off);
    assert_eq!(rows[0]["saved_along_1_s"], "", "there is nothing before the first");
    assert_eq!(rows[1]["saved_along_1_cost"], "", "the job names no prices");
}

#[test]
fn the_chance_is_that_of_a_forecast_asked_the_same() {
    let bench = Bench::with_job();
    let rows = sweep(&bench, &["job.toml", "--vary", "rakers 1..2", "--by", "9:00"]);
    let typed = ["forecast", "job.toml", "--change", "rakers = 2", "--by", "9:00", "--runs", RUNS, "--json"];
    let summary: serde_json::Value = serde_json::from_str(&bench.heapcast(typed).out).expect("JSON");
    let chance = &summary["done_by"]["by"]["chance"];
    for (column, key) in [("chance_by", "value"), ("chance_by_low_95", "low"), ("chance_by_high_95", "high")]
    {
        let (swept, asked) = (number(&rows[1], column), chance[key].as_f64().expect(key));
        assert!((swept - asked).abs() < 1e-12, "{column}: {swept} {asked}");
    }
}

#[test]
fn the_same_sweep_gives_the_same_bytes_on_any_number_of_threads() {
    let bench = with_arena();
    let run = |threads: &str, out: &str| {
        let typed =
            ["sweep", "riding-arena.toml", "--vary", "rakers 1..3", "--vary", "room 2..3", "--by", "1 pm"];
        let said = bench.heapcast(typed.into_iter().chain([
            "--runs",
            "600",
            "--json",
            "--threads",
            threads,
            "--out",
            out,
        ]));
        assert_eq!(said.code, Some(0), "{}", said.err);
        said.out
    };
    assert_eq!(run("1", "one"), run("2", "two"));
    for file in ["report.html", "summary.json", "sweep.csv", "sweep.svg", "cost.svg"] {
        assert_eq!(bench.read(&format!("one/{file}")), bench.read(&format!("two/{file}")), "{file}");
    }
}

#[test]
fn more_of_a_good_thing_never_makes_it_later_where_nothing_is_left_to_chance() {
    let bench = with_arena();
    // The barrow's job has no chance in it: each step is exact.
    for (vary, better) in [("rakers 1..4", 1.0), ("haul 5..40 m by 5", -1.0), ("room 1..5", 1.0)] {
        let rows = sweep(&bench, &["allotment-barrow.toml", "--vary", vary]);
        assert!(rows.len() > 3);
        for row in &rows[1..] {
            assert!(number(row, "saved_along_1_s") * better >= 0.0, "{vary}: {}", row["value_1_typed"]);
        }
    }
}

#[test]
fn the_folder_holds_all_that_is_promised_and_the_screen_says_the_same() {
    let bench = with_arena();
    let typed =
        ["sweep", "riding-arena.toml", "--vary", "rakers 1..3", "--by", "1 pm", "--runs", RUNS, "--full"];
    let said = bench.heapcast(typed);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    assert_eq!(
        names(&bench.path("sweep")),
        ["cost.svg", "heapcast.manifest.json", "report.html", "summary.json", "sweep.csv", "sweep.svg"]
    );
    let summary: serde_json::Value = serde_json::from_str(&bench.read("sweep/summary.json")).expect("JSON");
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for sentence in [
        &summary["sweep"]["by"]["sentence"],
        &summary["sweep"]["knee"]["steps"],
        &summary["sweep"]["knee"]["sentence"],
        &summary["sweep"]["money"]["sentence"],
    ] {
        assert!(flat.contains(sentence.as_str().expect("a sentence")), "{sentence}\n{}", said.out);
    }
    let points = summary["sweep"]["points"].as_array().expect("points");
    assert_eq!(points.len(), 3);
    for (row, told) in table(&bench.read("sweep/sweep.csv")).iter().zip(points) {
        // The reader of JSON may be off in the last bit of a number.
        let (listed, told_s) =
            (number(row, "finish_working_s_p80"), told["finish_working_s"][2]["value"].as_f64());
        assert!((listed - told_s.unwrap()).abs() <= f64::EPSILON * listed, "{listed} beside {told_s:?}");
        assert!(flat.contains(told["done_by"][2].as_str().expect("a clock")), "{told}");
    }
    assert_eq!(points[0]["as_it_stands"], true);
    let hash = summary["provenance"]["scenario_hash"].as_str().expect("a hash");
    for file in ["sweep.svg", "cost.svg", "report.html"] {
        let text = bench.read(&format!("sweep/{file}"));
        assert!(text.contains(&hash[..12]) && text.contains("seed 1"), "{file}");
    }
}

#[test]
fn the_command_told_makes_the_same_sweep_again() {
    let bench = Bench::with_job();
    let typed = [
        "sweep",
        "job.toml",
        "--vary",
        "bucket 12..20 ft3 by 4",
        "--vary",
        "rakers 1..2",
        "--by",
        "day 2 9:30 am",
        "--chance",
        "97.5",
        "--change",
        "room = 3",
        "--runs",
        "50",
        "--seed",
        "9",
        "--json",
    ];
    let said = bench.heapcast(typed);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let summary: serde_json::Value = serde_json::from_str(&said.out).expect("JSON");
    let command = summary["provenance"]["command"].as_str().expect("a command");
    let script = format!("{} --json", command.replace("heapcast sweep", "\"$0\" sweep"));
    let again = std::process::Command::new("bash")
        .args(["-c", &script, env!("CARGO_BIN_EXE_heapcast")])
        .current_dir(bench.folder())
        .output()
        .expect("bash");
    assert_eq!(String::from_utf8_lossy(&again.stdout), said.out);
}

#[test]
fn without_prices_there_is_no_cost_and_an_old_chart_of_it_does_not_stay() {
    let bench = with_arena();
    fs::write(bench.path("job.toml"), JOB).unwrap();
    sweep(&bench, &["riding-arena.toml", "--vary", "rakers 1..2"]);
    assert!(bench.path("sweep/cost.svg").exists());
    fs::write(bench.path("sweep/notes.txt"), "mine").unwrap();
    let rows = sweep(&bench, &["job.toml", "--vary", "rakers 1..2"]);
    assert!(rows.iter().all(|row| row["cost_p50"].is_empty() && row["currency"].is_empty()));
    assert_eq!(
        names(&bench.path("sweep")),
        ["heapcast.manifest.json", "notes.txt", "report.html", "summary.json", "sweep.csv", "sweep.svg"]
    );
    let said = bench.heapcast(["sweep", "job.toml", "--vary", "rakers 1..2", "--runs", "50", "--full"]);
    assert!(said.out.contains("Not known: the job names no prices."), "{}", said.out);
}

#[test]
fn headers_do_not_depend_on_what_is_varied() {
    let bench = with_arena();
    let header = |typed: &[&str]| {
        sweep(&bench, typed);
        bench.read("sweep/sweep.csv").lines().next().expect("a header").to_owned()
    };
    let plain = header(&["job.toml", "--vary", "rakers 1..2"]);
    assert_eq!(
        header(&["riding-arena.toml", "--vary", "room 2..3", "--vary", "haul 20, 30 m", "--by", "1 pm"]),
        plain
    );
}

#[test]
fn both_systems_of_units_are_shown_as_the_person_chooses() {
    let bench = Bench::with_job();
    let said = |units: &str| {
        let typed = [
            "sweep",
            "job.toml",
            "--vary",
            "haul 10..30 yd by 10",
            "--runs",
            "60",
            "--full",
            "--units",
            units,
        ];
        bench.heapcast(typed).out
    };
    let (us, metric) = (said("us"), said("metric"));
    assert!(us.contains("20 yd") && us.contains(" am"), "{us}");
    assert!(metric.contains("18.3 m") && !metric.contains(" yd") && !metric.contains(" am"), "{metric}");
    let row = &table(&bench.read("sweep/sweep.csv"))[1];
    assert_eq!((row["value_1_us"].as_str(), row["value_1_us_unit"].as_str()), ("20", "yd"));
    assert!((number(row, "value_1_metric") - 18.288).abs() < 1e-9 && row["value_1_metric_unit"] == "m");
}

#[test]
fn what_cannot_be_swept_is_told_with_its_remedy_and_nothing_is_written() {
    let bench = Bench::with_job();
    for (typed, words) in [
        (vec![], "--vary"),
        (vec!["--vary", "rakers"], "no values are named"),
        (vec!["--vary", "rakrs 1..4"], "the nearest is \"rakers\""),
        (vec!["--vary", "rakers 4..1"], "the smaller value comes first"),
        (vec!["--vary", "rakers 1..64"], "at most 40"),
        (vec!["--vary", "rakers 1.5, 2"], "not a count"),
        (vec!["--vary", "rakers 0..2"], "rakers = 0"),
        (vec!["--vary", "bucket 8..20 lb"], "a volume is wanted"),
        (vec!["--vary", "bucket 8..20"], "a volume is wanted, such as"),
        (vec!["--vary", "loader.tractr.heaped = 9, 12 ft3"], "the nearest is \"tractor\""),
        (vec!["--vary", "rakers 1..2", "--vary", "rakers 3..4"], "given twice"),
        (vec!["--vary", "rakers 1..2", "--vary", "room 1..2", "--vary", "loaders 1..2"], "at most two"),
        (vec!["--vary", "rakers 1..21", "--vary", "room 1..20"], "420 points; at most 400"),
        (vec!["--vary", "rakers 1..20", "--runs", "1000000"], "ask for 500000 runs or fewer"),
        (vec!["--vary", "rakers 1..2", "--chance", "90"], "--by"),
        (
            vec!["--vary", "rakers 1..2", "--by", "noon"],
            "this is not a time of the clock; write a time such as",
        ),
        (vec!["--vary", "rakers 1..2", "--by", "9:00", "--chance", "100"], "from 1 to 99.9"),
        (vec!["--vary", "rakers 1..2", "--alternative", "no such"], "no alternative"),
        (vec!["--vary", "rakers 1..2", "--change", "raker.nobody.count = 2"], "nobody"),
    ] {
        let all = ["sweep", "job.toml"].into_iter().chain(typed.iter().copied());
        let said = bench.heapcast(all);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{typed:?}: {}", said.err);
        assert!(said.err.contains(words), "{typed:?} is not told \"{words}\":\n{}", said.err);
    }
    assert_eq!(bench.entries(), ["job.toml"]);
}

#[test]
fn quiet_says_the_answer_and_no_more() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["sweep", "job.toml", "--vary", "rakers 1..3", "--runs", "100", "--quiet"]);
    assert_eq!((said.code, said.out.lines().count()), (Some(0), 1), "{}", said.out);
    assert!(said.out.contains("second raker"), "{}", said.out);
}
