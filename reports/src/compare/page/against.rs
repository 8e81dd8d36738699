//! Each job against the first: minutes and money saved, run by run.

use super::Charts;
use super::choices::named;
use crate::compare::findings::{ChoiceFindings, ComparisonFindings, Difference};
use crate::compare::{Comparison, Judged};
use crate::findings::Saved;
use crate::findings::span;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::{Markup, html};

pub(super) fn time(comparison: &Comparison, findings: &ComparisonFindings, charts: &Charts<'_>) -> Part {
    let of = match comparison.time() {
        Judged::ClockTime => "Minutes are those of the clock, nights included.",
        _ if comparison.has_nights() => "Minutes are working time, nights left out.",
        _ => "Minutes are time on the job.",
    };
    let rows: Vec<(&Difference, &Saved)> = findings.differences.iter().map(|d| (d, &d.time)).collect();
    let body = html! {
        (charts.shown("differences", "Each choice as a picture"))
        (more("Differences in figures", html! {
            (table(&rows, "saves on average", "faster in"))
            p.note {
                "Run by run on the same days and loads. " (of) " ± with 95 % confidence. "
                (tight(&findings.runs))
            }
        }))
    };
    Part::open(
        "against",
        format!("Against {}, {}", findings.choices[0].letter, findings.choices[0].name),
        body,
    )
}

/// Nothing where no cost is known.
pub(super) fn money(findings: &ComparisonFindings, charts: &Charts<'_>) -> Option<Part> {
    let rows: Vec<(&Difference, &Saved)> =
        findings.differences.iter().filter_map(|d| Some((d, d.money.as_ref()?))).collect();
    let heads = ["Choice", "8 days in 10 between", "1 day in 2 within", "8 days in 10 within"];
    findings.choices.iter().any(|choice| choice.cost.is_some()).then(|| {
        let body = html! {
            (charts.shown("money", "Each choice as a picture"))
            (more("Costs in figures", html! {
                (Table::new(heads).rows(findings.choices.iter().map(cost)).draw())
                @if !rows.is_empty() { (table(&rows, "costs on average", "cheaper in")) }
            }))
        };
        Part::open("costs", "What it costs", body)
    })
}

fn cost(choice: &ChoiceFindings) -> Row {
    let head = named(&choice.letter, &choice.name);
    match choice.cost.as_ref().map(|cost| cost.said.as_slice()) {
        Some([p10, p50, p80, p90]) => {
            Row::new(head, [span(p10, p90), p50.clone(), p80.clone()].map(|words| html! { (words) }))
        }
        _ => Row::wide(head, html! { "not known" }),
    }
}

fn table(rows: &[(&Difference, &Saved)], mean: &str, smaller: &str) -> Markup {
    let some_same = rows.iter().any(|(_, saved)| saved.said.same.is_some());
    let heads = ["Choice", mean, "the middle run", "8 runs in 10", smaller]
        .into_iter()
        .chain(some_same.then_some("same in"));
    let row = |(difference, saved): &(&Difference, &Saved)| {
        let said = &saved.said;
        let same = some_same.then(|| said.same.as_deref().unwrap_or_default());
        let cells = [&said.mean, &said.median, &said.eight_in_ten, &said.smaller];
        let cells = cells.into_iter().map(String::as_str).chain(same).map(|words| html! { (tight(words)) });
        Row::new(named(&difference.letter, &difference.name), cells)
    };
    Table::new(heads).rows(rows.iter().map(row)).draw()
}
