//! `heapcast compare` as people use it: what it says, what it writes, what it refuses.

use crate::program::{Bench, JOB, Said, names};
use std::fs;

/// The job with prices and two alternatives, one of them no better than it stands.
fn priced() -> String {
    let priced = JOB
        .replace(
            "heaped = \"18 ft3\"",
            "heaped = \"18 ft3\"\nmachine_cost = \"$28/h\"\noperator_cost = \"$35/h\"",
        )
        .replace("name = \"helper\"", "name = \"helper\"\ncost = \"$22/h\"");
    priced
        + "\n[[alternative]]\nname = \"a second raker\"\nchange = { \"raker.helper.count\" = 2 }\n\
           \n[[alternative]]\nname = \"a longer way\"\nchange = { \"zone.north.distance\" = \"40 yd\" }\n"
}

fn bench() -> Bench {
    let bench = Bench::with_job();
    fs::write(bench.path("priced.toml"), priced()).expect("priced.toml");
    bench
}

fn compare(bench: &Bench, more: &[&str]) -> Said {
    let said = bench.heapcast(["compare"].into_iter().chain(more.iter().copied()).chain(["--runs", "200"]));
    assert_eq!(said.code, Some(0), "{}", said.err);
    said
}

type Row = std::collections::HashMap<String, String>;

fn table(text: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().expect("a header").clone();
    let row = |record: csv::StringRecord| {
        header.iter().map(str::to_owned).zip(record.iter().map(str::to_owned)).collect()
    };
    reader.records().map(|record| row(record.expect("a row as wide as the header"))).collect()
}

fn number(row: &Row, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{column} = {}", row[column]))
}

fn summary(said: &Said) -> serde_json::Value {
    serde_json::from_str(&said.out).expect("JSON")
}

#[test]
fn one_file_alone_means_the_job_as_it_stands_and_all_its_alternatives() {
    let bench = bench();
    let said = compare(&bench, &["priced.toml", "--full"]);
    assert_eq!(said.err, "");
    for heading in
        ["Which to take", "Done by when", "Compared with A", "What it costs", "What holds it up", "seed 1"]
    {
        assert!(said.out.contains(heading), "{heading} is missing:\n{}", said.out);
    }
    // One raker at 13 m3/h or so cannot keep up with the loader: two must be the faster.
    let verdict = said.out.split("Which to take").nth(1).expect("a verdict").trim_start();
    assert!(verdict.starts_with("Take \"a second raker\": on average it finishes "), "{}", said.out);
    for letter in ["A as it stands", "B a second raker", "C a longer way"] {
        assert!(said.out.contains(letter), "{letter} is missing:\n{}", said.out);
    }
    assert!(said.out.lines().count() <= 45, "{} lines:\n{}", said.out.lines().count(), said.out);
    assert!(said.out.lines().all(|line| line.chars().count() <= 100), "{}", said.out);
}

#[test]
fn the_folder_holds_all_that_is_promised_and_json_is_the_summary() {
    let bench = bench();
    let said = compare(&bench, &["priced.toml", "--json"]);
    let expected = [
        "comparison.csv",
        "completion.svg",
        "differences.csv",
        "differences.svg",
        "heapcast.manifest.json",
        "money.svg",
        "report.html",
        "runs.csv",
        "summary.json",
    ];
    assert_eq!(names(&bench.path("comparison")), expected);
    assert_eq!(said.out, bench.read("comparison/summary.json"));
    let summary = summary(&said);
    assert_eq!(summary["verdict"]["best_name"], "a second raker");
    assert_eq!(summary["verdict"]["held"], true);
    assert_eq!(summary["verdict"]["judged_by"], "working_time");
    assert_eq!(summary["verdict"]["within"], 300.0);
    assert_eq!(summary["choices"].as_array().map(Vec::len), Some(3));
    assert_eq!(summary["differences"].as_array().map(Vec::len), Some(2));
    // Without prices there is nothing to draw money in, and the older chart does not stay.
    compare(&bench, &["job.toml", "--change", "rakers = 2", "--quiet"]);
    assert!(!bench.path("comparison/money.svg").exists());
    assert!(!bench.read("comparison/summary.json").contains("\"cost\": {"));
}

