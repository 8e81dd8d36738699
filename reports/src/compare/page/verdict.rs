//! Which job to take, large.

use crate::compare::findings::ComparisonFindings;
use crate::render::page::cautions::heed;
use crate::render::page::words::tight;
use maud::{Markup, html};
use scenarios::Caution;

pub(super) fn answer(findings: &ComparisonFindings, cautions: &[Caution]) -> Markup {
    let verdict = &findings.verdict;
    html! {
        section id="range" {
            h2 { "Which to take" }
            (heed(cautions))
            div.answer {
                p.plan { (tight(&verdict.take)) }
                p { (tight(&verdict.sure)) }
                @for line in &verdict.besides { p { (tight(line)) } }
            }
            @for line in &findings.not_alike { p.heed { (tight(line)) } }
        }
    }
}
