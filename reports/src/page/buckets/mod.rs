//! `report.html` of buckets: which to buy, each against today's, and how it was worked out.

mod fit;
mod foot;
mod minutes;
mod verdict;
mod worth;

use super::charts::Charts;
use super::frame::{frame, heading};
use super::{assumed, cautions, job};
use crate::buckets::Buckets;
use crate::chart::Figure;
use crate::findings::buckets::{BucketsSays, assumptions_of_all, cautions_of_all};
use maud::html;

/// The whole page. The figures are those of [`chart::bucket_figures`](crate::chart::bucket_figures), drawn once for a page and
/// for paper (`wide`), once for a phone (`narrow`).
pub fn buckets_page(all: &Buckets, says: &BucketsSays, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    frame(
        &all.scenario.title,
        html! {
            (heading(&all.scenario))
            (verdict::section(says, &charts))
            (fit::section(says))
            (minutes::section(says))
            (worth::section(says, &charts))
            (minutes::helps(says))
            (job::section(&all.scenario, all.units))
            (cautions::section(&cautions_of_all(all)))
            (assumed::section(&assumptions_of_all(all)))
            (foot::section(all, says))
        },
    )
}
