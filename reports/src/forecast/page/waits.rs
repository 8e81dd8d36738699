//! What holds the job up.

use crate::findings;
use crate::forecast::run::Forecast;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::words::tight;
use maud::html;

/// The tallest picture that a phone shows unasked, with three rows or so: more rows say little more at a glance \[px\].
const TALLEST: u32 = 340;

/// The chart says the finding in its title; without one it is said here.
pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Part {
    let findings = findings::who_waits(forecast);
    let body = html! {
        @if !charts.has("waiting") { p.finding { (findings.title) "." } }
        p { (tight(&findings.sentence)) }
        (charts.shown_within(TALLEST, "waiting", "The time of each as a picture"))
    };
    Part::open("waits", "What holds it up", body)
}
