//! Each job against the first: minutes and money saved, run by run.

use super::Charts;
use super::choices::named;
use crate::comparison::{Comparison, Judged};
use crate::findings::comparison::{ComparisonSays, Difference, Saved};
use crate::page::words::{span, tight};
use maud::{Markup, html};

pub(super) fn time(comparison: &Comparison, says: &ComparisonSays, charts: &Charts<'_>) -> Markup {
    let of = match comparison.time() {
        Judged::ClockTime => "Minutes are those of the clock, nights included.",
        _ if comparison.has_nights() => "Minutes are working time, nights left out.",
        _ => "Minutes are time on the job.",
    };
    let rows: Vec<(&Difference, &Saved)> = says.differences.iter().map(|d| (d, &d.time)).collect();
    html! {
        section id="against" {
            h2 { "Against " (says.choices[0].letter) ", " (says.choices[0].name) }
            (charts.figure("differences"))
            (table(&rows, "saves on average", "faster in"))
            p.note {
                "Run against run with the same luck: the same day, the same buckets. " (of) " ± with 95 % confidence. "
                (tight(&says.runs))
            }
        }
    }
}

/// Nothing where no cost is known.
pub(super) fn money(says: &ComparisonSays, charts: &Charts<'_>) -> Markup {
    let rows: Vec<(&Difference, &Saved)> =
        says.differences.iter().filter_map(|d| Some((d, d.money.as_ref()?))).collect();
    html! {
        @if says.choices.iter().any(|choice| choice.cost.is_some()) {
            section id="costs" {
                h2 { "What it costs" }
                table.short {
                    thead { tr {
                        th scope="col" { "Choice" }
                        th scope="col" { "8 days in 10 between" }
                        th scope="col" { "1 day in 2 within" }
                        th scope="col" { "8 days in 10 within" }
                    } }
                    tbody { @for choice in &says.choices { tr {
                        (named(&choice.letter, &choice.name))
                        @match choice.cost.as_ref().map(|cost| cost.said.as_slice()) {
                            Some([p10, p50, p80, p90]) => {
                                td { (span(p10, p90)) } td { (p50) } td { (p80) }
                            }
                            _ => { td { "not known" } td {} td {} }
                        }
                    } } }
                }
                (charts.figure("money"))
                @if !rows.is_empty() { (table(&rows, "costs on average", "cheaper in")) }
            }
        }
    }
}

fn table(rows: &[(&Difference, &Saved)], mean: &str, smaller: &str) -> Markup {
    let some_same = rows.iter().any(|(_, saved)| saved.said.same.is_some());
    html! {
        table.short {
            thead { tr {
                th scope="col" { "Choice" }
                th scope="col" { (mean) }
                th scope="col" { "the middle run" }
                th scope="col" { "8 runs in 10" }
                th scope="col" { (smaller) }
                @if some_same { th scope="col" { "same in" } }
            } }
            tbody { @for (difference, saved) in rows { tr {
                (named(&difference.letter, &difference.name))
                td { (tight(&saved.said.mean)) }
                td { (tight(&saved.said.median)) }
                td { (tight(&saved.said.eight_in_ten)) }
                td { (tight(&saved.said.smaller)) }
                @if some_same { td { (tight(saved.said.same.as_deref().unwrap_or_default())) } }
            } } }
        }
    }
}
