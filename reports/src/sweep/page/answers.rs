//! The answers of a sweep, large.

use crate::render::page::cautions::heed;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::words::tight;
use crate::sweep::findings::SweepFindings;
use maud::{Markup, html};
use scenarios::Caution;

pub(super) fn answer(findings: &SweepFindings, cautions: &[Caution]) -> Markup {
    html! {
        section id="range" {
            h2 { "What pays" }
            (heed(cautions))
            @if let Some(short) = &findings.short { p.heed { (tight(short)) } }
            div.answer {
                @if let Some(by) = &findings.by { p.plan { (tight(&by.sentence)) } }
                p.(if findings.by.is_some() { "steps" } else { "plan" }) { (tight(&findings.knee.steps)) }
                p { (tight(&findings.knee.sentence)) }
                @for later in &findings.later { p { (tight(later)) } }
            }
        }
    }
}

/// Time as a picture.
pub(super) fn part(findings: &SweepFindings, charts: &Charts<'_>) -> Part {
    let body = html! {
        (charts.shown("sweep", "Every point as a picture"))
        p.note { (findings.knee.rule) " (The rule is our own.)" }
    };
    Part::open("time", "How long at each point", body)
}

pub(super) fn money(findings: &SweepFindings, charts: &Charts<'_>) -> Part {
    let body = html! {
        @match (&findings.money, findings.unpriced) {
            (Some(money), _) => p { (tight(&money.sentence)) },
            (None, Some(why)) => p { "The cost is not known: " (why) "." },
            (None, None) => {},
        }
        (charts.shown("cost", "The cost of every point as a picture"))
    };
    Part::open("money", "Where money turns", body)
}
