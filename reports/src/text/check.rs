//! What a check says: cautions and every assumption in full.

use super::layout::{Layout, lines};
use crate::findings::{Warning, assumed, capital, sentence, the_job, warnings};
use scenarios::Scenario;
use scenarios::units::System;

/// Everything known of the job before any run.
pub fn check(scenario: &Scenario, units: System, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let warnings = warnings(&scenario.cautions);
    let assumed = assumed(&scenario.assumptions);
    layout.section("The job", [scenario.title.clone(), the_job(scenario, units), verdict(scenario)]);
    if !scenario.alternatives.is_empty() {
        layout.section("Alternatives", [scenario.alternatives.join(", ")]);
    }
    if !warnings.doubtful.is_empty() {
        layout.gap().section("Warnings", warnings.doubtful.iter().map(caution));
    }
    if !warnings.usual.is_empty() {
        layout.gap().section("Take care", warnings.usual.iter().map(caution));
    }
    let rows = assumed.all.into_iter().map(|a| vec![capital(&a.words), a.key, a.from]);
    let list = lines(&["what", "key", "from"], rows.collect(), &[], width);
    layout.gap().section("Assumed", std::iter::once(assumed.sentence));
    if !scenario.assumptions.is_empty() {
        layout.section("", list);
    }
    layout.text()
}

/// Whether the file can be run, in a line.
pub fn verdict(scenario: &Scenario) -> String {
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
