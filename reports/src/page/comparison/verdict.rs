//! Which job to take, large.

use super::Charts;
use crate::findings::comparison::ComparisonSays;
use crate::page::words::tight;
use maud::{Markup, html};

pub(super) fn section(says: &ComparisonSays, charts: &Charts<'_>) -> Markup {
    let verdict = &says.verdict;
    let doubtful = says.warnings.doubtful.len();
    html! {
        section id="range" {
            h2 { "Which to take" }
            @if doubtful > 0 {
                p.heed {
                    "Some figures are doubtful. Read "
                    a href="#cautions" { @if doubtful == 1 { "the warning" } @else { "the " (doubtful) " warnings" } }
                    " first."
                }
            }
            div.answer {
                p.plan { (tight(&verdict.take)) }
                p { (tight(&verdict.sure)) }
                @for line in &verdict.besides { p { (tight(line)) } }
            }
            @for line in &says.not_alike { p.heed { (tight(line)) } }
            (charts.figure("completion"))
        }
    }
}
