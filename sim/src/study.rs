//! Many runs of one job, in parallel, the same to the last bit on any number of threads.

use crate::activity::{Micros, SECOND};
use crate::outcome::{Books, Outcome};
use crate::percentile::{Share, Sorted, share};
use crate::plan::Plan;
use crate::run::{RunError, Scratch};
use rayon::prelude::*;
use std::sync::atomic::{AtomicUsize, Ordering};

/// How many runs to make.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Runs {
    /// This many.
    Exactly(u32),
    /// Until the 95 % interval of the 80th percentile of the finish is no wider than this to either side.
    UntilP80Within {
        /// Half-width wanted \[s of working time\].
        half_width_s: f64,
        /// Runs to make at the most.
        most: u32,
    },
}

/// Runs in one parcel of work. Books are summed parcel by parcel in order, so the number of threads changes nothing.
const PARCEL: u32 = 250;
/// Runs between two looks at the precision reached.
const LOOK: u32 = 1_000;

/// The runs of one job.
#[derive(Clone, Debug, PartialEq)]
pub struct Study {
    /// The seed all luck comes from.
    pub seed: u64,
    /// One for each run, in order.
    pub outcomes: Vec<Outcome>,
    /// Summed over all runs.
    pub books: Books,
}

impl Study {
    /// Runs a job. `made` is told of runs as they are finished, from any thread, for a progress bar.
    ///
    /// # Errors
    /// The first run, by number, that could make no progress.
    pub fn new(plan: &Plan, seed: u64, runs: Runs, made: impl Fn(u32) + Sync) -> Result<Self, RunError> {
        let mut study = Self { seed, outcomes: Vec::new(), books: plan.empty_books() };
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

    /// Makes the runs that are missing up to `n` in all, as if they had been asked for at first.
    ///
    /// # Errors
    /// The first run, by number, that could make no progress.
    pub fn extend(&mut self, plan: &Plan, n: u32, made: impl Fn(u32) + Sync) -> Result<(), RunError> {
        if n > self.runs() { self.go_on(plan, n, &made) } else { Ok(()) }
    }

    fn go_on(&mut self, plan: &Plan, n: u32, made: &(impl Fn(u32) + Sync)) -> Result<(), RunError> {
        let first = self.runs();
        // What comes after a run that is stuck need not be made; what comes before it must, to say which was the first.
        let stuck = AtomicUsize::new(usize::MAX);
        // In parallel as well: fresh memory is slow to touch.
        self.outcomes.par_extend(rayon::iter::repeat_n(Outcome::default(), (n - first) as usize));
        let parcels = self.outcomes[first as usize..].par_chunks_mut(PARCEL as usize);
        let done: Vec<Result<Books, RunError>> = parcels
            .enumerate()
            .map_init(
                || Scratch::new(plan),
                |scratch, (parcel, outcomes)| {
                    let mut books = plan.empty_books();
                    if parcel > stuck.load(Ordering::Relaxed) {
                        return Ok(books);
                    }
                    let runs = first + parcel as u32 * PARCEL..;
                    for (run, outcome) in runs.zip(outcomes.iter_mut()) {
                        *outcome = scratch.run(plan, self.seed, run, &mut books).inspect_err(|_| {
                            stuck.fetch_min(parcel, Ordering::Relaxed);
                        })?;
                    }
                    made(outcomes.len() as u32);
                    Ok(books)
                },
            )
            .collect();
        match done.into_iter().collect::<Result<Vec<_>, _>>() {
            Ok(books) => books.iter().for_each(|parcel| self.books.add(parcel)),
            Err(stuck) => {
                self.outcomes.truncate(first as usize);
                return Err(stuck);
            }
        }
        Ok(())
    }

    fn p80_is_within(&self, half_width_s: f64) -> bool {
        let p80 = self.sorted(|o| o.finish.working as f64 / SECOND as f64).percentile(0.8);
        matches!((p80.low, p80.high), (Some(low), Some(high))
            if high - p80.value <= half_width_s && p80.value - low <= half_width_s)
    }

    /// How many runs there are.
    pub fn runs(&self) -> u32 {
        self.outcomes.len() as u32
    }

    /// One figure of every run, in rising order.
    pub fn sorted(&self, figure: impl Fn(&Outcome) -> f64) -> Sorted {
        Sorted::new(self.outcomes.iter().map(figure))
    }

    /// The chance of being done, clean-up included, by then on the clock \[us from the start of the first day\]. A run that
    /// ends short is not done at any time.
    pub fn share_done_by(&self, clock: Micros) -> Share {
        self.share_of(|o| o.done().is_some_and(|done| done.clock <= clock))
    }

    /// The chance that the crew stops with zones still lacking material, where the area was to be covered.
    pub fn share_short(&self) -> Share {
        self.share_of(|o| o.ends_short)
    }

    fn share_of(&self, such: impl Fn(&Outcome) -> bool) -> Share {
        share(self.outcomes.iter().filter(|o| such(o)).count(), self.outcomes.len())
    }

    /// The run whose finish \[working time\] lies nearest to the median; the lowest number of several.
    pub fn run_nearest_median(&self) -> Option<u32> {
        let median = self.sorted(|o| o.finish.working as f64).percentile(0.5).value;
        let off = |o: &Outcome| (o.finish.working as f64 - median).abs();
        self.outcomes.iter().min_by(|a, b| off(a).total_cmp(&off(b))).map(|o| o.run)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outcome::Moment;

    #[test]
    fn the_run_nearest_the_median_is_the_first_of_several() {
        let finished_at = |working| Outcome { finish: Moment { working, clock: 0 }, ..Outcome::default() };
        let runs = [10, 30, 20, 21, 20].into_iter().map(finished_at).zip(0..);
        let outcomes = runs.map(|(outcome, run)| Outcome { run, ..outcome }).collect();
        let mut study = Study { seed: 1, outcomes, books: Books::default() };
        assert_eq!(study.run_nearest_median(), Some(2));
        study.outcomes.clear();
        assert_eq!(study.run_nearest_median(), None);
    }

    #[test]
    fn a_run_that_ends_short_is_not_done_at_any_time() {
        let finished_at = |clock, ends_short| Outcome {
            finish: Moment { working: clock, clock },
            ends_short,
            ..Outcome::default()
        };
        let outcomes = vec![finished_at(10, false), finished_at(20, true), finished_at(20, false)];
        let study = Study { seed: 1, outcomes, books: Books::default() };
        let by = |clock| study.share_done_by(clock).value * 3.0;
        assert_eq!([9, 10, 19, 20, Micros::MAX].map(by), [0.0, 1.0, 1.0, 2.0, 2.0]);
        assert_eq!(study.share_short().value * 3.0, 1.0);
    }
}
