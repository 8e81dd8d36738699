//! What should be done by when: marks to check the day against.

use crate::findings::halfway::{Mark, marks};
use crate::forecast::run::Forecast;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Part {
    let marks = marks(forecast);
    let half = marks.iter().find(|mark| mark.part == "half");
    let row = |mark: &Mark| {
        let cells = [&mark.span(), &mark.middle, &mark.volume].map(|words| html! { (tight(words)) });
        Row::new(html! { (crate::findings::capital(mark.part)) }, cells)
    };
    let body = html! {
        (charts.figure("progress"))
        (Table::new(["Raked out", "Between, 8 days in 10", "Middle", "That is about"]).rows(marks.iter().map(row)).draw())
        @if let Some(half) = half.filter(|half| half.early != half.late) {
            p {
                "Half-way check: if half is not raked out by " (half.late)
                ", the day is among the slowest tenth. Tell whoever is waiting."
            }
        }
    };
    Part::folded("progress", "Half-way marks", body)
}
