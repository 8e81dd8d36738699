//! What else than a bucket would help.

use crate::buckets::{Buckets, Help};
use crate::findings::comparison::mean_estimate;
use crate::findings::{Estimate, improvement_words};
use scenarios::units::duration;
use serde::Serialize;

/// One thing that was tried in place of a bucket.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HelpLine {
    /// Stable name for files.
    pub key: &'static str,
    /// In words: `one more raker`.
    pub what: &'static str,
    /// Minutes saved a job, mean with its 95 % interval \[s\].
    pub saved_s: Estimate,
    /// The same in words.
    pub saves: String,
}

impl HelpLine {
    /// Whether it surely saves time on average.
    pub(super) fn is_sure(&self) -> bool {
        self.saved_s.low.is_some_and(|low| low > 0.0)
    }
}

pub(super) fn helps(all: &Buckets) -> Vec<HelpLine> {
    let line = |help: &Help| {
        let (key, what) = match help {
            Help::Better(relief) => improvement_words(relief.improvement),
            Help::AllThere(_) => ("all_there", "all material there at the start"),
        };
        let saved_s = mean_estimate(help.saved_s());
        let saves = match saved_s.value {
            s if s.abs() < 0.5 => "nothing".to_owned(),
            s if s < 0.0 => format!("{} lost", duration(-s)),
            s => duration(s),
        };
        HelpLine { key, what, saved_s, saves }
    };
    all.helps.iter().map(line).collect()
}