#[test]
fn what_is_said_of_the_difference_follows_from_the_runs() {
    let bench = bench();
    let said = compare(&bench, &["priced.toml", "--alternative", "a second raker", "--json"]);
    let runs = table(&bench.read("comparison/runs.csv"));
    let of = |letter: &str| -> Vec<&Row> { runs.iter().filter(|row| row["letter"] == letter).collect() };
    let saved = |column: &str| -> Vec<f64> {
        of("A").iter().zip(of("B")).map(|(a, b)| number(a, column) - number(b, column)).collect()
    };
    let mean = |all: &[f64]| all.iter().sum::<f64>() / all.len() as f64;
    let row = &table(&bench.read("comparison/differences.csv"))[0];
    let times = saved("finish_working_s");
    assert_eq!(times.len() as f64, number(row, "runs"));
    // The rows are rounded to 0.1 s and to the hundredth, so a difference is off by that at the most; their mean is off by far
    // less, a standard error of 0.04 over the root of the runs.
    let off = 4.0 * 0.1 / 6f64.sqrt() / (times.len() as f64).sqrt();
    assert!((number(row, "time_saved_mean_s") - mean(&times)).abs() < off);
    assert!((number(row, "cost_saved_mean") - mean(&saved("cost"))).abs() < off / 10.0);
    let faster = times.iter().filter(|s| **s > 0.0).count() as f64 / times.len() as f64;
    assert!((number(row, "chance_faster") - faster).abs() < 1e-12);
    let told = &summary(&said)["differences"][0]["time"]["mean"];
    assert!((told["value"].as_f64().expect("a mean") - mean(&times)).abs() < off);
    let (low, high) = (number(row, "time_saved_mean_s_low_95"), number(row, "time_saved_mean_s_high_95"));
    assert!(low < mean(&times) && mean(&times) < high);
    // Percentiles of each are type 7 of its runs: of 200 the P50 lies half-way between the 100th and the 101st.
    let mut own: Vec<f64> = of("A").iter().map(|row| number(row, "finish_working_s")).collect();
    own.sort_by(f64::total_cmp);
    let first = &table(&bench.read("comparison/comparison.csv"))[0];
    assert_eq!(own.len(), 200);
    assert!((number(first, "finish_working_p50_s") - f64::midpoint(own[99], own[100])).abs() < 0.0501);
    assert_eq!((first["letter"].as_str(), first["best"].as_str()), ("A", "no"));
}

#[test]
fn a_job_compared_is_the_job_forecast() {
    // The same seed and run: the row of the comparison is the row of the forecast.
    let bench = bench();
    compare(&bench, &["priced.toml", "--alternative", "a second raker", "--quiet"]);
    let forecast = ["forecast", "priced.toml", "--alternative", "a second raker", "--runs", "200", "--quiet"];
    assert_eq!(bench.heapcast(forecast).code, Some(0));
    let compared = table(&bench.read("comparison/runs.csv"));
    let compared: Vec<&Row> = compared.iter().filter(|row| row["letter"] == "B").collect();
    let forecast = table(&bench.read("forecast/runs.csv"));
    assert_eq!(compared.len(), 200);
    for (a, b) in compared.iter().zip(&forecast) {
        for column in ["run", "finish_working_s", "finish_clock_s", "cost"] {
            assert_eq!(a[column], b[column], "{column}");
        }
    }
}

#[test]
fn the_same_bytes_come_on_one_thread_and_on_two() {
    let bench = bench();
    let on = |threads: &str, out: &str| {
        compare(&bench, &["priced.toml", "--within", "20 s", "--threads", threads, "--json", "--out", out])
            .out
    };
    assert_eq!(on("1", "one"), on("2", "two"));
    for name in names(&bench.path("one")) {
        assert_eq!(
            fs::read(bench.path(&format!("one/{name}"))).ok(),
            fs::read(bench.path(&format!("two/{name}"))).ok()
        );
    }
}

#[test]
fn changes_and_further_files_are_choices_under_names_of_their_own() {
    let bench = bench();
    fs::create_dir(bench.path("other")).unwrap();
    fs::write(bench.path("other/job.toml"), JOB.replace("room = 2", "room = 3")).unwrap();
    let said = compare(
        &bench,
        &[
            "job.toml",
            "other/job.toml",
            "--change",
            "wide: bucket = 20 ft3; zone.north.room = 3",
            "--change",
            "rakers = 2",
            "--change",
            "zone.north.room = 3",
            "--json",
        ],
    );
    let summary = summary(&said);
    let choices = summary["choices"].as_array().expect("choices");
    let names: Vec<&str> = choices.iter().filter_map(|choice| choice["name"].as_str()).collect();
    assert_eq!(names, ["job", "job (2)", "wide", "rakers = 2", "zone.north.room = 3"]);
    // The other file and the change make the same job.
    assert_eq!(choices[4]["same_as"], "B");
    assert_eq!(choices[2]["changes"][0], "bucket = 20 ft3");
    let command = summary["provenance"]["command"].as_str().expect("a command");
    assert!(
        command.contains("compare job.toml job.toml --change \"wide: bucket = 20 ft3; zone.north.room = 3\""),
        "{command}"
    );
}

