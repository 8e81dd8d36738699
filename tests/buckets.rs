//! `heapcast buckets` as people use it: arithmetic by hand, lift and gates, what it is worth, what it refuses.

use crate::program::{Bench, Said, names};
use scenarios::{shipped, shipped_files};
use std::fs;

/// Nothing is left to chance and the raker is quick: what counts is the rounds of the loader. Six loads of 0.1 m3, or
/// three of 0.2 m3. A round: loading 60 s, 20 m there at 1 m/s, dumping 10 s, 20 m back at 1 m/s = 110 s.
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

[[raker]]
name = "neighbour"
rate = "720 m3/h"
start = "bed"

[shift]
set_up = "0 min"
clean_up = "0 min"
"#;

/// What the raker takes for 0.1 m3 at 720 m3/h \[s\].
const RAKED_S: f64 = 0.5;

fn bench(list: &str) -> Bench {
    let bench = Bench::empty();
    fs::write(bench.path("even.toml"), EVEN).expect("even.toml");
    fs::write(bench.path("list.csv"), list).expect("list.csv");
    let arena = shipped().iter().find(|(name, _)| *name == "riding-arena").expect("the arena").1;
    fs::write(bench.path("arena.toml"), arena).expect("arena.toml");
    fs::write(bench.path("arena.csv"), shipped_files()[0].1).expect("arena.csv");
    bench
}

fn run<'a>(bench: &Bench, more: impl IntoIterator<Item = &'a str>) -> Said {
    let said = bench.heapcast(["buckets"].into_iter().chain(more).chain(["--runs", "100"]));
    assert_eq!(said.code, Some(0), "{}", said.err);
    said
}

fn json<'a>(bench: &Bench, more: impl IntoIterator<Item = &'a str>) -> serde_json::Value {
    let said = run(bench, more.into_iter().chain(["--json"]));
    serde_json::from_str(&said.out).expect("JSON")
}

fn close(value: &serde_json::Value, expected: f64) {
    let value = value.as_f64().unwrap_or_else(|| panic!("{value} is no number"));
    assert!((value - expected).abs() < 1e-6 * expected.abs().max(1.0), "{value}, expected {expected}");
}

const WORTH: [&str; 8] =
    ["--jobs-per-year", "50", "--hour-worth", "$36/h", "--years", "2", "--interest", "10 %"];

#[test]
fn twice_the_bucket_halves_the_loads_and_pays_by_hand_arithmetic() {
    let bench = bench("name, heaped, price\ndouble, 0.2 m3, $100\n");
    let says = json(&bench, ["even.toml", "list.csv"].into_iter().chain(WORTH));
    let (today, double) = (&says["today"]["runs"], &says["buckets"][0]);
    close(&today["loads"]["value"], 6.0);
    close(&double["runs"]["loads"]["value"], 3.0);
    // The last load is dumped after n rounds less one way back, and raked out then, 0.5 s for each 0.1 m3.
    let finish = |rounds: f64, rake: f64| rounds * 110.0 - 20.0 + rake;
    let finishes = [(today, finish(6.0, RAKED_S)), (&double["runs"], finish(3.0, 2.0 * RAKED_S))];
    for (runs, expected) in finishes {
        // The loader goes back to the pile before the job is finished, or the rake is last: whichever is later.
        let way_back = expected + 20.0;
        let got = runs["finish"][0]["finish_working_s"]["value"].as_f64().expect("a finish");
        assert!(got >= expected - 1e-3 && got <= way_back + 1e-3, "{got}, expected {expected} to {way_back}");
    }
    let saved = double["runs"]["saved"]["mean"]["value"].as_f64().expect("a mean");
    assert!((saved - 330.0).abs() < 1.0, "three rounds of 110 s: {saved}");
    // 36 an hour is a hundredth a second; 50 jobs a year; two years at 10 %.
    let yearly = saved * 0.01 * 50.0;
    let worth = &double["worth"];
    close(&worth["per_job"]["value"], saved * 0.01);
    for share in 0..3 {
        close(&worth["yearly"][share], yearly);
        close(&worth["years"][share], 100.0 / yearly);
        close(&worth["present_value"][share], yearly / 1.1 + yearly / 1.21 - 100.0);
        let hours =
            double["runs"]["finish"][0]["finish_working_s"]["value"].as_f64().expect("a finish") / 3_600.0;
        close(&worth["hours"][share], 100.0 / (saved * 0.01) * hours);
    }
    close(&worth["pays"]["value"], 1.0);
    assert_eq!(says["verdict"]["buy"], "double");
    let answer = says["verdict"]["answer"].as_str().expect("an answer");
    assert!(answer.starts_with("Buy \"double\": it saves ") && answer.contains("pays 100 %"), "{answer}");
}

