//! `heapcast quote`: the price, the costs it rests on, and what the client is told.

use crate::program::{Bench, JOB, names};
use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};

/// [`JOB`] with prices.
fn priced() -> String {
    JOB.replace(
        "heaped = \"18 ft3\"",
        "heaped = \"18 ft3\"\nmachine_cost = \"$28/h\"\noperator_cost = \"$35/h\"",
    )
    .replace("name = \"helper\"", "name = \"helper\"\ncost = \"$22/h\"")
    .replace("on_hand = \"12 yd3\"", "on_hand = \"12 yd3\"\nprice = \"$216\"\ncarriage = \"$60\"")
        + "\n[money]\nmobilisation = \"$90\"\n"
}

fn bench() -> Bench {
    let bench = Bench::empty();
    fs::write(bench.path("job.toml"), priced()).expect("job.toml");
    bench
}

/// A quote of the priced job with these options.
fn quote(options: &[&str]) -> Bench {
    let bench = bench();
    let typed = ["quote", "job.toml", "--quiet", "--runs", "300"];
    let said = bench.heapcast(typed.into_iter().chain(options.iter().copied()));
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{options:?}");
    bench
}

type Row = HashMap<String, String>;

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

fn summary(bench: &Bench) -> serde_json::Value {
    serde_json::from_str(&bench.read("quote/summary.json")).expect("JSON")
}

/// The costs of all runs, rising.
fn costs(bench: &Bench) -> Vec<f64> {
    let mut costs: Vec<f64> =
        table(&bench.read("quote/runs.csv")).iter().map(|row| number(row, "cost")).collect();
    costs.sort_by(f64::total_cmp);
    costs
}

/// Hyndman and Fan's type 7, written out again.
fn type7(sorted: &[f64], share: f64) -> f64 {
    let h = (sorted.len() - 1) as f64 * share;
    let (below, above) = (sorted[h.floor() as usize], sorted[h.ceil() as usize]);
    below + (h - h.floor()) * (above - below)
}

const PARTS: [&str; 7] =
    ["labour", "machine", "fuel", "set_up_and_clean_up", "material", "delivery", "mobilisation"];

#[test]
fn the_folder_holds_all_that_is_promised() {
    let bench = quote(&[]);
    let expected = [
        "client.html",
        "cost.csv",
        "heapcast.manifest.json",
        "parts.svg",
        "report.html",
        "risk.csv",
        "risk.svg",
        "runs.csv",
        "summary.json",
    ];
    assert_eq!(names(&bench.path("quote")), expected);
    let hash = summary(&bench)["provenance"]["scenario_hash"].as_str().expect("a hash").to_owned();
    for file in ["report.html", "risk.svg", "parts.svg"] {
        let text = bench.read(&format!("quote/{file}"));
        assert!(text.contains(&hash[..12]) && text.contains("eed"), "{file} says where it comes from");
    }
    assert!(bench.read("quote/client.html").contains(&format!("{}-1", &hash[..8])));
}

#[test]
fn the_price_is_the_percentile_of_the_costs_in_runs_csv() {
    let bench = quote(&["--risk", "20 %"]);
    let costs = costs(&bench);
    let offer = &summary(&bench)["quote"]["offer"];
    let p80 = type7(&costs, 0.8);
    assert!((offer["at_risk"]["price"]["value"].as_f64().unwrap() - p80).abs() < 1e-6);
    let price = offer["quote"]["price"]["value"].as_f64().unwrap();
    assert!(price >= p80 - 1e-6 && price <= p80 * 1.005 + 0.01, "{price} is {p80} rounded up");
    let dearer = costs.iter().filter(|cost| **cost > price).count() as f64;
    assert!((offer["quote"]["risk"]["value"].as_f64().unwrap() - dearer / 300.0).abs() < 1e-12);
    let mean = costs.iter().sum::<f64>() / 300.0;
    assert!((offer["quote"]["stays"]["value"].as_f64().unwrap() - (price - mean)).abs() < 1e-6);
}

