//! The handbook figure and why it differs.

use super::words::tight;
use crate::findings;
use crate::forecast::Forecast;
use maud::{Markup, html};

pub(super) fn section(forecast: &Forecast) -> Markup {
    let says = findings::handbook(forecast);
    html! {
        section id="handbook" {
            h2 { "What the handbook says" }
            p { (tight(&says.sentence)) }
            p { (tight(&says.why)) }
        }
    }
}
