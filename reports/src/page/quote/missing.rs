//! What is not in the cost.

use crate::page::words::{sentence, tight};
use crate::quote::Quote;
use maud::{Markup, html};

pub(super) fn section(quote: &Quote) -> Markup {
    let says = &quote.says;
    html! {
        section id="missing" {
            h2 { "What is not in it" }
            p { (tight(&says.truckload.sentence)) }
            @if !says.gaps.unpriced.is_empty() {
                h3 { "Because the file does not price it" }
                ul { @for gap in &says.gaps.unpriced { li { (sentence(gap)) } } }
            }
            h3 { "Because heapcast never reckons it" }
            ul { @for what in &says.gaps.never { li { (sentence(what)) } } }
            p.note { (says.gaps.no_advice) }
        }
    }
}
