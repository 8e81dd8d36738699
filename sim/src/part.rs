//! A study shared by several processes: ranges of its replications made apart, then merged to the same bits.

use crate::error::RunError;
use crate::outcome::{Accounts, Outcome};
use crate::plan::Plan;
use crate::study::{BATCH, Batch, Study, make, to_end_of_batch, whole_batches};
use serde::{Deserialize, Serialize};
use std::ops::Range;

/// A range of the replications of a study, made by itself: by another process, another machine or a worker of a browser.
///
/// What a replication draws depends on the seed and its number alone, so nothing needs to be agreed on but the job, the
/// seed and who makes which numbers. [`Study::merge`] puts the parts together. `sim` has no files; a part can be written and
/// read with any format of `serde` that keeps every bit of an `f64`.
///
/// ```
/// # fn shared(plan: &sim::Plan) -> Result<(), Box<dyn std::error::Error>> {
/// use sim::{Runs, Study, StudyPart};
/// let (night, day) = (StudyPart::new(plan, 7, 0..900, |_| {})?, StudyPart::new(plan, 7, 900..2_000, |_| {})?);
/// assert_eq!(Study::merge(vec![day, night])?, Study::new(plan, 7, Runs::Exactly(2_000), |_| {})?);
/// # Ok(())
/// # }
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StudyPart {
    seed: u64,
    /// Which job, as [`Plan::fingerprint`].
    job: u64,
    runs: Range<u32>,
    outcomes: Vec<Outcome>,
    /// Accounts of each replication up to the first that begins a batch, then of each batch. The sums of volumes must be
    /// added in the order in which one process adds them, wherever a study is cut.
    accounts: Vec<Accounts>,
}

/// Why parts do not make up a study.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum MergeError {
    /// There is nothing to merge.
    #[error("there is no part to merge")]
    NoParts,
    /// Two parts were made under different seeds.
    #[error("one part has seed {one}, another has seed {other}")]
    OtherSeed {
        /// Of the part with the lowest numbers.
        one: u64,
        /// Of another.
        other: u64,
    },
    /// Two parts are of different jobs.
    #[error("the parts that begin with run {} and run {} are of different jobs", .one.start, .other.start)]
    OtherJob {
        /// Replications of the part with the lowest numbers.
        one: Range<u32>,
        /// Replications of another.
        other: Range<u32>,
    },
    /// Replications that no part has.
    #[error("runs {} to {} are in no part", .missing.start, .missing.end - 1)]
    Gap {
        /// Which.
        missing: Range<u32>,
    },
    /// Replications that two parts have.
    #[error("runs {} to {} are in more than one part", .twice.start, .twice.end - 1)]
    Overlap {
        /// Which.
        twice: Range<u32>,
    },
    /// A part does not hold what it says it holds.
    #[error("the part that begins with run {} is damaged", .runs.start)]
    Damaged {
        /// Replications it says it holds.
        runs: Range<u32>,
    },
}

impl StudyPart {
    /// Makes these replications of a study and no others. `made` is told of them as they are finished, from any thread.
    ///
    /// # Errors
    /// The first replication of the range, by number, that could make no progress.
    pub fn new(
        plan: &Plan,
        seed: u64,
        runs: Range<u32>,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, RunError> {
        let mut outcomes = vec![Outcome::default(); runs.len()];
        let (alone, new) = outcomes.split_at_mut(singles(&runs));
        let empty = plan.empty_accounts();
        let alone = (runs.start..).zip(alone.chunks_mut(1)).map(|(first, outcomes)| Batch {
            first,
            outcomes,
            accounts: empty.clone(),
        });
        let batches = alone.chain(whole_batches(plan, runs.start.next_multiple_of(BATCH), new));
        let accounts = make(plan, seed, batches.collect(), &made)?;
        let accounts = accounts.into_iter().map(|(_, accounts)| accounts).collect();
        Ok(Self { seed, job: plan.fingerprint(), runs, outcomes, accounts })
    }

    /// The seed of the study it belongs to.
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// Which replications it holds.
    pub fn runs(&self) -> Range<u32> {
        self.runs.clone()
    }

    /// The [`Plan::fingerprint`] of the job.
    pub fn job(&self) -> u64 {
        self.job
    }

    /// Whether it holds as much as it says.
    fn is_whole(&self) -> bool {
        let singles = singles(&self.runs);
        let batches = (self.runs.len() - singles).div_ceil(BATCH as usize);
        self.outcomes.len() == self.runs.len() && self.accounts.len() == singles + batches
    }
}

/// How many replications of a range come before the first batch that begins in it.
fn singles(runs: &Range<u32>) -> usize {
    to_end_of_batch(runs.start, runs.end.max(runs.start))
}

impl Study {
    /// Puts parts together, in whatever order they come: the same bits as [`Study::new`] makes of as many replications.
    ///
    /// # Errors
    /// If the parts are of different jobs or seeds, if they do not hold every replication from 0 to the last just once, or if one
    /// is damaged.
    pub fn merge(mut parts: Vec<StudyPart>) -> Result<Self, MergeError> {
        parts.retain(|part| !part.runs.is_empty());
        parts.sort_by_key(|part| (part.runs.start, part.runs.end));
        let first = parts.first().ok_or(MergeError::NoParts)?;
        let mut study: Option<Self> = None;
        for part in &parts {
            part.follows(first, study.as_ref().map_or(0, Self::runs))?;
            let empty = part.accounts.first().map(Accounts::emptied);
            let Some(empty) = empty else { continue };
            let study = study.get_or_insert_with(|| Self::of(part.seed, Vec::new(), empty));
            let (alone, batches) = part.outcomes.split_at(singles(&part.runs));
            let pieces = alone.chunks(1).chain(batches.chunks(BATCH as usize));
            pieces.zip(&part.accounts).for_each(|(outcomes, accounts)| study.append(outcomes, accounts));
        }
        let mut study = study.ok_or(MergeError::NoParts)?;
        study.add_up();
        Ok(study)
    }
}

impl StudyPart {
    /// Whether it can be put behind the replications before `next`, the first part of which is `first`.
    fn follows(&self, first: &Self, next: u32) -> Result<(), MergeError> {
        let runs = self.runs();
        if self.seed != first.seed {
            return Err(MergeError::OtherSeed { one: first.seed, other: self.seed });
        }
        if self.job != first.job {
            return Err(MergeError::OtherJob { one: first.runs(), other: runs });
        }
        if !self.is_whole() {
            return Err(MergeError::Damaged { runs });
        }
        if runs.start > next {
            return Err(MergeError::Gap { missing: next..runs.start });
        }
        if runs.start < next {
            return Err(MergeError::Overlap { twice: runs.start..next.min(runs.end) });
        }
        Ok(())
    }
}
