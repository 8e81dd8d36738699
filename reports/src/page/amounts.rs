//! What the job takes: loads, fuel, labour, cost, and what is left over or short.

use super::words::{span, tight};
use crate::findings::{self, Amount, Said, capital};
use crate::forecast::Forecast;
use maud::{Markup, html};
use scenarios::units::volume;
use sim::Outcome;

pub(super) fn section(forecast: &Forecast) -> Markup {
    let amounts = findings::amounts(forecast);
    let left = findings::left_over(forecast);
    html! {
        section id="amounts" {
            h2 { "What it takes" }
            table.short {
                thead { tr {
                    th scope="col" { "" }
                    th scope="col" { "Range, 8 days in 10" }
                    th scope="col" { "Middle" }
                    th scope="col" { "8 days in 10 no more than" }
                } }
                tbody {
                    @for amount in &amounts { (row(amount)) }
                    (said_row("left over at the pile", &material(forecast, |o| o.left_over_m3)))
                    (said_row("short on the ground", &material(forecast, |o| o.short_m3)))
                }
            }
            p { (tight(&left.sentence)) }
        }
    }
}

fn row(amount: &Amount) -> Markup {
    match (&amount.said, &amount.unknown) {
        (Some(said), _) => said_row(amount.what, said),
        (None, why) => html! {
            tr {
                th scope="row" { (capital(amount.what)) }
                td colspan="3" { "unknown" @if let Some(why) = why { ": " (why) } }
            }
        },
    }
}

/// The range from P10 to P90, the middle, and the P80.
fn said_row(what: &str, said: &Said) -> Markup {
    html! {
        tr {
            th scope="row" { (capital(what)) }
            td { (tight(&span(&said.p10, &said.p90))) }
            td { (tight(&said.p50)) }
            td { (tight(&said.p80)) }
        }
    }
}

fn material(forecast: &Forecast, figure: fn(&Outcome) -> f64) -> Said {
    let sample = forecast.study.sorted(figure);
    let at = |share| volume(sample.percentile(share).value, forecast.units);
    Said { p10: at(0.1), p50: at(0.5), p80: at(0.8), p90: at(0.9) }
}
