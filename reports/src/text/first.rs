//! The first screen of every command: the answer in about ten lines. The tables behind it stand in the report and come
//! with `--full`.

use super::layout::Layout;
use super::summary::titled;
use crate::buckets::Buckets;
use crate::comparison::Comparison;
use crate::findings::buckets::BucketsSays;
use crate::findings::comparison::ComparisonSays;
use crate::findings::sweep::SweepSays;
use crate::findings::{
    Amount, Assumed, DoneBy, Warnings, amounts, assumed, capital, done_by, is_fuelled, lower, order, relief,
    sentence, the_job, warnings, who_waits,
};
use crate::forecast::Forecast;
use crate::quote::Quote;
use crate::sweep::Sweep;
use scenarios::Scenario;
use scenarios::units::System;
use std::path::Path;

/// The answer to a forecast.
pub fn forecast_first(forecast: &Forecast, folder: &Path, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let (scenario, done) = (&forecast.scenario, done_by(forecast));
    layout.section("The job", [titled(scenario)]);
    layout.section(if done.order.enough { "Plan on" } else { "First" }, [plan_on(&done)]);
    if !done.certain {
        let heading = if done.order.enough { "Range" } else { "Crew at work" };
        layout.section(heading, [done.range.replace(", then the crew stops", "")]);
    }
    if let Some(by) = &done.by {
        layout.section("In time", [by.sentence.clone()]);
    }
    layout.section("What holds it up", [sentence(&who_waits(forecast).title)]);
    layout.section("What would help", [sentence(&relief(forecast).title)]);
    if done.order.enough {
        layout.section("Order", [done.order.sentence.clone()]);
    }
    if let Some(cost) = amounts(forecast).iter().find(|amount| amount.key == "cost") {
        layout.section("Cost", [cost_words(cost)]);
    }
    heed(&mut layout, &warnings(&scenario.cautions), &assumed(&scenario.assumptions));
    report(&mut layout, folder, "");
    layout.text()
}

/// The heading says "Plan on" already.
fn plan_on(done: &DoneBy) -> String {
    match done.plan_on.strip_prefix("Plan on ") {
        Some(rest) => capital(rest),
        None => done.plan_on.clone(),
    }
}

fn cost_words(cost: &Amount) -> String {
    match (&cost.said, &cost.unknown) {
        (Some(said), _) if said.p10 == said.p90 => format!("{}.", said.p50),
        (Some(said), _) => format!("About {}; 8 days in 10 from {} to {}.", said.p50, said.p10, said.p90),
        (None, Some(why)) => format!("Not known: {why}."),
        (None, None) => "Not known.".into(),
    }
}

/// Without simulation errors: `a second raker saves 27 min (± 3 min)`. They come with `--full` and stand in the report.
fn without_error(words: &str) -> String {
    let mut kept = String::new();
    let mut rest = words;
    while let Some(at) = rest.find(" (±") {
        kept.push_str(&rest[..at]);
        rest = rest[at..].find(')').map_or("", |end| &rest[at + end + 1..]);
    }
    kept + rest
}

/// What to read before the work begins, by number.
fn heed(layout: &mut Layout, warnings: &Warnings, assumed: &Assumed) {
    let count = |n: usize, one: &str, many: &str| match n {
        0 => None,
        1 => Some(format!("1 {one}")),
        n => Some(format!("{n} {many}")),
    };
    let all: Vec<String> = [
        count(warnings.doubtful.len(), "warning", "warnings"),
        count(warnings.usual.len(), "caution", "cautions"),
        count(assumed.all.len(), "figure assumed", "figures assumed"),
    ]
    .into_iter()
    .flatten()
    .collect();
    if !all.is_empty() {
        let mark = if warnings.doubtful.is_empty() { "" } else { "! " };
        layout.section("Before you start", [format!("{mark}Read the report: {}.", all.join(", "))]);
    }
}

fn report(layout: &mut Layout, folder: &Path, besides: &str) {
    let shown = scenarios::shown_path(folder);
    layout.section(
        "Report",
        [format!("{shown}/report.html to read and print{besides}; the tables on the screen: --full.")],
    );
}

/// The answer to a comparison.
pub fn comparison_first(all: &Comparison, says: &ComparisonSays, folder: &Path, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let verdict = &says.verdict;
    layout.section(
        "The jobs",
        [format!("{}: {} compared.", super::comparison::titles(all), says.choices.len())],
    );
    layout.section("Which to take", [verdict.take.clone(), verdict.sure.clone()]);
    if let Some(best) = says.choices.iter().find(|choice| choice.letter == verdict.best) {
        if let Some(plan) = best.finish.get(2) {
            let words = format!("{}: {}, until {}, {}.", best.letter, plan.duration, plan.clock, plan.odds);
            let choice = &all.choices[all.best];
            let enough = order(&choice.study, &choice.scenario, all.units).enough;
            layout.section(if enough { "Plan on" } else { "Crew at work" }, [words]);
        }
        layout.section("What holds it up", [sentence(&best.held_up)]);
    }
    layout.section("Besides", verdict.besides.iter().take(2).cloned());
    if !says.not_alike.is_empty() {
        layout.section("Not alike", says.not_alike.iter().map(|line| format!("! {line}")));
    }
    heed(&mut layout, &says.warnings, &says.assumed);
    report(&mut layout, folder, "");
    layout.text()
}