#[test]
fn quiet_says_the_verdict_in_one_line() {
    let bench = bench();
    let said = compare(&bench, &["priced.toml", "--quiet"]);
    assert_eq!((said.err.as_str(), said.out.lines().count()), ("", 1), "{}", said.out);
    assert!(
        said.out.starts_with("Take \"a second raker\": ") && said.out.contains("95 % sure"),
        "{}",
        said.out
    );
}

#[test]
fn the_cheapest_can_be_asked_for() {
    let bench = bench();
    let said = compare(&bench, &["priced.toml", "--prefer", "cost", "--within", "$1", "--json"]);
    let summary = summary(&said);
    assert_eq!(summary["verdict"]["judged_by"], "cost");
    assert_eq!(summary["verdict"]["within"], 1.0);
    let cost = |place: usize| summary["choices"][place]["cost"]["mean"]["value"].as_f64().expect("a cost");
    let best = summary["verdict"]["best"].as_str().expect("a letter");
    let place = ["A", "B", "C"].iter().position(|letter| *letter == best).expect("one of them");
    assert!((0..3).all(|other| cost(place) <= cost(other)), "{best}");
}

#[test]
fn a_promise_that_cannot_be_kept_is_not_given() {
    let bench = bench();
    // A larger bucket and a longer way that outweigh one another: to within a hundredth of a second nobody knows.
    let change = "x: bucket = 19 ft3; zone.north.distance = 29 yd";
    let said = bench.heapcast([
        "compare", "job.toml", "--change", change, "--within", "0.01 s", "--runs", "200", "--most", "200",
    ]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("This is not settled: after 200 runs") && flat.contains("--most"), "{}", said.out);
}

#[test]
fn who_does_less_because_the_pile_is_short_is_told() {
    let bench = bench();
    let said = compare(&bench, &["job.toml", "--change", "stockpile.pile.on_hand = 8 yd3"]);
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("leaves the ground short in") && flat.contains("is work not done"), "{}", said.out);
}

#[test]
fn what_cannot_be_compared_is_refused_with_a_remedy_and_nothing_is_written() {
    let bench = bench();
    fs::write(
        bench.path("euros.toml"),
        priced()
            .replace("\"$28/h\"", "\"28 EUR/h\"")
            .replace("\"$35/h\"", "\"35 EUR/h\"")
            .replace("\"$22/h\"", "\"22 EUR/h\""),
    )
    .unwrap();
    let many = "rakers = 2";
    let mut too_many = vec!["compare", "job.toml"];
    (0..20).for_each(|_| too_many.extend(["--change", many]));
    for (typed, told) in [
        (vec!["compare"], "<FILE>"),
        (vec!["compare", "job.toml"], "--change"),
        (vec!["compare", "priced.toml", "--alternative", "a second rake"], "a second raker"),
        (vec!["compare", "job.toml", "--change", "rakers"], "no \"=\""),
        (vec!["compare", "job.toml", "--change", "rakers = many"], "rakers"),
        (vec!["compare", "job.toml", "--change", "loader.tractor.heapd = 20 ft3"], "heaped"),
        (vec!["compare", "job.toml", "--change", ": rakers = 2"], "no name"),
        (vec!["compare", "job.toml", "no-such.toml"], "no-such.toml"),
        (vec!["compare", "priced.toml", "--within", "5"], "3 min"),
        (vec!["compare", "priced.toml", "--within", "$20"], "3 min"),
        (vec!["compare", "priced.toml", "--prefer", "cost", "--within", "5 min"], "$"),
        (vec!["compare", "priced.toml", "--prefer", "cost", "--within", "20 EUR"], "same currency"),
        (vec!["compare", "job.toml", "--change", many, "--prefer", "cost"], "names no prices"),
        (vec!["compare", "priced.toml", "euros.toml", "--prefer", "cost"], "two currencies"),
        (vec!["compare", "priced.toml", "--prefer", "comfort"], "time"),
        (vec!["compare", "priced.toml", "--confidence", "100"], "99.9"),
        (vec!["compare", "priced.toml", "--runs", "10"], "200"),
        (too_many, "at most 20"),
    ] {
        let said = bench.heapcast(typed.clone());
        assert_eq!(said.code, Some(2), "{typed:?}\n{}\n{}", said.out, said.err);
        assert_eq!(said.out, "", "{typed:?} prints no result");
        assert!(said.err.contains(told), "{typed:?} is not told \"{told}\":\n{}", said.err);
    }
    assert_eq!(bench.entries(), ["euros.toml", "job.toml", "priced.toml"], "nothing was written");
}
