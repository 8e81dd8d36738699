//! `report.html` of a sweep: the answers, the charts, every point.

mod answers;
mod foot;
mod points;

#[cfg(test)]
mod tests;

use super::charts::Charts;
use super::frame::{frame, heading};
use super::{assumed, cautions, job};
use crate::chart::Figure;
use crate::findings::sweep::SweepSays;
use crate::sweep::Sweep;
use maud::html;

/// The whole page. The figures are those of [`chart::sweep_figures`](crate::chart::sweep_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub fn sweep_page(sweep: &Sweep, says: &SweepSays, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let base = &sweep.base;
    let cautions = sweep.cautions();
    frame(
        &base.title,
        html! {
            (heading(base))
            (answers::section(says, &cautions, &charts))
            (answers::money(says, &charts))
            (points::section(sweep, says))
            (points::waits(says))
            (job::section(base, sweep.units))
            (cautions::section(&cautions))
            (assumed::section(&sweep.assumptions()))
            (foot::section(sweep, says))
        },
    )
}
