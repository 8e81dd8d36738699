//! The handbook figure and why it differs.

use crate::findings;
use crate::forecast::run::Forecast;
use crate::render::page::fold::Part;
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(forecast: &Forecast) -> Part {
    let findings = findings::handbook(forecast);
    let body = html! {
        p { (tight(&findings.sentence)) }
        p { (tight(&findings.why)) }
    };
    Part::folded("handbook", "Handbook figure", body)
}
