//! The answers of a sweep, large.

use crate::findings::sweep::SweepSays;
use crate::findings::warnings;
use crate::page::charts::Charts;
use crate::page::words::tight;
use maud::{Markup, html};
use scenarios::Caution;

pub(super) fn section(says: &SweepSays, cautions: &[Caution], charts: &Charts<'_>) -> Markup {
    let doubtful = warnings(cautions).doubtful.len();
    html! {
        section id="range" {
            h2 { "What pays" }
            @if doubtful > 0 {
                p.heed {
                    "Some figures are doubtful. Read "
                    a href="#cautions" { @if doubtful == 1 { "the warning" } @else { "the " (doubtful) " warnings" } }
                    " first."
                }
            }
            div.answer {
                @if let Some(by) = &says.by { p.plan { (tight(&by.sentence)) } }
                p.(if says.by.is_some() { "steps" } else { "plan" }) { (tight(&says.knee.steps)) }
                p { (tight(&says.knee.sentence)) }
                @for later in &says.later { p { (tight(later)) } }
            }
            (charts.figure("sweep"))
            p.note { (says.knee.rule) " (The rule is our own.)" }
        }
    }
}

pub(super) fn money(says: &SweepSays, charts: &Charts<'_>) -> Markup {
    html! {
        section id="money" {
            h2 { "Where money turns" }
            @match (&says.money, says.unpriced) {
                (Some(money), _) => p { (tight(&money.sentence)) },
                (None, Some(why)) => p { "The cost is not known: " (why) "." },
                (None, None) => {},
            }
            (charts.figure("cost"))
        }
    }
}
