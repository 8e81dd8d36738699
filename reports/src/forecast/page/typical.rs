//! One run as a picture: the one nearest the middle.

use crate::forecast::run::Forecast;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::words;
use maud::html;

/// Nothing where there is no picture of it.
pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Option<Part> {
    let body = html! {
        p {
            "This is run " (words::number(forecast.typical.outcome.run.into())) " of "
            (words::number(forecast.study.runs().into()))
            " (counted from 0), the one whose length is nearest the middle. No real day will look just like it."
        }
        (charts.figure("timeline"))
    };
    charts.has("timeline").then(|| Part::folded("typical", "A typical run", body))
}
