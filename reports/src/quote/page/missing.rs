//! What is not in the cost.

use crate::quote::Quote;
use crate::render::page::fold::{Part, more};
use crate::render::page::words::{sentence, tight};
use maud::html;

pub(super) fn part(quote: &Quote) -> Part {
    let findings = &quote.findings;
    let body = html! {
        p { (tight(&findings.truckload.sentence)) }
        (more("Everything that is not in it", html! {
            @if !findings.gaps.unpriced.is_empty() {
                h3 { "Because the job gives no price for it" }
                ul { @for gap in &findings.gaps.unpriced { li { (sentence(gap)) } } }
            }
            h3 { "Because heapcast never calculates it" }
            ul { @for what in &findings.gaps.never { li { (sentence(what)) } } }
        }))
        p.note { (findings.gaps.no_advice) }
    };
    Part::open("missing", "What is not in it", body)
}
