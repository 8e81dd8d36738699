//! What the job takes: loads, fuel, labour, cost, and what is left over or short.

use crate::findings::span;
use crate::findings::{self, Amount, Said, capital};
use crate::forecast::run::Forecast;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::html;
use scenarios::units::volume;
use sim::Outcome;

pub(super) fn part(forecast: &Forecast) -> Part {
    let amounts = findings::amounts(forecast);
    let left = findings::left_over(forecast);
    let said = [
        said_row("left over at the pile", &material(forecast, |o| o.left_over_m3)),
        said_row("short on the ground", &material(forecast, |o| o.short_m3)),
    ];
    let table = Table::new(["", "Range, 8 days in 10", "Middle", "8 days in 10 no more than"])
        .rows(amounts.iter().map(row).chain(said));
    let body = html! {
        p { (tight(&left.sentence)) }
        (more("Loads, fuel, hours and cost", table.draw()))
    };
    Part::open("amounts", "What it takes", body)
}

fn row(amount: &Amount) -> Row {
    match (&amount.said, &amount.unknown) {
        (Some(said), _) => said_row(amount.what, said),
        (None, why) => Row::wide(
            html! { (capital(amount.what)) },
            html! { "unknown" @if let Some(why) = why { ": " (why) } },
        ),
    }
}

/// The range from P10 to P90, the middle, and the P80.
fn said_row(what: &str, said: &Said) -> Row {
    let cells = [&span(&said.p10, &said.p90), &said.p50, &said.p80];
    Row::new(html! { (capital(what)) }, cells.map(|words| html! { (tight(words)) }))
}

fn material(forecast: &Forecast, figure: fn(&Outcome) -> f64) -> Said {
    let sample = forecast.study.sorted(figure);
    let at = |share| volume(sample.percentile(share).value, forecast.units);
    Said { p10: at(0.1), p50: at(0.5), p80: at(0.8), p90: at(0.9) }
}