/// The answer to a sweep.
pub fn sweep_first(sweep: &Sweep, says: &SweepSays, folder: &Path, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    layout.section("The job", [titled(&sweep.base)]);
    if let Some(short) = &says.short {
        layout.section("First", [short.clone()]);
    }
    if let Some(by) = &says.by {
        layout.section(&format!("By {}", by.clock), [by.sentence.clone()]);
    }
    layout
        .section("What pays", [without_error(format!("{} {}", says.knee.steps, says.knee.sentence).trim())]);
    if let Some(money) = &says.money {
        layout.section("Money", [without_error(&money.sentence)]);
    }
    heed(&mut layout, &warnings(&sweep.cautions()), &assumed(&sweep.assumptions()));
    report(&mut layout, folder, "");
    layout.text()
}

/// The answer on buckets.
pub fn buckets_first(all: &Buckets, says: &BucketsSays, folder: &Path, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    layout.section("The job", [format!("{}. Buckets for {}.", titled(&all.scenario), says.loader)]);
    layout.section("Which to buy", [says.verdict.answer.clone()]);
    layout.section("Besides", says.verdict.besides.iter().take(2).cloned());
    let today = &says.today.runs;
    if let Some(plan) = today.finish.last() {
        let words = format!("{} ({}); {}.", plan.duration, plan.odds, lower(&today.held_up));
        layout.section("Today", [words]);
    }
    heed(&mut layout, &says.warnings, &says.assumed);
    report(&mut layout, folder, "");
    layout.text()
}

/// The price to ask.
pub fn quote_first(quote: &Quote, folder: &Path, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let (scenario, says) = (&quote.scenario, &quote.says);
    layout.section("The job", [titled(scenario)]);
    layout.section("What to ask", [says.offer.verdict.clone()]);
    layout.section("What it costs", [says.cost.range.clone()]);
    let hours = match &says.truckload.first {
        // The order is said once, with the price.
        Some(first) => says.hours.sentence.trim_start_matches(first.as_str()).trim().to_owned(),
        None => says.hours.sentence.clone(),
    };
    layout.section("By the hour", [hours]);
    layout.section("Not in it", [says.gaps.short()]);
    heed(&mut layout, &warnings(&scenario.cautions), &assumed(&scenario.assumptions));
    report(
        &mut layout,
        folder,
        &format!(", for you; {}/client.html for the client", scenarios::shown_path(folder)),
    );
    layout.text()
}

/// Whether a file can be run, and what is doubtful in it.
pub fn check_first(scenario: &Scenario, units: System, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let warnings = warnings(&scenario.cautions);
    let assumed = assumed(&scenario.assumptions);
    layout.section("The job", [titled(scenario), the_job(scenario, units), super::verdict(scenario)]);
    if !warnings.doubtful.is_empty() {
        layout.section("Warnings", super::summary::warning_lines(&warnings.doubtful, &scenario.file));
    }
    if !warnings.usual.is_empty() {
        let first = warnings.usual.first().map(|w| sentence(&w.cause)).unwrap_or_default();
        let all = format!("All {} with `heapcast check {} --full`.", warnings.usual.len(), scenario.file);
        layout.section("Take care", [format!("{first} {all}")]);
    }
    layout.section("Assumed", [super::summary::assumed_line(&scenario.file, &assumed.all)]);
    if !is_fuelled(&scenario.job) {
        layout.section("Fuel", ["Not counted: the file names no fuel burn.".to_owned()]);
    }
    layout.text()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn plain(text: &str) -> String {
        anstream::adapter::strip_str(text).to_string()
    }

    #[test]
    fn the_first_screen_is_ten_lines_and_the_answer_comes_first() {
        for columns in [80, 100, 200] {
            let text = plain(&forecast_first(&example::forecast(), Path::new("forecast"), columns));
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
        let text = plain(&forecast_first(&forecast, Path::new("forecast"), 100));
        let second = text.lines().nth(1).unwrap_or_default();
        assert!(second.starts_with("First             Order 1 more truckload (13.1 yd3)"), "{text}");
        assert!(!text.contains("Plan on"), "{text}");
        let words = text.split_whitespace().collect::<Vec<_>>().join(" ").replace("No run is done by", "");
        assert!(!words.contains("done by"), "{text}");
        assert!(text.lines().count() <= 10, "{text}");
    }

    #[test]
    fn the_first_screen_of_a_quote_is_about_ten_lines() {
        let text = plain(&quote_first(&example::quote(), Path::new("quote"), 100));
        assert!(text.lines().count() <= 12, "{} lines:\n{text}", text.lines().count());
    }
}
