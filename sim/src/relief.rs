//! What would help: common random numbers with one thing improved, and what that saves.

use crate::chance::Distribution;
use crate::error::{JobError, RunError};
use crate::job::{Delivery, Job};
use crate::outcome::Outcome;
use crate::paired::paired;
use crate::percentile::{Mean, Share, share};
use crate::plan::Plan;
use crate::run::Scratch;
use crate::study::Study;
use crate::threads;

/// One thing made better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Improvement {
    /// A copy of the last raker.
    AnotherRaker,
    /// Every raker a tenth faster.
    FasterRaking,
    /// Every bucket's heaped capacity a tenth larger, same lift and times.
    LargerBucket,
    /// Every way a tenth shorter.
    ShorterWays,
    /// A copy of the last loader.
    AnotherLoader,
    /// Room for one more heap in every zone whose room is limited.
    MoreRoom,
    /// Every delivery promised half an hour earlier, though not before midnight of the first day. One that then comes before
    /// the crew begins lies there when it does.
    EarlierDeliveries,
    /// Every delivery lies at its pile when the crew begins.
    AllThere,
    /// One more truckload: the last delivery brings it on top of its own, of as much as its own; without deliveries as much as the
    /// usual truck brings lies at the largest pile from the start.
    AnotherTruckload,
}

/// By how much deliveries are brought forward \[s\].
const EARLIER_S: f64 = 1_800.0;

/// What an improvement saves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Relief {
    /// What was improved.
    pub improvement: Improvement,
    /// Working time to the finish saved \[s\]: mean of the paired differences.
    pub saved_s: Mean,
    /// Cost saved \[money\]: mean of the paired differences, below 0 where it costs more. The price of a truckload more is not
    /// in it.
    pub saved_cost: Mean,
    /// Of a truckload more, whose worth is not in minutes: the chance that the job gets done.
    pub done: Option<DoneMore>,
}

/// The chance that no run ends short, before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DoneMore {
    /// As the job stands.
    pub before: Share,
    /// With one truckload more.
    pub after: Share,
    /// The truckload \[m3\].
    pub truckload_m3: f64,
}

/// How many runs an improvement is tried in: the fewest, and more, up to the most, until the 95 % interval of the time saved
/// is no wider to either side than told: `least_s`, or a share of what is saved where that is more.
///
/// The width alone decides when to stop, never on which side of zero the mean lies: such an interval keeps its certainty
/// (Chow & Robbins, "On the asymptotic theory of fixed-width sequential confidence intervals for the mean", Annals of
/// Mathematical Statistics 36, 1965, from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tries {
    /// Runs to begin with.
    pub fewest: u32,
    /// Runs at the most.
    pub most: u32,
    /// Half-width wanted \[s\].
    pub least_s: f64,
    /// Half-width wanted as a share of what is saved.
    pub share: f64,
    /// Runs that a truckload more is tried in, whose worth is a chance.
    pub of_chances: u32,
}

