//! `report.html` of a comparison: which job to take, and all of them side by side.

mod against;
mod choices;
mod foot;
mod verdict;

#[cfg(test)]
mod tests;

use super::charts::Charts;
use super::frame::frame;
use super::{assumed, cautions, job, words};
use crate::chart::Figure;
use crate::comparison::Comparison;
use crate::findings::comparison::{ComparisonSays, assumptions_of_all, cautions_of_all};
use maud::{Markup, html};

/// The whole page. The figures are those of [`chart::rival_figures`](crate::chart::rival_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub fn comparison_page(
    comparison: &Comparison,
    says: &ComparisonSays,
    wide: &[Figure],
    narrow: &[Figure],
) -> String {
    let charts = Charts { wide, narrow };
    let first = &comparison.first().scenario;
    frame(
        &first.title,
        html! {
            (heading(comparison))
            (verdict::section(says, &charts))
            (choices::times(comparison, says))
            (against::time(comparison, says, &charts))
            (against::money(says, &charts))
            (choices::held_up(says))
            (choices::differ(comparison, says))
            (job::section(first, comparison.units))
            (cautions::section(&cautions_of_all(comparison)))
            (assumed::section(&assumptions_of_all(comparison)))
            (foot::section(comparison, says))
        },
    )
}

fn heading(comparison: &Comparison) -> Markup {
    let first = &comparison.first().scenario;
    html! {
        header {
            h1 { (first.title) }
            p.soft {
                @if let Some(date) = first.date { (words::date(date)) " · " }
                (comparison.choices.len()) " choices held against one another"
            }
        }
    }
}
