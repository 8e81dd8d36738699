//! One run as a picture: the one nearest the middle.

use super::charts::Charts;
use super::words;
use crate::forecast::Forecast;
use maud::{Markup, html};

pub(super) fn section(forecast: &Forecast, charts: &Charts<'_>) -> Markup {
    html! {
        @if charts.has("timeline") {
            section id="typical" {
                h2 { "A typical run, minute by minute" }
                p {
                    "This is run " (words::number(forecast.typical.outcome.run.into())) " of "
                    (words::number(forecast.study.runs().into()))
                    " (counted from 0), the one whose length is nearest the middle. No real day will look just like it."
                }
                (charts.figure("timeline"))
            }
        }
    }
}