#[test]
fn a_price_never_earned_is_not_recommended_and_one_missing_is_said() {
    let bench = bench("name, heaped, price\ndear, 0.2 m3, $5000\nsmall, 0.05 m3, $1\nfree, 0.2 m3,\n");
    let says = json(&bench, ["even.toml", "list.csv"].into_iter().chain(WORTH));
    assert_eq!(says["verdict"]["buy"], serde_json::Value::Null);
    assert!(says["verdict"]["answer"].as_str().expect("words").starts_with("Buy none of them"), "{says}");
    close(&says["buckets"][0]["worth"]["pays"]["value"], 0.0);
    // A smaller bucket loses time: its price never comes back.
    assert_eq!(says["buckets"][1]["worth"]["years"], serde_json::json!([null, null, null]));
    assert_eq!(says["buckets"][1]["worth"]["said"]["years"], "never");
    assert_eq!(says["buckets"][2]["worth"]["years"], serde_json::Value::Null);
    assert_eq!(says["buckets"][2]["worth"]["said"]["years"], "no price");
    let csv = bench.read("buckets/buckets.csv");
    assert!(csv.lines().any(|line| line.starts_with("small,") && line.contains(",inf,inf,inf,")), "{csv}");
}

#[test]
fn over_the_lift_is_told_and_never_recommended() {
    // Half of 400 kg may be lifted: 0.6 m3 of 400 kg/m3 are 240 kg, 120 % of it.
    let bench = bench("name, heaped, mass, price\nhuge, 0.6 m3, 20 kg, $1\n");
    let says = json(&bench, ["even.toml", "list.csv"].into_iter().chain(WORTH));
    let huge = &says["buckets"][0];
    close(&huge["lift_share"], 1.2);
    close(&huge["lift_cut_to_m3"], 0.5);
    assert_eq!(huge["standing"], "over_lift");
    assert!(huge["lift"].as_str().expect("words").contains("The machine's manual decides"), "{huge}");
    close(&huge["worth"]["pays"]["value"], 1.0);
    assert_eq!(says["verdict"]["buy"], serde_json::Value::Null);
}

#[test]
fn where_raking_sets_the_pace_that_is_said_with_what_would_help() {
    let bench = bench("name, heaped, price\ndouble, 0.2 m3, $1\n");
    // Raking out 0.1 m3 takes one person 200 s, longer than a round of 110 s; two keep up with it.
    let change = ["--change", "raker.neighbour.rate = 1.8 m3/h", "--change", "room = 2"];
    let said = run(&bench, ["even.toml", "list.csv"].into_iter().chain(change));
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("Raking sets the pace: no bucket here that fits saves"), "{}", said.out);
    assert!(flat.contains("One more raker saves"), "{}", said.out);
}

