//! Many replications of one job, in parallel, the same to the last bit on any number of threads.

use crate::duration::Duration;
use crate::error::RunError;
use crate::outcome::{Accounts, Outcome};
use crate::percentile::{Share, Sorted, share};
use crate::plan::Plan;
use crate::run::Scratch;
use crate::threads;
use std::sync::atomic::{AtomicUsize, Ordering};

/// How many replications to make.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Runs {
    /// This many.
    Exactly(u32),
    /// Until the 95 % interval of the 80th percentile of the finish is no wider than this to either side.
    UntilP80Within {
        /// Half-width wanted \[s of working time\].
        half_width_s: f64,
        /// Replications to make at the most.
        most: u32,
    },
}

/// Replications in one batch of work, counted from replication 0. Time accounts are summed batch by batch in order, so
/// neither the number of threads nor the parts a study is made in change a bit.
pub(crate) const BATCH: u32 = 250;
/// Replications between two looks at the precision reached.
const LOOK: u32 = 1_000;

/// The replications of one job, from number 0 on.
#[derive(Clone, Debug, PartialEq)]
pub struct Study {
    /// The seed all random numbers come from.
    pub seed: u64,
    /// One for each replication, in order.
    pub outcomes: Vec<Outcome>,
    /// Summed over all replications.
    pub accounts: Accounts,
    /// Summed over all complete batches.
    complete: Accounts,
    /// Summed over the batch that is not complete.
    open: Accounts,
}

/// Replications made one after the other, with the accounts they are added to.
pub(crate) struct Batch<'a> {
    pub(crate) first: u32,
    pub(crate) outcomes: &'a mut [Outcome],
    pub(crate) accounts: Accounts,
}

impl Study {
    /// Makes the replications of a job. `made` is told of them as they are finished, from any thread, for a progress bar.
    ///
    /// # Errors
    /// The first replication, by number, that could make no progress.
    pub fn new(plan: &Plan, seed: u64, runs: Runs, made: impl Fn(u32) + Sync) -> Result<Self, RunError> {
        let mut study = Self::of(seed, Vec::new(), plan.empty_accounts());
        match runs {
            Runs::Exactly(n) => study.go_on(plan, n, &made)?,
            Runs::UntilP80Within { half_width_s, most } => {
                while study.runs() < most && !study.p80_is_within(half_width_s) {
                    study.go_on(plan, (study.runs() + LOOK).min(most), &made)?;
                }
            }
        }
        Ok(study)
    }

    /// A study of outcomes that are known, such as those a test of a report is about.
    pub fn of(seed: u64, outcomes: Vec<Outcome>, accounts: Accounts) -> Self {
        let (complete, open) = (accounts.clone(), accounts.emptied());
        Self { seed, outcomes, accounts, complete, open }
    }

    /// Makes the replications that are missing up to `n` in all, to the same bits as if they had been asked for at first.
    ///
    /// # Errors
    /// The first replication, by number, that could make no progress.
    pub fn extend(&mut self, plan: &Plan, n: u32, made: impl Fn(u32) + Sync) -> Result<(), RunError> {
        if n > self.runs() { self.go_on(plan, n, &made) } else { Ok(()) }
    }

    fn go_on(&mut self, plan: &Plan, n: u32, made: &(dyn Fn(u32) + Sync)) -> Result<(), RunError> {
        let first = self.runs();
        threads::lengthen(&mut self.outcomes, Outcome::default(), (n - first) as usize);
        let outcomes = &mut self.outcomes[first as usize..];
        let (rest_of_open, new) = outcomes.split_at_mut(to_end_of_batch(first, n));
        let goes_on = Batch { first, outcomes: rest_of_open, accounts: self.open.clone() };
        let batches = std::iter::once(goes_on)
            .filter(|batch| !batch.outcomes.is_empty())
            .chain(whole_batches(plan, first.next_multiple_of(BATCH), new));
        match make(plan, self.seed, batches.collect(), made) {
            Ok(all) => all.into_iter().for_each(|(end, accounts)| {
                self.open = accounts;
                self.close(end);
            }),
            Err(deadlock) => {
                self.outcomes.truncate(first as usize);
                return Err(deadlock);
            }
        }
        self.add_up();
        Ok(())
    }

    /// Closes the batch under way if it ends where these replications do.
    fn close(&mut self, end: u32) {
        if end.is_multiple_of(BATCH) {
            self.complete.add(&self.open);
            self.open = self.open.emptied();
        }
    }

    /// Takes in replications that were made elsewhere and follow those that are here, with their accounts.
    pub(crate) fn append(&mut self, outcomes: &[Outcome], accounts: &Accounts) {
        self.outcomes.extend_from_slice(outcomes);
        self.open.add(accounts);
        self.close(self.runs());
    }

    /// Brings the accounts up to date.
    pub(crate) fn add_up(&mut self) {
        self.accounts.clone_from(&self.complete);
        self.accounts.add(&self.open);
    }

