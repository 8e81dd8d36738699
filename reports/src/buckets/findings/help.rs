//! What else than a bucket would help.

use crate::buckets::Buckets;
use crate::findings::{Estimate, is_priced, relief_of};
use serde::Serialize;
use sim::Improvement;

/// One thing that was tried in place of a bucket.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HelpLine {
    /// Stable name for files.
    pub key: &'static str,
    /// In words: `one more raker`.
    pub what: String,
    /// Minutes saved a job, mean with its 95 % interval \[s\].
    pub saved_s: Estimate,
    /// The same in words; of a truckload more how often the job gets done.
    pub saves: String,
    /// The 95 % interval in words.
    pub interval: String,
    /// Whether its worth is in how often the job gets done and not in minutes.
    pub is_done_more: bool,
}

impl HelpLine {
    /// Whether it surely saves time on average.
    pub(super) fn is_sure(&self) -> bool {
        self.saved_s.low.is_some_and(|low| low > 0.0)
    }
}

/// What else would help, in the words of a forecast; a bucket is what the list is for.
pub(super) fn helps(all: &Buckets, job_s: f64) -> Vec<HelpLine> {
    let others: Vec<_> =
        all.relief.iter().filter(|r| r.improvement != Improvement::LargerBucket).copied().collect();
    let currency = is_priced(&all.scenario.job).then_some(all.scenario.currency.as_str());
    let findings = relief_of(&others, job_s, currency, all.units);
    let lines = others.iter().zip(findings.lines);
    let line = |(relief, line): (&sim::Relief, crate::findings::ReliefLine)| HelpLine {
        key: line.key,
        what: line.what,
        saved_s: Estimate::from(relief.saved_s),
        saves: line.saves,
        interval: line.interval,
        is_done_more: line.done_after.is_some(),
    };
    lines.map(line).collect()
}
