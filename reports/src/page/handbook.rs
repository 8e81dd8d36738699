//! The handbook figure and why it differs.

use crate::findings;
use crate::forecast::Forecast;
use maud::{Markup, html};

pub(super) fn section(forecast: &Forecast) -> Markup {
    let says = findings::handbook(forecast);
    html! {
        section id="handbook" {
            h2 { "What the handbook says" }
            p { (says.sentence) }
            p { (says.why) }
        }
    }
}
