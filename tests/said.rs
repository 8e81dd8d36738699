//! What people read, of every shipped scenario: no figure finer than anybody can know it, no words but plain ones, and the
//! answer first. And a job that runs out of material: whoever reads any of its screens or pages orders more.

use crate::program::Bench;
use std::fs;

/// Words that no contractor uses.
const DIALECT: [&str; 12] = [
    "reckon",
    "luck",
    "nought",
    "by turns",
    "held against",
    "against one another",
    "stays with you",
    "set aside",
    "anew",
    "a shade",
    "futures",
    "95 % sure)",
];

/// All shipped scenarios, with their files beside them.
fn shipped() -> Vec<(String, Bench)> {
    let from = format!("{}/../../scenarios/scenarios", env!("CARGO_MANIFEST_DIR"));
    let files: Vec<_> = fs::read_dir(from).unwrap().map(|entry| entry.unwrap().path()).collect();
    let name = |path: &std::path::Path| path.file_name().unwrap().to_string_lossy().into_owned();
    let jobs = files.iter().filter(|path| path.extension().is_some_and(|ext| ext == "toml"));
    jobs.map(|job| {
        let bench = Bench::empty();
        for file in files.iter().filter(|file| file.is_file()) {
            fs::copy(file, bench.path(&name(file))).unwrap();
        }
        (name(job), bench)
    })
    .collect()
}

/// What is read of a page: without marks, styles and signs of its own.
fn read(html: &str) -> String {
    let mut text = String::new();
    for (i, piece) in html.split('<').enumerate() {
        let (mark, words) = piece.split_once('>').unwrap_or(("", piece));
        let is_style = mark.starts_with("style") || mark.starts_with("script");
        if i > 0 {
            text.push(if mark.starts_with("span") || mark.starts_with("/span") { ' ' } else { '\n' });
        }
        if !is_style {
            text.push_str(words);
        }
    }
    text.replace('\u{a0}', " ").replace("&nbsp;", " ")
}

/// Every form in a line that pretends to know too much, or says it badly.
fn faults(line: &str) -> Vec<String> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let mut wrong = Vec::new();
    let number = |word: &str| word.trim_start_matches(['(', '±', '$', '£', '€']).parse::<f64>().ok();
    for at in 0..words.len() {
        let [first, second, third, fourth] = [0, 1, 2, 3]
            .map(|i| words.get(at + i).copied().unwrap_or("").trim_end_matches(['.', ',', ';', ')', ':']));
        let Some(value) = number(first) else { continue };
        if second == "min" && number(third).is_some() && !third.starts_with('(') && fourth == "s" {
            wrong.push(format!("seconds beside minutes: {first} min {third} s"));
        }
        if second == "h"
            && number(third).is_some_and(|min| min % 5.0 != 0.0)
            && fourth == "min"
            && !line.contains(':')
        {
            wrong.push(format!("an hour and more to the minute: {first} h {third} min"));
        }
        if value == 0.0 && (first.starts_with('-') || first.contains('.')) {
            wrong.push(format!("a nothing with digits: {first} {second}"));
        }
        if (value == 0.0 || value == 100.0)
            && second == "%"
            && third == "of"
            && words.get(at + 4).is_some_and(|w| w.starts_with("run"))
        {
            wrong.push(format!("{first} % of the runs"));
        }
        if matches!(second, "yd3" | "m3") && value > 0.0 && value < 0.05 {
            wrong.push(format!("a volume too fine: {first} {second}"));
        }
    }
    let small = line.to_lowercase();
    wrong.extend(DIALECT.iter().filter(|word| small.contains(**word)).map(|word| format!("\"{word}\"")));
    wrong
}

#[test]
fn the_forms_looked_for_are_found() {
    for bad in [
        "saves 9 min 42 s a job",
        "takes 2 h 41 min.",
        "0.00702 yd3 is left",
        "short in 100 % of the runs",
        "in 0 % of the runs",
        "keeps -0.0 % of it",
        "the same luck",
        "Reckoned at $0/h",
    ] {
        assert!(!faults(bad).is_empty(), "{bad}");
    }
    for good in [
        "saves 10 min a job",
        "takes 2 h 40 min.",
        "31 % of the runs",
        "every run",
        "0.4 m3 ordered",
        "at 0 % interest",
    ] {
        assert_eq!(faults(good), [""; 0], "{good}");
    }
}

