//! A comparison on one screen: the verdict first, then the jobs side by side.

use crate::card::{Card, row};
use crate::compare::findings::{ChoiceFindings, ComparisonFindings};
use crate::compare::{COMPARISON, Comparison, Judged};
use crate::findings::{order, sentence};
use crate::render::screen::{Layout, cares, lines};
use std::path::Path;

/// Everything a person needs to choose.
pub(crate) fn comparison(comparison: &Comparison, findings: &ComparisonFindings, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let first = comparison.first();
    let verdict = &findings.verdict;
    let answer = format!("{} {}", verdict.take, verdict.sure);
    layout
        .section("The jobs", [format!("{}: {} compared.", titles(comparison), findings.choices.len())])
        .gap()
        .section("Which to take", std::iter::once(answer).chain(verdict.besides.iter().cloned()));
    if !findings.not_alike.is_empty() {
        layout.section("Not alike", findings.not_alike.iter().map(|line| format!("! {line}")));
    }
    layout.gap().section("Done by when", time_lines(comparison, &findings.choices, width)).gap().section(
        &format!("Compared with {}", findings.choices[0].letter),
        difference_lines(comparison, findings, width),
    );
    if findings.choices.iter().any(|choice| choice.cost.is_some()) {
        layout.gap().section("What it costs", cost_lines(findings, width));
    }
    layout.gap().section("What holds it up", held_up_lines(&findings.choices, width)).gap();
    cares(&mut layout, &first.scenario.file, &findings.warnings, &findings.assumed.sentence);
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub(crate) fn comparison_files(comparison: &Comparison, folder: &Path, columns: u16) -> String {
    crate::render::screen::files(folder, "tables and charts", comparison.made_with(), columns)
}

/// The title of the job, or the titles of several.
fn titles(comparison: &Comparison) -> String {
    let mut titles: Vec<&str> = Vec::new();
    for choice in &comparison.choices {
        if !titles.contains(&choice.scenario.title.as_str()) {
            titles.push(&choice.scenario.title);
        }
    }
    titles.join("; ")
}

/// A job as a table names it.
fn named(letter: &str, name: &str) -> String {
    format!("{letter} {name}")
}

fn time_lines(comparison: &Comparison, choices: &[ChoiceFindings], width: u16) -> Vec<String> {
    let rows = choices.iter().map(|choice| {
        let mut row = vec![named(&choice.letter, &choice.name)];
        row.extend(choice.finish.iter().map(|p| p.duration.clone()));
        row.push(choice.finish.get(2).map(|p80| p80.clock.clone()).unwrap_or_default());
        row
    });
    let mut all = lines(&["", "P10", "P50", "P80", "P90", "P80 by"], rows.collect(), &[1, 2, 3, 4, 5], width);
    if comparison.has_nights() {
        all.push("Working time, nights left out; the P80 by the clock next to it.".into());
    }
    all
}

fn difference_lines(comparison: &Comparison, findings: &ComparisonFindings, width: u16) -> Vec<String> {
    let some_same = findings.differences.iter().any(|d| d.time.said.same.is_some());
    let rows = findings.differences.iter().map(|difference| {
        let said = &difference.time.said;
        // The names stand in the table above.
        let mut row = vec![
            difference.letter.clone(),
            said.mean.clone(),
            said.median.clone(),
            said.eight_in_ten.clone(),
            said.smaller.clone(),
        ];
        row.extend(some_same.then(|| said.same.clone().unwrap_or_default()));
        row
    });
    let mut header = vec!["", "saves on average", "median", "8 runs in 10", "faster in"];
    header.extend(some_same.then_some("same in"));
    let mut all = lines(&header, rows.collect(), &[1, 2, 4, 5], width);
    let of = match comparison.time() {
        Judged::ClockTime => "Minutes of the clock, nights included",
        _ if comparison.has_nights() => "Working time, nights left out",
        _ => "Time on the job",
    };
    all.push(format!("{of}; ± with 95 % confidence. {}", findings.runs));
    all
}

fn cost_lines(findings: &ComparisonFindings, width: u16) -> Vec<String> {
    let rows = findings.choices.iter().map(|choice| {
        let mut row = vec![named(&choice.letter, &choice.name)];
        match &choice.cost {
            Some(cost) => row.extend(cost.said.iter().cloned()),
            None => row.extend(["not known".to_owned(), String::new(), String::new(), String::new()]),
        }
        let saved =
            findings.differences.iter().find(|d| d.letter == choice.letter).and_then(|d| d.money.as_ref());
        row.push(saved.map(|saved| saved.said.mean.clone()).unwrap_or_default());
        row
    });
    lines(&["", "P10", "P50", "P80", "P90", "on average"], rows.collect(), &[1, 2, 3, 4, 5], width)
}

fn held_up_lines(choices: &[ChoiceFindings], width: u16) -> Vec<String> {
    let rows = choices.iter().map(|choice| vec![choice.letter.clone(), format!("{}.", choice.held_up)]);
    lines(&[], rows.collect(), &[], width)
}

/// The answer to a comparison.
pub(super) fn card(all: &Comparison, findings: &ComparisonFindings) -> Card {
    let verdict = &findings.verdict;
    let job = row("The jobs", format!("{}: {} compared.", titles(all), findings.choices.len()));
    let mut card = Card::new(headline(findings), job, &findings.warnings, &findings.assumed.all);
    card.row("Which to take", [verdict.take.as_str(), &verdict.sure].join("\n"));
    if let Some(best) = findings.choices.iter().find(|choice| choice.letter == verdict.best) {
        if let Some(plan) = best.finish.get(2) {
            let words = format!("{}: {}, until {}, {}.", best.letter, plan.duration, plan.clock, plan.odds);
            let choice = &all.choices[all.best];
            let enough = order(&choice.study, &choice.scenario, all.units).enough;
            card.row(if enough { "Plan on" } else { "Crew at work" }, words);
        }
        card.row("What holds it up", sentence(&best.held_up));
    }
    card.row("Besides", verdict.besides.iter().take(2).cloned().collect::<Vec<_>>().join("\n"));
    if !findings.not_alike.is_empty() {
        let lines: Vec<String> = findings.not_alike.iter().map(|line| format!("! {line}")).collect();
        card.row("Not alike", lines.join("\n"));
    }
    card.files = &COMPARISON;
    card
}

/// The answer in one line.
pub(super) fn headline(findings: &ComparisonFindings) -> String {
    format!("{} {}", findings.verdict.take, findings.verdict.sure)
}
