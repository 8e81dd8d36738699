//! What it costs, in its parts.

use crate::findings::capital;
use crate::quote::Quote;
use crate::quote::findings::CostLine;
use crate::render::page::charts::Charts;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(quote: &Quote, charts: &Charts<'_>) -> Part {
    let findings = &quote.findings.cost;
    let shares = findings.shares.into_iter().map(crate::findings::label);
    let heads = ["".to_owned(), "Mean".to_owned()].into_iter().chain(shares);
    let known = std::iter::once(&findings.total.mean_known)
        .chain(&findings.total.known)
        .map(|known| html! { (known) });
    let known = Row::new(html! { "Simulation error" }, known);
    let table = Table::new(heads).rows(findings.parts.iter().map(row)).foot([row(&findings.total), known]);
    let body = html! {
        p { (tight(&findings.range)) }
        (charts.shown("parts", "Each part as a picture"))
        (more("Each part in figures", html! {
            p { (tight(&findings.split)) }
            (table.draw())
            p.note {
                (findings.by_itself)
                " P80: 8 jobs in 10 cost no more. cost.csv has every line's intervals, runs.csv every run's parts."
            }
        }))
    };
    Part::open("cost", "What it costs you", body)
}

fn row(line: &CostLine) -> Row {
    let said = std::iter::once(&line.mean_said).chain(&line.said);
    Row::new(html! { (capital(line.what)) }, said.map(|said| html! { (said) }))
}