#[test]
fn the_shipped_list_names_gate_and_lift_and_leaves_out_what_cannot_be_used() {
    let bench = bench("");
    let typed =
        ["arena.toml", "arena.csv", "--today", "today's bucket", "--full", "--jobs-per-year", "20..35"];
    let said = run(&bench, typed.into_iter().chain(["--hour-worth", "$60/h"]));
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("It does not pass \"arena gate\": 72 in clear, bucket 76 in."), "{}", said.out);
    assert!(!said.out.to_lowercase().contains("safe"), "{}", said.out);
    assert!(said.out.lines().all(|line| line.chars().count() <= 100), "{}", said.out);
    let expected =
        ["buckets.csv", "heapcast.manifest.json", "report.html", "saved.svg", "summary.json", "worth.svg"];
    assert_eq!(names(&bench.path("buckets")), expected);
    let summary: serde_json::Value = serde_json::from_str(&bench.read("buckets/summary.json")).expect("JSON");
    let of = |name: &str| {
        let all = summary["buckets"].as_array().expect("buckets");
        all.iter().find(|bucket| bucket["name"] == name).expect("a bucket of the list")
    };
    assert_eq!(of("wide levelling bucket")["standing"], "refused");
    assert_eq!(of("wide levelling bucket")["runs"], serde_json::Value::Null);
    assert_eq!(of("today's bucket")["standing"], "today");
    assert_eq!(of("deep sand bucket")["standing"], "over_lift");
    assert!(flat.contains("A hand barrow: In place of compact tractor"), "{}", said.out);
    let page = bench.read("buckets/report.html");
    for words in ["wide levelling bucket", "The machine's manual", "What was assumed", "hand barrow"] {
        assert!(page.contains(words), "{words}");
    }
    // Without worth asked for, only minutes are told and an older chart of worth does not stay.
    let said = run(&bench, ["arena.toml", "arena.csv", "--barrows", "0"]);
    assert!(!bench.path("buckets/worth.svg").exists() && !said.out.contains("Does it pay"), "{}", said.out);
}

#[test]
fn the_same_bytes_on_one_thread_and_two() {
    let bench = bench("");
    for (threads, out) in [("1", "one"), ("2", "two")] {
        let typed = ["arena.toml", "arena.csv", "--threads", threads, "--out", out];
        run(&bench, typed.into_iter().chain(["--jobs-per-year", "20..35", "--hour-worth", "$60/h"]));
    }
    for name in names(&bench.path("one")) {
        assert_eq!(bench.read(&format!("one/{name}")), bench.read(&format!("two/{name}")), "{name}");
    }
}

#[test]
fn what_is_wrong_is_refused_with_the_remedy_and_nothing_is_written() {
    let bench = bench("name, heaped, price\ndouble, 0.2 m3, 100 EUR\n");
    let worth = ["--hour-worth", "$60/h"];
    let cases: [(&[&str], &str); 9] = [
        (&["arena.toml", "list.csv"], "is priced in \"EUR\", arena.toml in \"$\""),
        (&["even.toml", "list.csv", "--jobs-per-year", "9", worth[0], worth[1]], "is priced in \"EUR\""),
        (&["even.toml", "list.csv", "--loader", "crane"], "there is \"tractor\""),
        (&["even.toml", "list.csv", "--today", "doubel"], "the nearest is \"double\""),
        (&["even.toml", "list.csv", "--jobs-per-year", "5..2", worth[0], worth[1]], "does not rise"),
        (&["even.toml", "list.csv", "--interest", "-200 %"], "from 0 % to 100 %"),
        (&["even.toml", "list.csv", "--jobs-per-year", "9"], "--hour-worth"),
        (&["even.toml", "list.csv", worth[0], worth[1]], "--jobs-per-year"),
        (&["arena.toml", "arena.csv", "--today", "wide levelling bucket"], "cannot be done with this bucket"),
    ];
    let before = bench.entries();
    for (typed, expected) in cases {
        let said = bench.heapcast(["buckets"].into_iter().chain(typed.iter().copied()));
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{typed:?}: {}", said.err);
        assert!(said.err.contains(expected), "{typed:?}: {}", said.err);
    }
    assert_eq!(bench.entries(), before);
}
