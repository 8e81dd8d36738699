//! What would help most.

use crate::findings::{self, ReliefLine, capital};
use crate::forecast::run::Forecast;
use crate::render::page::charts::Charts;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::{Markup, html};

/// The tallest picture that a phone shows unasked: what would help comes next after the answer \[px\].
const TALLEST: u32 = 620;

pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Part {
    let findings = findings::relief(forecast);
    Part::open(
        "help",
        "What would help",
        html! {
            @if !charts.has("relief") { p.finding { (findings.title) "." } }
            (charts.shown_within(TALLEST, "relief", "Each change as a picture"))
            @if !findings.lines.is_empty() {
                (more("Each change in figures", html! {
                    (table(&findings.lines))
                    p.note { (findings.how) }
                }))
            }
        },
    )
}

fn table(lines: &[ReliefLine]) -> Markup {
    let priced = lines.iter().any(|line| line.cost.is_some());
    let heads =
        ["Change", "Saves between", "On average"].into_iter().chain(priced.then_some("The job then costs"));
    let row = |line: &ReliefLine| {
        let times = [html! { (tight(&line.interval)) }, html! { (tight(&line.saves)) }];
        let cost = priced.then(|| html! { (line.cost.as_deref().unwrap_or("unknown")) });
        Row::new(html! { (capital(&line.what)) }, times.into_iter().chain(cost))
    };
    Table::new(heads).rows(lines.iter().map(row)).draw()
}