#[test]
fn the_risk_at_a_price_is_counted_in_runs_csv() {
    let middle = type7(&costs(&quote(&[])), 0.5).round();
    let bench = quote(&["--price", &format!("${middle}")]);
    let costs = costs(&bench);
    let dearer: Vec<f64> = costs.iter().filter(|cost| **cost > middle).map(|cost| cost - middle).collect();
    let asked = &summary(&bench)["quote"]["offer"]["quote"];
    assert_eq!(asked["of"], "asked");
    assert!((asked["risk"]["value"].as_f64().unwrap() - dearer.len() as f64 / 300.0).abs() < 1e-12);
    let lost = dearer.iter().sum::<f64>() / dearer.len() as f64;
    assert!((asked["loss"]["value"].as_f64().unwrap() - lost).abs() < 1e-6);
    for row in table(&bench.read("quote/risk.csv")) {
        let price = number(&row, "price");
        let dearer = costs.iter().filter(|cost| **cost > price * (1.0 + 1e-9)).count() as f64;
        assert!((number(&row, "risk") - dearer / 300.0).abs() < 1e-12, "{row:?}");
        assert!(
            number(&row, "risk_low_95") <= number(&row, "risk")
                && number(&row, "risk") <= number(&row, "risk_high_95")
        );
    }
}

#[test]
fn the_parts_of_every_run_of_every_shipped_scenario_add_up_to_its_cost() {
    let folder: PathBuf = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../scenarios/scenarios");
    let mut told = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "toml") {
            continue;
        }
        let bench = Bench::empty();
        let said = bench.heapcast(["quote", path.to_str().unwrap(), "--runs", "40", "--quiet"]);
        if said.code == Some(2) {
            assert!(said.err.contains("nothing can be quoted"), "{}", said.err);
            continue;
        }
        assert_eq!(said.code, Some(0), "{}: {}", path.display(), said.err);
        told += 1;
        for row in table(&bench.read("quote/runs.csv")) {
            let sum: f64 = PARTS.iter().map(|part| number(&row, part)).sum();
            let cost = number(&row, "cost");
            assert!((sum - cost).abs() <= 1e-9 * cost, "{}: {sum} of {cost}", path.display());
        }
        let means = table(&bench.read("quote/cost.csv"));
        let mean = |part: &str| {
            let row = means.iter().find(|row| row["part"] == part && row["figure"] == "mean");
            row.map_or(0.0, |row| number(row, "value"))
        };
        let sum: f64 = PARTS.iter().map(|part| mean(part)).sum();
        assert!((sum - mean("total")).abs() <= 1e-9 * sum, "{}: means add up", path.display());
    }
    assert!(told >= 4, "{told} shipped scenarios have prices");
}

