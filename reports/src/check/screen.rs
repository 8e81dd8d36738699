//! What a check says: cautions and every assumption in full.

use crate::card::{Card, row};
use crate::findings::{Warning, assumed, is_fuelled, sentence, the_job, the_job_in_lines, warnings};
use crate::render::screen::Layout;
use crate::render::screen::titled;
use scenarios::Scenario;

/// Everything known of the job before any run.
pub fn check(scenario: &Scenario, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let warnings = warnings(&scenario.cautions);
    let assumed = assumed(&scenario.assumptions);
    layout.section("The job", [titled(scenario), the_job(scenario), verdict(scenario)]);
    if !scenario.alternatives.is_empty() {
        layout.section("Alternatives", [scenario.alternatives.join(", ")]);
    }
    if !warnings.doubtful.is_empty() {
        layout.gap().section("Warnings", warnings.doubtful.iter().map(caution));
    }
    if !warnings.usual.is_empty() {
        layout.gap().section("Take care", warnings.usual.iter().map(caution));
    }
    let list = assumed.all.iter().map(|a| format!("- {} ({}; {})", sentence(&a.words), a.key, a.from));
    layout.gap().section("Assumed", std::iter::once(assumed.sentence.clone()).chain(list));
    layout.text()
}

/// Whether the file can be run, in a line.
pub(crate) fn verdict(scenario: &Scenario) -> String {
    let file = &scenario.file;
    match warnings(&scenario.cautions).doubtful.len() {
        0 => format!("{file} can be run; nothing in it is doubtful."),
        1 => format!("{file} can be run; one thing in it is doubtful."),
        n => format!("{file} can be run; {n} things in it are doubtful."),
    }
}

fn caution(warning: &Warning) -> String {
    format!("- {} {}", sentence(&warning.cause), sentence(&warning.remedy))
}

/// Whether a file can be run, and what is doubtful in it.
pub(super) fn card(scenario: &Scenario) -> Card {
    let (warnings, assumed) = (warnings(&scenario.cautions), assumed(&scenario.assumptions).all);
    let verdict = verdict(scenario);
    let job = row("The job", [titled(scenario), the_job_in_lines(scenario), verdict.clone()].join("\n"));
    let mut card = Card::new(verdict, job, &warnings, &assumed);
    if !is_fuelled(&scenario.job) {
        card.row("Fuel", "Not counted: the job names no fuel burn.");
    }
    card
}

/// The same as the first screen.
pub(crate) fn check_first(scenario: &Scenario, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let card = card(scenario);
    let warnings = warnings(&scenario.cautions);
    layout.section(&card.job.label, [card.job.words.clone()]);
    if !warnings.doubtful.is_empty() {
        layout.section("Warnings", crate::render::screen::warning_lines(&warnings.doubtful, &scenario.file));
    }
    if !warnings.usual.is_empty() {
        let first = warnings.usual.first().map(|w| sentence(&w.cause)).unwrap_or_default();
        let all = format!("All {} with `heapcast check {} --full`.", warnings.usual.len(), scenario.file);
        layout.section("Take care", [format!("{first} {all}")]);
    }
    layout.section("Assumed", [crate::render::screen::assumed_line(&scenario.file, &card.assumed)]);
    for row in &card.rows {
        layout.section(&row.label, [row.words.clone()]);
    }
    layout.text()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn every_caution_and_assumption_is_listed_in_full() {
        let scenario = example::scenario();
        let text = anstream::adapter::strip_str(&check(&scenario, 100)).to_string();
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("arena.toml can be run; one thing in it is doubtful."), "{text}");
        for caution in &scenario.cautions {
            assert!(
                flat.contains(&sentence(&caution.cause)) && flat.contains(&sentence(&caution.remedy)),
                "{text}"
            );
        }
        for assumed in &scenario.assumptions {
            assert!(flat.contains(&format!(
                "{} ({}; {})",
                sentence(&assumed.words),
                assumed.key,
                assumed.from
            )));
        }
    }
}