    fn p80_is_within(&self, half_width_s: f64) -> bool {
        let p80 = self.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.8);
        matches!((p80.low, p80.high), (Some(low), Some(high))
            if high - p80.value <= half_width_s && p80.value - low <= half_width_s)
    }

    /// How many replications there are.
    pub fn runs(&self) -> u32 {
        self.outcomes.len() as u32
    }

    /// One figure of every replication, in rising order.
    pub fn sorted(&self, figure: impl Fn(&Outcome) -> f64) -> Sorted {
        Sorted::new(self.outcomes.iter().map(figure))
    }

    /// The chance of being done, clean-up included, by then on the clock, counted from the start of the first day. A
    /// replication that ends short is not done at any time.
    pub fn share_done_by(&self, clock: Duration) -> Share {
        self.share_of(|o| o.done().is_some_and(|done| done.clock <= clock))
    }

    /// The chance that the crew stops with zones still lacking material, where the area was to be covered.
    pub fn share_short(&self) -> Share {
        self.share_of(|o| o.ends_short)
    }

    fn share_of(&self, such: impl Fn(&Outcome) -> bool) -> Share {
        share(self.outcomes.iter().filter(|o| such(o)).count(), self.outcomes.len())
    }

    /// The replication whose finish \[working time\] lies nearest to the median; the lowest number of several.
    pub fn run_nearest_median(&self) -> Option<u32> {
        let micros = |o: &Outcome| o.finish.working.as_micros() as f64;
        let median = self.sorted(micros).percentile(0.5).value;
        let off = |o: &Outcome| (micros(o) - median).abs();
        self.outcomes.iter().min_by(|a, b| off(a).total_cmp(&off(b))).map(|o| o.run)
    }
}

/// How many of the replications from `first` up to `n` lie in a batch that begins before `first`.
pub(crate) fn to_end_of_batch(first: u32, n: u32) -> usize {
    (first.next_multiple_of(BATCH).min(n) - first) as usize
}

/// Batches of replications from `first` on, where a batch begins.
pub(crate) fn whole_batches<'a>(
    plan: &Plan,
    first: u32,
    outcomes: &'a mut [Outcome],
) -> impl Iterator<Item = Batch<'a>> {
    let accounts = plan.empty_accounts();
    let batches = (first..).step_by(BATCH as usize).zip(outcomes.chunks_mut(BATCH as usize));
    batches.map(move |(first, outcomes)| Batch { first, outcomes, accounts: accounts.clone() })
}

/// Makes batches of replications: of each, the number after its last and its accounts.
pub(crate) fn make(
    plan: &Plan,
    seed: u64,
    batches: Vec<Batch<'_>>,
    made: &(dyn Fn(u32) + Sync),
) -> Result<Vec<(u32, Accounts)>, RunError> {
    // What comes after a replication in a deadlock need not be made; what comes before it must, to say which was the first.
    let first_to_fail = AtomicUsize::new(usize::MAX);
    let done = threads::each(
        batches,
        || Scratch::new(plan),
        |scratch, number, batch| {
            let Batch { first, outcomes, mut accounts } = batch;
            let end = first + outcomes.len() as u32;
            if number > first_to_fail.load(Ordering::Relaxed) {
                return Ok((end, accounts));
            }
            for (run, outcome) in (first..end).zip(outcomes.iter_mut()) {
                *outcome = scratch.run(plan, seed, run, &mut accounts).inspect_err(|_| {
                    first_to_fail.fetch_min(number, Ordering::Relaxed);
                })?;
            }
            made(outcomes.len() as u32);
            Ok((end, accounts))
        },
    );
    done.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outcome::Moment;

    #[test]
    fn the_run_nearest_the_median_is_the_first_of_several() {
        let finished_at = |working| Outcome {
            finish: Moment { working: Duration::from_micros(working), ..Moment::default() },
            ..Outcome::default()
        };
        let runs = [10, 30, 20, 21, 20].into_iter().map(finished_at).zip(0..);
        let outcomes = runs.map(|(outcome, run)| Outcome { run, ..outcome }).collect();
        let mut study = Study::of(1, outcomes, Accounts::default());
        assert_eq!(study.run_nearest_median(), Some(2));
        study.outcomes.clear();
        assert_eq!(study.run_nearest_median(), None);
    }

    #[test]
    fn a_run_that_ends_short_is_not_done_at_any_time() {
        let finished_at = |clock, ends_short| Outcome {
            finish: Moment { working: Duration::from_micros(clock), clock: Duration::from_micros(clock) },
            ends_short,
            ..Outcome::default()
        };
        let outcomes = vec![finished_at(10, false), finished_at(20, true), finished_at(20, false)];
        let study = Study::of(1, outcomes, Accounts::default());
        let by = |clock| study.share_done_by(Duration::from_micros(clock)).value * 3.0;
        assert_eq!([9, 10, 19, 20, i64::MAX].map(by), [0.0, 1.0, 1.0, 2.0, 2.0]);
        assert_eq!(study.share_short().value * 3.0, 1.0);
    }
}
