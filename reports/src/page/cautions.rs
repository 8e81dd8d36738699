//! What to heed: doubtful numbers first, then the cautions of every such job.

use super::words::sentence;
use crate::findings::{self, Warning};
use maud::{Markup, html};
use scenarios::Caution;

pub(super) fn section(cautions: &[Caution]) -> Markup {
    let says = findings::warnings(cautions);
    html! {
        section id="cautions" {
            h2 { "Cautions" }
            @if !says.doubtful.is_empty() {
                h3 { "Look at these before the day" }
                @for warning in &says.doubtful { (one(warning, "heed")) }
            }
            @if !says.usual.is_empty() {
                h3 { "On the day" }
                ul { @for warning in &says.usual { li {
                    b { (sentence(&warning.cause)) } " " (sentence(&warning.remedy))
                } } }
            }
            @if says.usual.is_empty() { p {
                "This page reckons time; it does not judge whether a machine, a load or a slope is fit for the work. The "
                "machine's manual, local codes and licensed practice come first."
            } }
        }
    }
}

fn one(warning: &Warning, class: &str) -> Markup {
    html! {
        p class=(class) {
            b { (sentence(&warning.cause)) } " "
            @if !warning.remedy.is_empty() { (sentence(&warning.remedy)) }
        }
    }
}
