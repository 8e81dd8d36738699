//! What is said of buckets before one is bought: the verdict, each bucket by itself, what it is worth, what would help more.

mod help;
mod of_all;
mod row;
mod verdict;
mod worth;

pub use help::HelpLine;
pub use of_all::{assumptions_of_all, cautions_of_all};
pub use row::{BarrowFindings, BucketFindings, Runs, Standing, TodayFindings};
pub use verdict::Verdict;
pub use worth::WorthFindings;

use crate::buckets::{Buckets, Usage};
use crate::findings::{Assumed, Warnings, assumed, warnings};
use serde::Serialize;

/// Everything said.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BucketsFindings {
    /// Which to buy.
    pub verdict: Verdict,
    /// The loader the buckets are for.
    pub loader: String,
    /// The job as it is today.
    pub today: TodayFindings,
    /// Every bucket of the list.
    pub buckets: Vec<BucketFindings>,
    /// Hand barrows in place of the loader.
    pub barrow: Option<BarrowFindings>,
    /// What else would help, most minutes first.
    pub helps: Vec<HelpLine>,
    /// How a bucket would be used; `None` where its worth was not asked for.
    pub usage: Option<Usage>,
    /// What is counted as worth, and what is not.
    pub counted: String,
    /// What to heed, of all jobs together.
    pub warnings: Warnings,
    /// What was assumed, of all jobs together.
    pub assumed: Assumed,
}

/// Everything said of these buckets.
pub fn buckets(all: &Buckets) -> BucketsFindings {
    let rows = row::buckets(all);
    let today = row::today(all);
    let job_s = today.runs.finish.first().map_or(0.0, |p50| p50.finish_working_s.value);
    let helps = help::helps(all, job_s);
    let barrow = row::barrow(all);
    BucketsFindings {
        verdict: verdict::verdict(all, &today, &rows, barrow.as_ref(), &helps),
        loader: all.loader().to_owned(),
        counted: worth::counted(all),
        usage: all.wanted.usage.clone(),
        warnings: warnings(&cautions_of_all(all)),
        assumed: assumed(&assumptions_of_all(all)),
        buckets: rows,
        today,
        barrow,
        helps,
    }
}
