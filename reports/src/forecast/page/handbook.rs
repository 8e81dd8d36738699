//! The handbook figure and why it differs.

use crate::findings;
use crate::forecast::Forecast;
use crate::render::page::fold::Part;
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(forecast: &Forecast) -> Part {
    let says = findings::handbook(forecast);
    let body = html! {
        p { (tight(&says.sentence)) }
        p { (tight(&says.why)) }
    };
    Part::folded("handbook", "Handbook figure", body)
}