/// Why relief could not be worked out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReliefError {
    /// The improved job is refused.
    #[error(transparent)]
    Job(#[from] JobError),
    /// A run of the improved job comes to a deadlock.
    #[error(transparent)]
    Run(#[from] RunError),
}

impl Tries {
    /// Exactly so many runs.
    pub const fn exactly(runs: u32) -> Self {
        Self { fewest: runs, most: runs, least_s: 0.0, share: 0.0, of_chances: runs }
    }

    /// How many more runs it takes than this mean is of, as far as can be told from it; 0 where it is known well enough.
    fn more_than(&self, saved_s: Mean) -> u32 {
        let half_s = (saved_s.high - saved_s.low) / 2.0;
        let times = half_s / self.least_s.max(self.share * saved_s.value.abs());
        // What is expected to be enough and a little more, so that a third look is seldom needed.
        let (made, most) = (saved_s.n as u32, self.most);
        let enough = (1.1 * times * times * saved_s.n as f64).min(f64::from(most)) as u32;
        let enough = enough.max(made + 1).next_multiple_of(RUNS_AT_ONCE).min(most);
        if times <= 1.0 { 0 } else { enough.saturating_sub(made) }
    }
}

impl Improvement {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::AnotherRaker,
        Self::FasterRaking,
        Self::LargerBucket,
        Self::ShorterWays,
        Self::AnotherLoader,
        Self::MoreRoom,
        Self::EarlierDeliveries,
        Self::AllThere,
        Self::AnotherTruckload,
    ];

    /// Whether its worth is in minutes, and not in the chance that the job gets done.
    fn saves_time(self) -> bool {
        self != Self::AnotherTruckload
    }

    /// The job with this improved; `None` where there is nothing to improve. `truckload_m3` is what the usual truck brings, for a
    /// job without deliveries.
    pub fn of(self, job: &Job, truckload_m3: f64) -> Option<Job> {
        let mut job = job.clone();
        match self {
            Self::AnotherRaker => {
                let copy = job.rakers.last().filter(|_| job.rakers.len() < crate::plan::MOST_RAKERS)?.clone();
                job.rakers.push(copy);
            }
            Self::FasterRaking => {
                job.rakers.first()?;
                job.rakers.iter_mut().for_each(|r| r.rate_m3_per_h *= 1.1);
            }
            Self::LargerBucket => job.loaders.iter_mut().for_each(|l| l.heaped_m3 *= 1.1),
            Self::ShorterWays => {
                job.zones.iter_mut().flat_map(|z| &mut z.ways).for_each(|w| w.distance_m *= 0.9);
            }
            Self::AnotherLoader => {
                let copy =
                    job.loaders.last().filter(|_| job.loaders.len() < crate::plan::MOST_LOADERS)?.clone();
                job.loaders.push(copy);
            }
            Self::MoreRoom => {
                job.zones.iter().find_map(|z| z.room)?;
                job.zones.iter_mut().filter_map(|z| z.room.as_mut()).for_each(|r| *r += 1);
            }
            Self::EarlierDeliveries => change_later_deliveries(&mut job, |delivery, _| {
                delivery.at_s = (delivery.at_s - EARLIER_S).max(0.0);
            })?,
            Self::AllThere => change_later_deliveries(&mut job, |delivery, start_s| {
                (delivery.at_s, delivery.late_s) = (start_s, Distribution::Constant(0.0));
            })?,
            Self::AnotherTruckload => add_a_truckload(&mut job, truckload_m3)?,
        }
        Some(job)
    }
}

/// Changes every delivery that may come after the start; `None` if there is none. A delivery keeps its place in the list, and
/// with it its draws.
fn change_later_deliveries(job: &mut Job, change: impl Fn(&mut Delivery, f64)) -> Option<()> {
    let start_s = job.shift.start_s;
    let later = |d: &&mut Delivery| d.at_s > start_s || d.late_s != Distribution::Constant(0.0);
    let mut all = job.stockpiles.iter_mut().flat_map(|pile| &mut pile.deliveries).filter(later).peekable();
    all.peek()?;
    all.for_each(|delivery| change(delivery, start_s));
    Some(())
}

/// Adds what one more truck brings where it changes no draw of another delivery.
fn add_a_truckload(job: &mut Job, usual_m3: f64) -> Option<()> {
    let deliveries = job.stockpiles.iter_mut().flat_map(|pile| &mut pile.deliveries);
    if let Some(last) = deliveries.max_by(|a, b| a.at_s.total_cmp(&b.at_s)) {
        last.volume_m3 *= 2.0;
        return Some(());
    }
    let largest = job.stockpiles.iter_mut().max_by(|a, b| a.on_hand_m3.total_cmp(&b.on_hand_m3));
    largest.filter(|_| usual_m3 > 0.0).map(|pile| pile.on_hand_m3 += usual_m3)
}

/// A truckload: what the last delivery brings, or without deliveries what the usual truck brings \[m3\].
pub fn truckload_m3(job: &Job, usual_m3: f64) -> f64 {
    let deliveries = job.stockpiles.iter().flat_map(|pile| &pile.deliveries);
    deliveries.max_by(|a, b| a.at_s.total_cmp(&b.at_s)).map_or(usual_m3, |last| last.volume_m3)
}

/// A job that is done less often than this needs material before anything else (our own choice: nine runs in ten).
const OFTEN: f64 = 0.9;

/// An improvement, tried in the first runs of the study so far.
struct Trial {
    improvement: Improvement,
    plan: Plan,
    outcomes: Vec<Outcome>,
    /// Runs still to be made.
    more: u32,
}

/// Runs of a trial that a thread makes in one go: trials are short, and every thread should have some.
const RUNS_AT_ONCE: u32 = 50;

