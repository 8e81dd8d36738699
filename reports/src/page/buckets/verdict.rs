//! Which bucket to buy, large.

use super::Charts;
use crate::findings::buckets::BucketsSays;
use crate::page::words::{sentence, tight};
use maud::{Markup, html};
use scenarios::units::figure;

pub(super) fn section(says: &BucketsSays, charts: &Charts<'_>) -> Markup {
    let (verdict, today) = (&says.verdict, &says.today);
    let doubtful = says.warnings.doubtful.len();
    html! {
        section id="range" {
            h2 { "Which bucket to buy for " (says.loader) }
            @if doubtful > 0 {
                p.heed {
                    "Some figures are doubtful. Read "
                    a href="#cautions" { @if doubtful == 1 { "the warning" } @else { "the " (doubtful) " warnings" } }
                    " first."
                }
            }
            div.answer {
                p.plan { (tight(&verdict.answer)) }
                @for line in &verdict.besides { p { (tight(line)) } }
            }
            p {
                "Today: " (today.what) ", " (tight(&format!("{} loads (P50)", figure(today.runs.loads.value))))
                @for at in &today.runs.finish { (tight(&format!(", {} {} ({})", at.label, at.duration, at.known))) }
                ". " (tight(&sentence(&today.pace)))
            }
            (charts.figure("saved"))
        }
    }
}
