//! Buckets on one screen: the verdict first, then each against today's.

use crate::buckets::findings::{BucketFindings, BucketsFindings, Runs, Standing};
use crate::buckets::{BUCKETS, Buckets};
use crate::card::{Card, row};
use crate::findings::lower;
use crate::findings::sentence;
use crate::render::screen::{Layout, cares, lines, titled};
use scenarios::units::figure;
use std::path::Path;

/// Everything a person needs to decide.
pub(crate) fn buckets(all: &Buckets, findings: &BucketsFindings, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let verdict = &findings.verdict;
    layout
        .section("The job", [format!("{}. Buckets for {}.", titled(&all.scenario), findings.loader)])
        .gap()
        .section(
            "Which to buy",
            std::iter::once(verdict.answer.clone()).chain(verdict.besides.iter().cloned()),
        )
        .gap()
        .section("Today", today_lines(findings))
        .gap()
        .section("Lift and gates", fit_lines(findings, width))
        .gap()
        .section("Minutes saved", minutes_lines(findings, width));
    if findings.usage.is_some() {
        layout.gap().section("Does it pay", worth_lines(findings, width));
    }
    layout.section("Counted", [findings.counted.clone()]).gap();
    cares(&mut layout, &all.scenario.file, &findings.warnings, &findings.assumed.sentence);
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub(crate) fn buckets_files(all: &Buckets, folder: &Path, columns: u16) -> String {
    crate::render::screen::files(folder, "buckets.csv and the charts", all.made_with(), columns)
}

fn today_lines(findings: &BucketsFindings) -> Vec<String> {
    let today = &findings.today;
    let times: Vec<String> =
        today.runs.finish.iter().map(|at| format!("{} {} ({})", at.label, at.duration, at.known)).collect();
    vec![
        format!(
            "{}: {} loads (P50), {}.",
            sentence_start(&today.what),
            figure(today.runs.loads.value),
            times.join(", ")
        ),
        sentence(&today.runs.held_up),
    ]
}

fn sentence_start(what: &str) -> String {
    crate::findings::capital(what)
}

fn mark(bucket: &BucketFindings) -> String {
    match bucket.standing {
        Standing::Fits => String::new(),
        Standing::Today => "today's".into(),
        Standing::OverLift => "over the lift".into(),
        Standing::NotThrough | Standing::Refused => "no".into(),
    }
}

fn fit_lines(findings: &BucketsFindings, width: u16) -> Vec<String> {
    let rows = findings.buckets.iter().map(|bucket| {
        let what = bucket.what.split(',').next().unwrap_or_default().replace(" heaped", "");
        vec![
            bucket.name.clone(),
            what,
            bucket.lift_short.clone(),
            bucket.gates_short.clone(),
            bucket.price_said.clone().unwrap_or_else(|| "none".into()),
            mark(bucket),
        ]
    });
    let header = ["", "heaped", "of the lift", "gate", "price", ""];
    let mut all = lines(&header, rows.collect(), &[1, 2, 3, 4], width);
    let refused = findings.buckets.iter().filter(|bucket| bucket.standing == Standing::Refused);
    all.extend(refused.map(|bucket| {
        let words = if bucket.out_of_reach.is_empty() { &bucket.lift } else { &bucket.gates };
        format!("{}: {words}", bucket.name)
    }));
    all.push(
        "A load over the lift is cut. The machine's manual decides what may be lifted, not this table."
            .into(),
    );
    all
}

fn minutes_lines(findings: &BucketsFindings, width: u16) -> Vec<String> {
    let row = |name: &str, runs: &Runs| {
        let said = &runs.saved.said;
        let mut row = vec![name.to_owned(), figure(runs.loads.value)];
        row.extend(runs.finish.iter().map(|at| at.duration.clone()));
        row.extend([said.mean.clone(), said.eight_in_ten.clone()]);
        row
    };
    let others = findings.buckets.iter().filter(|bucket| bucket.standing != Standing::Today);
    let mut rows: Vec<Vec<String>> =
        others.filter_map(|bucket| Some(row(&bucket.name, bucket.runs.as_ref()?))).collect();
    rows.extend(findings.barrow.iter().filter_map(|barrow| Some(row(&barrow.name, barrow.runs.as_ref()?))));
    let header = ["", "loads", "P50", "P80", "on average", "8 jobs in 10"];
    let mut all = lines(&header, rows, &[1, 2, 3, 4], width);
    // Only of those that could be bought: the page and the files tell of all.
    let fit = findings.buckets.iter().filter(|bucket| bucket.standing == Standing::Fits);
    all.extend(fit.filter_map(|bucket| {
        Some(format!("Who waits with \"{}\": {}.", bucket.name, bucket.runs.as_ref()?.held_up_short))
    }));
    all.extend(
        findings.barrow.iter().map(|barrow| format!("{}: {}", sentence_start(&barrow.name), barrow.words)),
    );
    all
}

fn worth_lines(findings: &BucketsFindings, width: u16) -> Vec<String> {
    let rows = findings.buckets.iter().filter_map(|bucket| {
        let said = &bucket.worth.as_ref()?.said;
        Some(vec![
            bucket.name.clone(),
            said.yearly.clone(),
            said.years.clone(),
            said.hours.clone(),
            said.present_value.clone(),
            said.pays.clone(),
        ])
    });
    let years = findings.usage.as_ref().map_or(0, |usage| usage.years);
    let worth = format!("after {years} years");
    let header = ["", "a year", "paid back in", "hours on it", worth.as_str(), "pays"];
    lines(&header, rows.collect(), &[1, 2, 3, 4, 5], width)
}

/// The answer on buckets.
pub(super) fn card(all: &Buckets, findings: &BucketsFindings) -> Card {
    let job = row("The job", format!("{}. Buckets for {}.", titled(&all.scenario), findings.loader));
    let answer = &findings.verdict.answer;
    let mut card = Card::new(answer.clone(), job, &findings.warnings, &findings.assumed.all);
    card.row("Which to buy", answer.clone());
    card.row("Besides", findings.verdict.besides.iter().take(2).cloned().collect::<Vec<_>>().join("\n"));
    let today = &findings.today.runs;
    if let Some(plan) = today.finish.last() {
        card.row("Today", format!("{} ({}); {}.", plan.duration, plan.odds, lower(&today.held_up)));
    }
    card.files = &BUCKETS;
    card
}
