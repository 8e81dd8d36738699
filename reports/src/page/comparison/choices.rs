//! Each job by itself: how long it takes, what holds it up, how it differs from the first.

use crate::comparison::Comparison;
use crate::findings::comparison::{ChoiceSays, ComparisonSays};
use crate::page::words::{span, tight};
use maud::{Markup, html};

/// Letter and name, as the head of a row.
pub(super) fn named(letter: &str, name: &str) -> Markup {
    html! { th scope="row" { b { (letter) } " " (name) } }
}

/// P10 to P90, P50, P80 and its time of the clock.
pub(super) fn times(comparison: &Comparison, says: &ComparisonSays) -> Markup {
    let best = |choice: &ChoiceSays| choice.letter == says.verdict.best;
    html! {
        section id="times" {
            h2 { "Done by when" }
            table.short {
                thead { tr {
                    th scope="col" { "Choice" }
                    th scope="col" { "8 days in 10 between" }
                    th scope="col" { "1 day in 2 within" }
                    th scope="col" { "8 days in 10 within" }
                    th scope="col" { "that is by" }
                } }
                tbody { @for choice in &says.choices {
                    tr class=[best(choice).then_some("plan-row")] {
                        (named(&choice.letter, &choice.name))
                        @if let [p10, p50, p80, p90] = choice.finish.as_slice() {
                            td { (tight(&span(&p10.duration, &p90.duration))) }
                            td { (tight(&p50.duration)) }
                            td { (tight(&p80.duration)) }
                            td { (tight(&p80.clock)) }
                        }
                    }
                } }
            }
            p.note {
                "Time on the job from its start to the end of clean-up"
                @if comparison.has_nights() { ", nights left out" }
                "; between: P10 to P90, within: P50 and P80. In bold: the one to take."
            }
        }
    }
}

/// Who waits for whom in each.
pub(super) fn held_up(says: &ComparisonSays) -> Markup {
    html! {
        section id="waits" {
            h2 { "What holds each up" }
            dl { @for choice in &says.choices {
                dt { (choice.letter) " " (choice.name) }
                dd { (choice.held_up) ". " (tight(&choice.held_up_more)) }
            } }
        }
    }
}

/// What was changed to make each.
pub(super) fn differ(comparison: &Comparison, says: &ComparisonSays) -> Markup {
    let from = |place: usize, choice: &ChoiceSays| {
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
    html! {
        section id="choices" {
            h2 { "The choices" }
            dl { @for (place, choice) in says.choices.iter().enumerate() {
                dt { (choice.letter) " " (choice.name) }
                dd { (from(place, choice)) }
            } }
        }
    }
}
