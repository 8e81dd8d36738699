//! Each job by itself: how long it takes, what holds it up, how it differs from the first.

use crate::compare::Comparison;
use crate::compare::findings::{ChoiceFindings, ComparisonFindings};
use crate::findings::span;
use crate::render::page::charts::Charts;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::{Markup, html};

/// Letter and name, as the head of a row.
pub(super) fn named(letter: &str, name: &str) -> Markup {
    html! { b { (letter) } " " (name) }
}

/// All of them in one picture; P10 to P90, P50, P80 and its time of the clock.
pub(super) fn times(comparison: &Comparison, findings: &ComparisonFindings, charts: &Charts<'_>) -> Part {
    let row = |choice: &ChoiceFindings| {
        let cells = match choice.finish.as_slice() {
            [p10, p50, p80, p90] => vec![
                span(&p10.duration, &p90.duration),
                p50.duration.clone(),
                p80.duration.clone(),
                p80.clock.clone(),
            ],
            _ => Vec::new(),
        };
        let cells = cells.into_iter().map(|words| html! { (tight(&words)) });
        Row::new(named(&choice.letter, &choice.name), cells).plan(choice.letter == findings.verdict.best)
    };
    let heads = ["Choice", "8 days in 10 between", "1 day in 2 within", "8 days in 10 within", "that is by"];
    let body = html! {
        (charts.shown("completion", "All choices as a picture"))
        (more("Times in figures", html! {
            (Table::new(heads).rows(findings.choices.iter().map(row)).draw())
            p.note {
                "Time on the job from its start to the end of clean-up"
                @if comparison.has_nights() { ", nights left out" }
                "; between: P10 to P90, within: P50 and P80. In bold: the one to take."
            }
        }))
    };
    Part::open("times", "Done by when", body)
}

/// Who waits for whom in each.
pub(super) fn held_up(findings: &ComparisonFindings) -> Part {
    let body = html! {
        dl { @for choice in &findings.choices {
            dt { (choice.letter) " " (choice.name) }
            dd { (choice.held_up) ". " (tight(&choice.held_up_more)) }
        } }
    };
    Part::folded("waits", "What holds each up", body)
}

/// What was changed to make each.
pub(super) fn differ(comparison: &Comparison, findings: &ComparisonFindings) -> Part {
    let from = |place: usize, choice: &ChoiceFindings| {
        let mut parts = Vec::new();
        if comparison.choices[place].scenario.file != comparison.first().scenario.file || place == 0 {
            parts.push(choice.file.clone());
        }
        parts.extend(
            choice.alternative.iter().map(|name| format!("alternative \"{name}\" of {}", choice.file)),
        );
        if !choice.changes.is_empty() {
            parts.push(choice.changes.join("; "));
        }
        parts.extend(choice.same_as.iter().map(|letter| format!("the very same job as {letter}")));
        parts.join("; ")
    };
    let body = html! {
        dl { @for (place, choice) in findings.choices.iter().enumerate() {
            dt { (choice.letter) " " (choice.name) }
            dd { (from(place, choice)) }
        } }
    };
    Part::folded("choices", "The choices", body)
}