/// Each improvement that applies to the job, compared with the first runs of its study, by the minutes saved, most first; one
/// more truckload is tried where some runs end short, and comes before all others where more than one in ten does. `plan` is the
/// job made ready, `usual_m3` what the usual truck brings; `made` is told of runs as they are finished.
///
/// # Errors
/// If an improved job is refused or comes to a deadlock, which the job itself was not.
pub fn relief(
    job: &Job,
    plan: &Plan,
    study: &Study,
    usual_m3: f64,
    tries: Tries,
    made: impl Fn(u32) + Sync,
) -> Result<Vec<Relief>, ReliefError> {
    let tries = Tries { most: tries.most.min(study.runs()), ..tries };
    let mut trials = trials(job, plan, study, usual_m3, tries)?;
    while trials.iter().any(|trial| trial.more > 0) {
        let all = trials.iter_mut().collect();
        let gone_on = threads::each(all, || (), |(), _, trial: &mut Trial| trial.goes_on(study.seed, &made));
        gone_on.into_iter().collect::<Result<(), _>>()?;
        for trial in &mut trials {
            let is_of_time = trial.improvement.saves_time();
            trial.more = if is_of_time { tries.more_than(trial.saved_s(study)) } else { 0 };
        }
    }
    let mut all: Vec<Relief> =
        trials.iter().map(|trial| trial.relief(study, truckload_m3(job, usual_m3))).collect();
    let more_done = |r: &Relief| {
        r.done.is_some_and(|done| done.before.value < OFTEN && done.after.value > done.before.value)
    };
    all.sort_by(|a, b| more_done(b).cmp(&more_done(a)).then(b.saved_s.value.total_cmp(&a.saved_s.value)));
    Ok(all)
}

/// The improvements that apply, not yet tried in any run.
fn trials(
    job: &Job,
    plan: &Plan,
    study: &Study,
    usual_m3: f64,
    tries: Tries,
) -> Result<Vec<Trial>, JobError> {
    let short = study.outcomes.iter().any(|o| o.done().is_none());
    let apply = Improvement::ALL.into_iter().filter(|i| short || i.saves_time());
    let improved = apply.filter_map(|i| Some((i, i.of(job, usual_m3)?)));
    let trial = |(improvement, job): (Improvement, Job)| {
        let more = if improvement.saves_time() { tries.fewest } else { tries.of_chances }.min(tries.most);
        Ok(Trial { improvement, plan: plan.variant(&job)?, outcomes: Vec::new(), more })
    };
    improved.map(trial).collect()
}

impl Trial {
    /// Makes the runs that are still to be made.
    fn goes_on(&mut self, seed: u64, made: &(dyn Fn(u32) + Sync)) -> Result<(), RunError> {
        let first = self.outcomes.len();
        self.outcomes.resize(first + self.more as usize, Outcome::default());
        let (plan, start) = (&self.plan, || (Scratch::new(&self.plan), self.plan.empty_accounts()));
        let shares = self.outcomes[first..].chunks_mut(RUNS_AT_ONCE as usize).collect();
        let done = threads::each(shares, start, |(scratch, accounts), share, outcomes: &mut [Outcome]| {
            let runs = (first + share * RUNS_AT_ONCE as usize) as u32..;
            for (run, outcome) in runs.zip(outcomes.iter_mut()) {
                *outcome = scratch.run(plan, seed, run, accounts)?;
            }
            made(outcomes.len() as u32);
            Ok(())
        });
        done.into_iter().collect()
    }

    /// Working time saved so far.
    fn saved_s(&self, study: &Study) -> Mean {
        paired(&study.outcomes, &self.outcomes, |o| o.finish.working.as_secs_f64()).mean
    }

    /// What the trial comes to.
    fn relief(&self, study: &Study, truckload_m3: f64) -> Relief {
        let (before, after) = (&study.outcomes[..self.outcomes.len()], &self.outcomes);
        Relief {
            improvement: self.improvement,
            saved_s: self.saved_s(study),
            saved_cost: paired(before, after, |o| o.cost).mean,
            done: (!self.improvement.saves_time()).then(|| DoneMore {
                before: done(before),
                after: done(after),
                truckload_m3,
            }),
        }
    }
}

fn done(outcomes: &[Outcome]) -> Share {
    share(outcomes.iter().filter(|o| o.done().is_some()).count(), outcomes.len())
}

#[cfg(test)]
mod tests;
