//! `report.html` of buckets: which to buy, each against today's, and how it was worked out.

mod fit;
mod foot;
mod minutes;
mod verdict;
mod worth;

use crate::buckets::Buckets;
use crate::buckets::findings::{BucketsFindings, assumptions_of_all, cautions_of_all};
use crate::chart::Figure;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::frame::{heading, whole};
use crate::render::page::{assumed, cautions, job};

/// The whole page. The figures are those of [`bucket_figures`](super::figures::bucket_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub(crate) fn buckets_page(
    all: &Buckets,
    findings: &BucketsFindings,
    wide: &[Figure],
    narrow: &[Figure],
) -> String {
    let charts = Charts { wide, narrow };
    let parts: Vec<Part> = [
        Some(verdict::part(findings, &charts)),
        Some(worth::part(findings, &charts)),
        Some(fit::part(findings)),
        Some(minutes::part(findings)),
        minutes::helps(findings),
        Some(cautions::part(&cautions_of_all(all))),
        Some(job::part(&all.scenario, all.units)),
        Some(assumed::part(&assumptions_of_all(all))),
        Some(foot::part(all, findings)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let head = heading(&all.scenario);
    whole(&all.scenario.title, &head, &verdict::answer(findings, &cautions_of_all(all)), &parts)
}
