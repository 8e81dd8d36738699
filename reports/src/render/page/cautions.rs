//! What to heed: doubtful numbers first, then the cautions of every such job.

use super::fold::{Part, more};
use super::words::sentence;
use crate::findings::{self, Warning};
use maud::{Markup, html};
use scenarios::Caution;

/// What stands on every sheet that is handed out.
pub(crate) const KEEP_CLEAR: &str =
    "Keep clear of a loader that moves. The machine's manual, local codes and licensed practice come first.";

/// Above an answer: where to read first, if a figure is doubtful.
pub(crate) fn heed(cautions: &[Caution]) -> Markup {
    let doubtful = findings::warnings(cautions).doubtful.len();
    html! {
        @if doubtful > 0 {
            p.heed {
                "Some figures are doubtful. Read "
                a href="#cautions" { @if doubtful == 1 { "the warning" } @else { "the " (doubtful) " warnings" } }
                " first."
            }
        }
    }
}

/// Most warnings that stand open; the others are opened by a touch.
const OPEN: usize = 1;

pub(crate) fn part(cautions: &[Caution]) -> Part {
    let findings = findings::warnings(cautions);
    let (open, folded) = findings.doubtful.split_at(findings.doubtful.len().min(OPEN));
    let body = html! {
        @if !open.is_empty() {
            h3 { "Look at these before the day" }
            @for warning in open { (one(warning)) }
        }
        @if !folded.is_empty() {
            (more(&format!("{} more to look at", folded.len()), html! { @for warning in folded { (one(warning)) } }))
        }
        p { (KEEP_CLEAR) }
        @if findings.usual.is_empty() {
            p { "This page works out time; it does not judge whether a machine, a load or a slope is fit for the work." }
        } @else {
            (more("On the day", html! {
                ul { @for warning in &findings.usual { li {
                    b { (sentence(&warning.cause)) } " " (sentence(&warning.remedy))
                } } }
            }))
        }
    };
    Part::open("cautions", "Cautions", body)
}

fn one(warning: &Warning) -> Markup {
    html! {
        p.heed {
            b { (sentence(&warning.cause)) } " "
            @if !warning.remedy.is_empty() { (sentence(&warning.remedy)) }
        }
    }
}
