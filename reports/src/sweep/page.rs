//! `report.html` of a sweep: the answers, the charts, every point.

mod answers;
mod foot;
mod points;

#[cfg(test)]
mod tests;

use crate::chart::Figure;
use crate::render::page::charts::Charts;
use crate::render::page::frame::{heading, whole};
use crate::render::page::{assumed, cautions, job};
use crate::sweep::Sweep;
use crate::sweep::findings::SweepFindings;

/// The whole page. The figures are those of [`sweep_figures`](super::figures::sweep_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub(crate) fn sweep_page(
    sweep: &Sweep,
    findings: &SweepFindings,
    wide: &[Figure],
    narrow: &[Figure],
) -> String {
    let charts = Charts { wide, narrow };
    let base = &sweep.base;
    let cautions = sweep.cautions();
    let parts = [
        answers::part(findings, &charts),
        answers::money(findings, &charts),
        cautions::part(&cautions),
        points::part(sweep, findings),
        points::waits(findings),
        job::part(base, sweep.units),
        assumed::part(&sweep.assumptions()),
        foot::part(sweep, findings),
    ];
    whole(&base.title, &heading(base), &answers::answer(findings, &cautions), &parts)
}