#[test]
fn the_allotment_costs_what_its_hours_by_hand_come_to() {
    // 1244 s on the job, of which 300 s of set-up and 120 s of clean-up, for one at $36/h and one at $18/h: 420 s x $54/h =
    // $6.30 for set-up and clean-up, 824 s x $54/h = $12.36 for the rest; the barrow at $9/h: 420 s = $1.05, 824 s = $2.06.
    let (_, text) =
        scenarios::shipped().iter().find(|(name, _)| *name == "allotment-barrow").expect("the allotment");
    let bench = Bench::empty();
    let text = text
        .replace("machine_cost = \"$0/h\"", "machine_cost = \"$9/h\"")
        .replace("operator_cost = \"$0/h\"", "operator_cost = \"$36/h\"")
        .replace("cost = \"$0/h\"\n\n[shift]", "cost = \"$18/h\"\n\n[shift]");
    fs::write(bench.path("plot.toml"), text).unwrap();
    let said = bench.heapcast(["quote", "plot.toml", "--runs", "3"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    for row in table(&bench.read("quote/runs.csv")) {
        for (part, sum) in [
            ("labour", 12.36),
            ("machine", 2.06),
            ("set_up_and_clean_up", 7.35),
            ("fuel", 0.0),
            ("material", 0.0),
            ("cost", 21.77),
        ] {
            assert!((number(&row, part) - sum).abs() < 1e-9, "{part}: {row:?}");
        }
        assert!((number(&row, "hours_on_the_job") - 1244.0 / 3600.0).abs() < 1e-12);
    }
    // $21.77 rounded up to half a per cent at the most: in steps of $0.10.
    assert!(said.out.contains("Quote $21.80: you keep $0.03 (0.1 %) in every run"), "{}", said.out);
}

#[test]
fn fixed_prices_are_told_apart() {
    let bench = quote(&[]);
    for row in table(&bench.read("quote/runs.csv")) {
        assert_eq!(
            ["material", "delivery", "mobilisation"].map(|part| number(&row, part)),
            [216.0, 60.0, 90.0]
        );
    }
}

#[test]
fn the_hours_estimate_is_in_quarter_hours_of_the_runs() {
    let bench = quote(&["--rate", "$95/h"]);
    let mut hours: Vec<f64> =
        table(&bench.read("quote/runs.csv")).iter().map(|row| number(row, "hours_on_the_job")).collect();
    hours.sort_by(f64::total_cmp);
    let estimate = &summary(&bench)["quote"]["hours"]["estimate"];
    for (i, share) in [0.5, 0.8, 0.9].into_iter().enumerate() {
        let quarters = type7(&hours, share) * 4.0;
        let billed = if i == 0 { quarters.round().max(1.0) } else { quarters.ceil() } / 4.0;
        assert_eq!(estimate["hours"][i].as_f64().unwrap(), billed, "P{}", share * 100.0);
        assert!((estimate["sums"][i].as_f64().unwrap() - billed * 95.0).abs() < 1e-6);
    }
    let client = bench.read("quote/client.html");
    assert!(client.contains("$95 an hour") && client.contains("without asking you first"), "{client}");
}

#[test]
fn no_cost_of_the_summary_stands_on_the_clients_page_but_the_price() {
    for options in [&["--margin", "15 %"][..], &["--price", "$700"]] {
        let bench = quote(options);
        let client = bench.read("quote/client.html");
        let price = summary(&bench)["quote"]["offer"]["quote"]["said"].as_str().unwrap().to_owned();
        let sums: Vec<&str> = client
            .split('$')
            .skip(1)
            .map(|rest| rest.split(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').next().unwrap())
            .collect();
        assert_eq!(sums, [price.trim_start_matches('$')], "{options:?}");
        let mut figures = Vec::new();
        collect(&summary(&bench)["quote"], &mut figures);
        assert!(figures.len() > 100, "{}", figures.len());
        for figure in &figures {
            assert!(!client.contains(figure.as_str()), "{figure}");
        }
        for inner in ["risk", "margin", "lose", "cost"] {
            assert!(!client.split("<body>").nth(1).unwrap().contains(inner), "{inner}");
        }
    }
}

/// Every figure of more than five signs as a program would write it.
fn collect(value: &serde_json::Value, into: &mut Vec<String>) {
    match value {
        serde_json::Value::Array(all) => all.iter().for_each(|one| collect(one, into)),
        serde_json::Value::Object(all) => all.values().for_each(|one| collect(one, into)),
        serde_json::Value::Number(number) if number.to_string().len() > 5 => into.push(number.to_string()),
        _ => {}
    }
}

#[test]
fn screen_and_files_say_the_same() {
    let bench = bench();
    let said = bench.heapcast(["quote", "job.toml", "--runs", "300", "--margin", "15 %", "--full"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{}", said.out);
    let summary = summary(&bench);
    let offer = &summary["quote"]["offer"];
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    for sentence in [&offer["verdict"], &offer["why"]] {
        let sentence = words(sentence.as_str().unwrap());
        assert!(words(&said.out).contains(&sentence), "{sentence}\n{}", said.out);
        assert!(
            words(&bench.read("quote/report.html")).replace('\u{a0}', " ").contains(&sentence),
            "{sentence}"
        );
    }
    for price in offer["ladder"].as_array().unwrap() {
        assert!(said.out.contains(price["said"].as_str().unwrap()), "{price}");
    }
    assert!(said.out.contains("percentiles of parts do not add up"), "{}", said.out);
    let quiet = bench.heapcast(["quote", "job.toml", "--runs", "300", "--margin", "15 %", "--quiet"]);
    assert_eq!(quiet.out.trim_end(), offer["verdict"].as_str().unwrap());
    let json = bench.heapcast(["quote", "job.toml", "--runs", "300", "--margin", "15 %", "--json"]);
    assert_eq!(json.out, bench.read("quote/summary.json"));
}

#[test]
fn the_same_file_gives_the_same_bytes_on_any_number_of_threads() {
    let bench = bench();
    for threads in ["1", "2"] {
        let said = bench.heapcast([
            "quote",
            "job.toml",
            "--runs",
            "600",
            "--quiet",
            "--threads",
            threads,
            "--out",
            threads,
        ]);
        assert_eq!(said.code, Some(0), "{}", said.err);
    }
    for name in names(&bench.path("1")) {
        assert_eq!(bench.read(&format!("1/{name}")), bench.read(&format!("2/{name}")), "{name}");
    }
}

#[test]
fn the_command_on_the_page_gives_the_same_answer_again() {
    let bench = quote(&["--price", "$1,000", "--risk", "5 %"]);
    let command = summary(&bench)["provenance"]["command"].as_str().unwrap().to_owned();
    assert_eq!(command, "heapcast quote job.toml --seed 1 --risk \"5 %\" --price '$1,000' --runs 300");
}

#[test]
fn headers_do_not_depend_on_the_data() {
    let one = quote(&[]);
    let other = bench();
    let said = other.heapcast(["quote", "job.toml", "--units", "metric", "--runs", "1"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    for file in ["cost.csv", "risk.csv", "runs.csv"] {
        let header = |bench: &Bench| bench.read(&format!("quote/{file}")).lines().next().unwrap().to_owned();
        assert_eq!(header(&one), header(&other), "{file}");
    }
}

#[test]
fn what_is_typed_wrong_ends_with_2_and_leaves_the_folder_as_it_was() {
    let bench = bench();
    fs::create_dir(bench.path("quote")).unwrap();
    fs::write(bench.path("quote/client.html"), "an older one").unwrap();
    for (typed, told) in [
        (vec!["--risk", "0 %"], "above 0 %"),
        (vec!["--risk", "100 %"], "below 100 %"),
        (vec!["--risk", "10"], "such as \"10 %\""),
        (vec!["--margin", "100 %"], "below 100 %"),
        (vec!["--margin=-5 %"], "--margin"),
        (vec!["--price", "2400"], "single quotes"),
        (vec!["--price", ",400"], "single quotes"),
        (vec!["--price", "$0"], "above 0"),
        (vec!["--price", "$95/h"], "$2,400"),
        (vec!["--price", "2400 EUR"], "its prices are in \"$\""),
        (vec!["--rate", "$95"], "$95/h"),
        (vec!["--rate", "5/h"], "single quotes"),
        (vec!["--rate", "€95/h"], "its prices are in \"$\""),
        (vec!["--alternative", "no such"], "no such"),
        (vec!["--runs", "0"], "--runs"),
    ] {
        let said = bench.heapcast(["quote", "job.toml"].into_iter().chain(typed.iter().copied()));
        assert_eq!(said.code, Some(2), "{typed:?}\n{}\n{}", said.out, said.err);
        assert_eq!(said.out, "", "{typed:?} prints no result");
        assert!(said.err.contains(told), "{typed:?}: {}", said.err);
    }
    assert_eq!(names(&bench.path("quote")), ["client.html"]);
    assert_eq!(bench.read("quote/client.html"), "an older one");
}

#[test]
fn a_file_without_prices_is_told_which_keys_to_write() {
    let bench = Bench::with_job();
    let said = bench.heapcast(["quote", "job.toml"]);
    assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
    for key in ["machine_cost", "operator_cost", "cost =", "fuel_price", "price ="] {
        assert!(said.err.contains(key), "{key}: {}", said.err);
    }
    assert_eq!(bench.entries(), ["job.toml"], "nothing was written");
}

#[test]
fn what_the_file_does_not_price_is_said_and_not_shown_as_0() {
    let bench = Bench::empty();
    let text = priced()
        .replace("operator_cost = \"$35/h\"", "operator_cost = \"$0/h\"")
        .replace("mobilisation = \"$90\"", "");
    fs::write(bench.path("job.toml"), text).unwrap();
    let said = bench.heapcast(["quote", "job.toml", "--runs", "100", "--full"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    assert!(said.out.contains("Your own time is counted at $0/h"), "{}", said.out);
    assert!(said.out.contains("mobilisation"), "{}", said.out);
    let parts: Vec<String> =
        table(&bench.read("quote/cost.csv")).into_iter().map(|mut row| row.remove("part").unwrap()).collect();
    assert!(
        !parts.contains(&"mobilisation".to_owned()) && parts.contains(&"delivery".to_owned()),
        "{parts:?}"
    );
}
