//! What more than one screen says of the job: its title, what to heed, what is assumed, where the report is.

use super::Layout;
use crate::card::{Card, CardWeight};
use crate::findings::{AssumedLine, Warning, Warnings, capital, sentence};
use scenarios::{Scenario, calendar};
use std::path::Path;

/// Warnings shown in full; more would push the answers off the screen.
const MOST_WARNINGS: usize = 3;

pub(crate) fn warning_lines(all: &[Warning], file: &str) -> Vec<String> {
    let shown = all.iter().take(MOST_WARNINGS);
    let mut lines: Vec<String> =
        shown.map(|w| format!("! {} {}", sentence(&w.cause), sentence(&w.remedy))).collect();
    if let Some(more) = all.len().checked_sub(MOST_WARNINGS).filter(|more| *more > 0) {
        lines.push(format!("! {more} more in the report and with `heapcast check {file} --full`."));
    }
    lines
}

/// The title with the date, the alternative and what else is changed.
pub(crate) fn titled(scenario: &Scenario) -> String {
    let date = scenario.date.map(|d| format!(", {}", calendar::whole(d))).unwrap_or_default();
    let alternative =
        scenario.alternative.as_ref().map(|a| format!(", alternative \"{a}\"")).unwrap_or_default();
    let changes: Vec<String> = scenario.changes.iter().map(ToString::to_string).collect();
    let changed =
        if changes.is_empty() { String::new() } else { format!(", changed: {}", changes.join("; ")) };
    format!("{}{date}{alternative}{changed}", scenario.title)
}

/// A few are told, a long list is only counted: it stands in full where the line says.
pub(crate) fn assumed_line(file: &str, all: &[AssumedLine]) -> String {
    match all {
        [] => "Nothing: the job says it all.".into(),
        [one] => format!("{}.", capital(&one.words)),
        [first, second] => format!("{}; {}.", capital(&first.words), second.words),
        _ => format!(
            "{} figures are assumed, not yours. Read them in the report or with `heapcast check {file} --full`.",
            all.len()
        ),
    }
}

fn usual_line(usual: &[Warning]) -> String {
    let first = usual.first().map(|w| sentence(&w.cause)).unwrap_or_default();
    match usual.len() {
        0 | 1 => first,
        n => format!("{first} {} more cautions in the report: read them before you start.", n - 1),
    }
}

/// The end of a full screen: warnings, what was assumed, what to take care of.
pub(crate) fn cares(layout: &mut Layout, file: &str, warnings: &Warnings, assumed: &str) {
    if !warnings.doubtful.is_empty() {
        layout.section("Warnings", warning_lines(&warnings.doubtful, file));
    }
    layout.section("Assumed", [assumed.to_owned()]);
    if !warnings.usual.is_empty() {
        layout.section("Take care", [usual_line(&warnings.usual)]);
    }
}

/// Where the files are, `more` beside the report among them, and how to get the same answer again.
pub(crate) fn files(folder: &Path, more: &str, made_with: String, columns: u16) -> String {
    let shown = scenarios::shown_path(folder);
    Layout::new(columns)
        .section("Files", [format!("{shown}/report.html to read and print; {more} next to it.")])
        .section("Made with", [made_with])
        .text()
}

/// The first screen: the card, what to read before the work begins, by number, and where the report is, `besides` after it.
pub(crate) fn first(card: &Card, folder: &Path, besides: &str, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    for row in std::iter::once(&card.job).chain(&card.rows) {
        layout.section(&row.label, [row.words.clone()]);
    }
    let count = |n: usize, one: &str, many: &str| match n {
        0 => None,
        1 => Some(format!("1 {one}")),
        n => Some(format!("{n} {many}")),
    };
    let doubtful = card.count(CardWeight::Warning);
    let all: Vec<String> = [
        count(doubtful, "warning", "warnings"),
        count(card.count(CardWeight::Usual), "caution", "cautions"),
        count(card.assumed.len(), "figure assumed", "figures assumed"),
    ]
    .into_iter()
    .flatten()
    .collect();
    if !all.is_empty() {
        let mark = if doubtful == 0 { "" } else { "! " };
        layout.section("Before you start", [format!("{mark}Read the report: {}.", all.join(", "))]);
    }
    let shown = scenarios::shown_path(folder);
    layout.section(
        "Report",
        [format!("{shown}/report.html to read and print{besides}; the tables on the screen: --full.")],
    );
    layout.text()
}
