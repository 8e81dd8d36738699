//! What holds the job up.

use super::charts::Charts;
use super::words::tight;
use crate::findings;
use crate::forecast::Forecast;
use maud::{Markup, html};

/// The chart says the finding in its title; without one it is said here.
pub(super) fn section(forecast: &Forecast, charts: &Charts<'_>) -> Markup {
    let says = findings::who_waits(forecast);
    html! {
        section id="waits" {
            h2 { "What holds it up" }
            @if !charts.has("waiting") { p.finding { (says.title) "." } }
            p { (tight(&says.sentence)) }
            (charts.figure("waiting"))
        }
    }
}
