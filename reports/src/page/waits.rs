//! What holds the job up.

use super::charts::Charts;
use super::fold::{Part, more};
use super::words::tight;
use crate::findings;
use crate::forecast::Forecast;
use maud::html;

/// Most rows of the picture that a phone shows unasked.
const ROWS: usize = 8;

/// The chart says the finding in its title; without one it is said here.
pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Part {
    let says = findings::who_waits(forecast);
    let job = &forecast.scenario.job;
    let long = job.loaders.len() + job.rakers.len() > ROWS;
    let body = html! {
        @if long || !charts.has("waiting") { p.finding { (says.title) "." } }
        p { (tight(&says.sentence)) }
        @if long && charts.has("waiting") {
            (more("The time of each as a picture", charts.figure("waiting")))
        } @else {
            (charts.figure("waiting"))
        }
    };
    Part::open("waits", "What holds it up", body)
}
