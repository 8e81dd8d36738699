//! What is not in the cost.

use crate::quote::Quote;
use crate::render::page::fold::{Part, more};
use crate::render::page::words::{sentence, tight};
use maud::html;

pub(super) fn part(quote: &Quote) -> Part {
    let says = &quote.says;
    let body = html! {
        p { (tight(&says.truckload.sentence)) }
        (more("Everything that is not in it", html! {
            @if !says.gaps.unpriced.is_empty() {
                h3 { "Because the file does not price it" }
                ul { @for gap in &says.gaps.unpriced { li { (sentence(gap)) } } }
            }
            h3 { "Because heapcast never calculates it" }
            ul { @for what in &says.gaps.never { li { (sentence(what)) } } }
        }))
        p.note { (says.gaps.no_advice) }
    };
    Part::open("missing", "What is not in it", body)
}
