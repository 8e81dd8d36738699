//! What would help most.

use super::charts::Charts;
use super::words::tight;
use crate::findings::{self, capital};
use crate::forecast::Forecast;
use maud::{Markup, html};

pub(super) fn section(forecast: &Forecast, charts: &Charts<'_>) -> Markup {
    let says = findings::relief(forecast);
    let priced = says.lines.iter().any(|line| line.cost.is_some());
    html! {
        section id="help" {
            h2 { "What would help" }
            @if !charts.has("relief") { p.finding { (says.title) "." } }
            (charts.figure("relief"))
            @if !says.lines.is_empty() {
                table.short {
                    thead { tr {
                        th scope="col" { "Change" }
                        th scope="col" { "Saves between" }
                        th scope="col" { "On average" }
                        @if priced { th scope="col" { "The job then costs" } }
                    } }
                    tbody { @for line in &says.lines { tr {
                        th scope="row" { (capital(line.what)) }
                        td { (tight(&line.interval)) }
                        td { (tight(&line.saves)) }
                        @if priced { td { (line.cost.as_deref().unwrap_or("unknown")) } }
                    } } }
                }
                p.note { (says.how) }
            }
        }
    }
}