#[test]
fn no_screen_and_no_page_of_a_shipped_scenario_says_more_than_is_known() {
    let mut wrong = Vec::new();
    for (job, bench) in shipped() {
        let text = fs::read_to_string(bench.path(&job)).unwrap();
        let (job, runs) = (job.as_str(), ["--runs", "200"]);
        let mut commands: Vec<Vec<&str>> = vec![
            vec!["forecast", job, "--by", "14:00"],
            vec!["sweep", job, "--vary", "loaders 1..2", "--by", "14:00"],
            vec!["replay", job],
        ];
        let quoted = bench.heapcast(["quote", job, "--runs", "2"]);
        if quoted.code == Some(0) {
            commands.push(vec!["quote", job]);
        }
        if text.contains("[[alternative]]") {
            commands.push(vec!["compare", job, "--most", "400"]);
        }
        for (i, command) in commands.iter().enumerate() {
            for more in [&["--quiet"][..], &[], &["--full"]] {
                let out = format!("out-{i}");
                let args = [command.as_slice(), &runs, &["--out", &out], more].concat();
                let said = bench.heapcast(args.iter().copied());
                assert_eq!(said.code, Some(0), "{args:?}: {}", said.err);
                // Columns of a table are told apart by two spaces.
                let lines = said.out.lines().flat_map(|line| line.split("  ")).flat_map(faults);
                wrong.extend(lines.map(|fault| format!("{} {}: {fault}", args.join(" "), said.out.len())));
                if more.is_empty() {
                    assert!(
                        said.out.lines().count() <= 17,
                        "{} lines: {}",
                        said.out.lines().count(),
                        said.out
                    );
                }
            }
            for page in ["report.html", "client.html"] {
                let Ok(html) = fs::read_to_string(bench.path(&format!("out-{i}/{page}"))) else { continue };
                let lines = read(&html).lines().flat_map(faults).collect::<Vec<_>>();
                wrong.extend(lines.into_iter().map(|fault| format!("{job} {} {page}: {fault}", command[0])));
            }
        }
    }
    wrong.sort();
    wrong.dedup();
    assert!(wrong.is_empty(), "{} of them:\n{}", wrong.len(), wrong.join("\n"));
}

/// 14.7 yd3 are needed and 12 ordered.
const SHORT: &str = r#"
[material]
name = "wood chips, green"

[[zone]]
name = "north"
volume = "14.7 yd3"
distance = "20 yd"
room = 2

[[stockpile]]
name = "pile"
on_hand = "12 yd3"
price = "$300"

[[loader]]
name = "tractor"
heaped = "14 ft3"
operator_cost = "$35/h"

[[raker]]
name = "helper"

[[alternative]]
name = "a second raker"
change = { "raker.helper.count" = 2 }
"#;

#[test]
fn whoever_reads_any_first_line_of_a_short_job_orders_more() {
    let bench = Bench::empty();
    fs::write(bench.path("job.toml"), SHORT).unwrap();
    let commands: [&[&str]; 4] = [
        &["forecast", "job.toml", "--by", "16:00"],
        &["quote", "job.toml"],
        &["compare", "job.toml", "--most", "400"],
        &["sweep", "job.toml", "--vary", "rakers 1..2", "--by", "16:00"],
    ];
    for command in commands {
        for more in [&["--quiet"][..], &[], &["--full"]] {
            let args = [command, &["--runs", "200", "--out", command[0]], more].concat();
            let said = bench.heapcast(args.iter().copied());
            assert_eq!(said.code, Some(0), "{}", said.err);
            let words = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
            let order = words.find("Order 1 more truckload").unwrap_or_else(|| panic!("{args:?}: {words}"));
            let promise = ["done by", "would stop", "Take ", "Stay with", "Quote $", "you keep", "saves"];
            let first = promise.iter().filter_map(|promise| words.find(promise)).min().unwrap_or(usize::MAX);
            assert!(order < first, "{args:?}: {words}");
            if more == ["--quiet"] {
                assert_eq!(said.out.lines().count(), 1, "{}", said.out);
            }
        }
    }
    let json = bench.read("forecast/summary.json");
    assert!(json.contains("\"enough\": false") && json.contains("\"truckloads_more\": 1"), "{json}");
    let report = read(&bench.read("forecast/report.html"));
    assert!(report.matches("Order 1 more truckload").count() >= 2, "answer and crew sheet: {report}");
    assert!(
        report.contains("Short of material in every run, so not done: order 1 more truckload"),
        "{report}"
    );
    let client = read(&bench.read("quote/client.html"));
    assert!(client.contains("12 yd3") && !client.contains("14.7"), "{client}");
    assert!(client.contains("does not cover all of the ground"), "{client}");
}
