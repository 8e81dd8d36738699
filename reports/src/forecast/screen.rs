//! The summary of a forecast on one screen.

use super::layout::{Layout, lines};
use crate::findings::{
    AssumedLine, ReliefLine, Warning, amounts, assumed, capital, done_by, handbook, left_over, relief,
    sentence, the_job, warnings, who_waits,
};
use crate::forecast::Forecast;
use scenarios::Scenario;
use std::path::Path;

/// Everything a person needs to know of the job, in the order they ask it.
pub fn summary(forecast: &Forecast, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let scenario = &forecast.scenario;
    layout
        .section("The job", [titled(scenario), the_job(scenario, forecast.units)])
        .gap()
        .section("Done by when", done_lines(forecast, width))
        .gap()
        .section("By the handbook", {
            let says = handbook(forecast);
            [format!("{} {}", says.sentence, says.why)]
        })
        .gap()
        .section("What holds it up", {
            let says = who_waits(forecast);
            [format!("{}. {}", says.title, says.sentence)]
        })
        .gap()
        .section("What would help", relief_lines(forecast, width))
        .gap()
        .section("What it takes", amount_lines(forecast, width))
        .section("Material", [left_over(forecast).sentence]);
    let warnings = warnings(&scenario.cautions);
    layout.gap();
    if !warnings.doubtful.is_empty() {
        layout.section("Warnings", warning_lines(&warnings.doubtful, &scenario.file));
    }
    layout.section("Assumed", [assumed_line(&scenario.file, &assumed(&scenario.assumptions).all)]);
    if !warnings.usual.is_empty() {
        layout.section("Take care", [usual_line(&warnings.usual)]);
    }
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub fn files(forecast: &Forecast, folder: &Path, columns: u16) -> String {
    let from = &forecast.provenance;
    let shown = scenarios::shown_path(folder);
    Layout::new(columns)
        .section("Files", [format!("{shown}/report.html to read and print; tables and charts next to it.")])
        .section("Made with", [from.words()])
        .text()
}

fn done_lines(forecast: &Forecast, width: u16) -> Vec<String> {
    let done = done_by(forecast);
    let ends = if done.order.enough { "done by" } else { "stops by" };
    let mut all = vec![done.plan_on];
    if done.certain {
        return all;
    }
    let rows = done.rows.iter().map(|row| {
        vec![row.label.clone(), row.odds.clone(), row.duration.clone(), row.clock.clone(), row.known.clone()]
    });
    all.extend(lines(&["", "", "takes", ends, "simulation error"], rows.collect(), &[2, 3], width));
    all.extend(done.by.map(|by| format!("{} ({})", by.sentence, by.known)));
    all
}

fn relief_lines(forecast: &Forecast, width: u16) -> Vec<String> {
    let says = relief(forecast);
    let (help, useless): (Vec<&ReliefLine>, Vec<&ReliefLine>) =
        says.lines.iter().partition(|line| line.helps);
    let rows = help.iter().map(|line| {
        let cost = line.cost.clone().unwrap_or_default();
        vec![capital(&line.what), line.saves.clone(), line.give_or_take.clone(), cost]
    });
    let priced = says.lines.iter().any(|line| line.cost.is_some());
    let header = ["", "saves", "simulation error", if priced { "job cost" } else { "" }];
    let mut all = lines(&header, rows.collect(), &[1], width);
    if help.is_empty() {
        all.clear();
    }
    if !useless.is_empty() {
        let names: Vec<&str> = useless.iter().map(|line| line.what.as_str()).collect();
        all.push(format!("Little or no help: {}.", names.join(", ")));
    }
    all
}

fn amount_lines(forecast: &Forecast, width: u16) -> Vec<String> {
    let amounts = amounts(forecast);
    let rows = amounts.iter().filter_map(|amount| {
        let said = amount.said.as_ref()?;
        Some([amount.what, &said.p10, &said.p50, &said.p80, &said.p90].map(capital).to_vec())
    });
    let mut all = lines(&["", "P10", "P50", "P80", "P90"], rows.collect(), &[1, 2, 3, 4], width);
    let unknown: Vec<String> =
        amounts.iter().filter_map(|a| Some(format!("{} ({})", a.what, a.unknown.as_ref()?))).collect();
    if !unknown.is_empty() {
        all.push(format!("Not known: {}.", unknown.join(", ")));
    }
    all
}

/// Warnings shown in full; more would push the answers off the screen.
const MOST_WARNINGS: usize = 3;

pub(super) fn warning_lines(all: &[Warning], file: &str) -> Vec<String> {
    let shown = all.iter().take(MOST_WARNINGS);
    let mut lines: Vec<String> =
        shown.map(|w| format!("! {} {}", sentence(&w.cause), sentence(&w.remedy))).collect();
    if let Some(more) = all.len().checked_sub(MOST_WARNINGS).filter(|more| *more > 0) {
        lines.push(format!("! {more} more in the report and with `heapcast check {file} --full`."));
    }
    lines
}

/// The title with the date, the alternative and what else is changed.
pub(super) fn titled(scenario: &Scenario) -> String {
    let date = scenario.date.map(|d| format!(", {}", d.strftime("%A %-d %B %Y"))).unwrap_or_default();
    let alternative =
        scenario.alternative.as_ref().map(|a| format!(", alternative \"{a}\"")).unwrap_or_default();
    let changes: Vec<String> = scenario.changes.iter().map(ToString::to_string).collect();
    let changed =
        if changes.is_empty() { String::new() } else { format!(", changed: {}", changes.join("; ")) };
    format!("{}{date}{alternative}{changed}", scenario.title)
}

/// A few are told, a long list is only counted: it stands in full where the line says.
pub(super) fn assumed_line(file: &str, all: &[AssumedLine]) -> String {
    match all {
        [] => "Nothing: the file says it all.".into(),
        [one] => format!("{}.", capital(&one.words)),
        [first, second] => format!("{}; {}.", capital(&first.words), second.words),
        _ => format!(
            "{} figures are not from your file but assumed. Read them in the report or with `heapcast check {file} --full`.",
            all.len()
        ),
    }
}

pub(super) fn usual_line(usual: &[Warning]) -> String {
    let first = usual.first().map(|w| sentence(&w.cause)).unwrap_or_default();
    match usual.len() {
        0 | 1 => first,
        n => format!("{first} {} more cautions in the report: read them before you start.", n - 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn plain(columns: u16) -> String {
        anstream::adapter::strip_str(&summary(&example::forecast(), columns)).to_string()
    }

    #[test]
    fn a_typical_job_fits_one_screen_of_forty_lines() {
        let forecast = example::forecast();
        let text = plain(100) + &files(&forecast, Path::new("forecast"), 100);
        assert!(text.lines().count() <= 42, "{} lines:\n{text}", text.lines().count());
    }

    #[test]
    fn no_line_is_wider_than_the_screen() {
        for columns in [80, 100, 200] {
            let text = plain(columns);
            let widest = text.lines().max_by_key(|line| line.chars().count()).unwrap();
            assert!(widest.chars().count() <= usize::from(columns).min(100), "{columns}: {widest}");
        }
    }

    #[test]
    fn the_answers_come_in_the_order_people_ask() {
        let text = plain(100);
        let headings = [
            "The job",
            "Done by when",
            "By the handbook",
            "What holds it up",
            "What would help",
            "What it takes",
        ];
        let places: Vec<usize> = headings.iter().map(|h| text.find(h).expect(h)).collect();
        assert!(places.is_sorted(), "{text}");
    }

    #[test]
    fn the_line_to_plan_on_comes_before_the_table() {
        let text = plain(100);
        assert!(
            text.contains("Done by when      Plan on 2 h 40 min: done by 10:40 am, 8 days in 10."),
            "{text}"
        );
    }
}
