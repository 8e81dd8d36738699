//! The summary of a forecast on one screen.

use crate::findings::{
    ReliefLine, amounts, assumed, capital, done_by, handbook, left_over, relief, the_job_in_short, warnings,
    who_waits,
};
use crate::forecast::run::Forecast;
use crate::render::screen::{Layout, assumed_line, cares, lines, titled};
use std::path::Path;

/// Everything a person needs to know of the job, in the order they ask it.
pub(crate) fn summary(forecast: &Forecast, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let scenario = &forecast.scenario;
    layout
        .section("The job", [titled(scenario), the_job_in_short(scenario)])
        .gap()
        .section("Done by when", done_lines(forecast, width))
        .gap()
        .section("By the handbook", {
            let findings = handbook(forecast);
            [format!("{} {}", findings.sentence, findings.why)]
        })
        .gap()
        .section("What holds it up", {
            let findings = who_waits(forecast);
            [format!("{}. {}", findings.title, findings.sentence)]
        })
        .gap()
        .section("What would help", relief_lines(forecast, width))
        .gap()
        .section("What it takes", amount_lines(forecast, width))
        .section("Material", [left_over(forecast).sentence]);
    let warnings = warnings(&scenario.cautions);
    layout.gap();
    cares(
        &mut layout,
        &scenario.file,
        &warnings,
        &assumed_line(&scenario.file, &assumed(&scenario.assumptions).all),
    );
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub(crate) fn files(forecast: &Forecast, folder: &Path, columns: u16) -> String {
    crate::render::screen::files(folder, "tables and charts", forecast.provenance.words(), columns)
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
    let findings = relief(forecast);
    let (help, useless): (Vec<&ReliefLine>, Vec<&ReliefLine>) =
        findings.lines.iter().partition(|line| line.helps);
    let rows = help.iter().map(|line| {
        let cost = line.cost.clone().unwrap_or_default();
        vec![capital(&line.what), line.saves.clone(), line.give_or_take.clone(), cost]
    });
    let priced = findings.lines.iter().any(|line| line.cost.is_some());
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Answer;
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
        example::assert_fits(plain);
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

    #[test]
    fn the_first_screen_is_ten_lines_and_the_answer_comes_first() {
        for columns in [80, 100, 200] {
            let first = example::forecast().first(Path::new("forecast"), columns);
            let text = anstream::adapter::strip_str(&first).to_string();
            let most = if columns == 80 { 14 } else { 10 };
            assert!(text.lines().count() <= most, "{} lines:\n{text}", text.lines().count());
            assert!(
                text.lines().nth(1).is_some_and(|line| line.starts_with("Plan on           2 h 40 min:")),
                "{text}"
            );
        }
    }

    #[test]
    fn whoever_reads_the_first_screen_of_a_short_job_orders_more() {
        let mut forecast = example::forecast();
        forecast.study.outcomes.iter_mut().for_each(|o| (o.short_m3, o.ends_short) = (2.0, true));
        let first = forecast.first(Path::new("forecast"), 100);
        let text = anstream::adapter::strip_str(&first).to_string();
        let second = text.lines().nth(1).unwrap_or_default();
        assert!(second.starts_with("First             Order 1 more truckload (13.1 yd3)"), "{text}");
        assert!(!text.contains("Plan on"), "{text}");
        let words = text.split_whitespace().collect::<Vec<_>>().join(" ").replace("No run is done by", "");
        assert!(!words.contains("done by"), "{text}");
        assert!(text.lines().count() <= 10, "{text}");
    }
}
