//! Which bucket to buy, large.

use super::Charts;
use crate::buckets::findings::BucketsFindings;
use crate::render::page::cautions::heed;
use crate::render::page::fold::Part;
use crate::render::page::words::{sentence, tight};
use maud::{Markup, html};
use scenarios::Caution;
use scenarios::units::figure;

pub(super) fn answer(findings: &BucketsFindings, cautions: &[Caution]) -> Markup {
    let verdict = &findings.verdict;
    html! {
        section id="range" {
            h2 { "Which bucket to buy for " (findings.loader) }
            (heed(cautions))
            div.answer {
                p.plan { (tight(&verdict.answer)) }
                @for line in &verdict.besides { p { (tight(line)) } }
            }
        }
    }
}

/// Minutes as a picture, and what they are compared with.
pub(super) fn part(findings: &BucketsFindings, charts: &Charts<'_>) -> Part {
    let today = &findings.today;
    let body = html! {
        (charts.shown("saved", "Each bucket as a picture"))
        p {
            "Today: " (today.what) ", " (tight(&format!("{} loads (P50)", figure(today.runs.loads.value))))
            @for at in &today.runs.finish { (tight(&format!(", {} {} ({})", at.label, at.duration, at.known))) }
            ". " (tight(&sentence(&today.pace)))
        }
    };
    Part::open("saved", "What each saves", body)
}
