//! `report.html` of a comparison: which job to take, and all of them side by side.

mod against;
mod choices;
mod foot;
mod verdict;

#[cfg(test)]
mod tests;

use crate::chart::Figure;
use crate::compare::Comparison;
use crate::compare::findings::{ComparisonFindings, assumptions_of_all, cautions_of_all};
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::frame::whole;
use crate::render::page::{assumed, cautions, job, words};
use maud::{Markup, html};

/// The whole page. The figures are those of [`rival_figures`](super::figures::rival_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub(crate) fn comparison_page(
    comparison: &Comparison,
    findings: &ComparisonFindings,
    wide: &[Figure],
    narrow: &[Figure],
) -> String {
    let charts = Charts { wide, narrow };
    let first = &comparison.first().scenario;
    let cautions = cautions_of_all(comparison);
    let parts: Vec<Part> = [
        Some(choices::times(comparison, findings, &charts)),
        Some(against::time(comparison, findings, &charts)),
        against::money(findings, &charts),
        Some(cautions::part(&cautions)),
        Some(choices::held_up(findings)),
        Some(choices::differ(comparison, findings)),
        Some(job::part(first, comparison.units)),
        Some(assumed::part(&assumptions_of_all(comparison))),
        Some(foot::part(comparison, findings)),
    ]
    .into_iter()
    .flatten()
    .collect();
    whole(&first.title, &heading(comparison), &verdict::answer(findings, &cautions), &parts)
}

fn heading(comparison: &Comparison) -> Markup {
    let first = &comparison.first().scenario;
    html! {
        header {
            h1 { (first.title) }
            p.soft {
                @if let Some(date) = first.date { (words::date(date)) " · " }
                (comparison.choices.len()) " choices compared"
            }
        }
    }
}
