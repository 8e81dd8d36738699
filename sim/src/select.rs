//! Which of several jobs is the best, with a promise: this one, or one at most so much better, with such a confidence.
//!
//! A fully sequential selection after Fan, Hong & Nelson, "Indifference-zone-free selection of the best", Operations
//! Research 64(6), 2016 (from memory), with common random numbers. Every pair of jobs still in the race is compared by its
//! paired differences, each with an interval that holds at all looks together ([`AlwaysValid`]); a job that is surely worse
//! than another is set aside and gets no more runs. The race ends when one is left, or when no other can be better than the
//! leader by more than the indifference.
//!
//! Why the promise holds, whatever the jobs' true means: let *b* be the best. But for a chance of `1 - confidence`, shared
//! evenly among the pairs (*i*, *b*), all of their intervals hold at all looks. Then *b* is never set aside, so at the end the
//! leader was compared with it, and the interval says it is at most the indifference worse. (The older sequential procedure of
//! Kim & Nelson, 2001, promises this only where the best is ahead of all others by the indifference.) The intervals want
//! normal differences; those of ten runs averaged are near enough, which the tests hold by repetition. What none of
//! the first runs shows cannot be allowed for: trouble rarer than one in so many runs may be overlooked.

use crate::always_valid::AlwaysValid;
use crate::error::RunError;
use crate::outcome::Outcome;
use crate::plan::Plan;
use crate::study::{Runs, Study};

/// What is promised of the one selected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Promise {
    /// Differences of this much do not matter, in the units of the figure; above 0.
    pub indifference: f64,
    /// How sure the promise is \[0 to 1\], such as 0.95.
    pub confidence: f64,
    /// Runs of every job before any is set aside; at least 200 are made.
    pub first: u32,
    /// Runs of any one job at the most.
    pub most: u32,
}

/// Whether the jobs share their random numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RandomNumbers {
    /// The same for all: common random numbers.
    Common,
    /// Each its own, as if they were compared on different days; only to show what common random numbers save.
    Independent,
}

/// The outcome of a selection.
#[derive(Clone, Debug, PartialEq)]
pub struct Selected {
    /// Place in the list of the one with the least mean among those left.
    pub best: usize,
    /// Whether the promise was reached before the most runs.
    pub held: bool,
    /// None of the others is better by more than this, with the confidence promised; 0 where it is surely the best.
    pub within: f64,
    /// One for each job, with as many runs as it was given.
    pub studies: Vec<Study>,
    /// After how many runs each was set aside as surely worse than another; `None` for those left at the end.
    pub set_aside: Vec<Option<u32>>,
}

impl Selected {
    /// Runs made in all.
    pub fn runs(&self) -> u64 {
        self.studies.iter().map(|study| u64::from(study.runs())).sum()
    }
}

/// Runs averaged into one observation.
const AVERAGED: u32 = 10;
/// Observations before the first look, at least: fewer know their spread too badly.
const LEAST_OBSERVATIONS: u32 = 20;

/// Selects the job with the least mean of a figure, which is told the job's place in the list. `made` is told of runs as they
/// are finished, from any thread.
///
/// # Errors
/// The first run that could make no progress.
pub fn select(
    plans: &[Plan],
    seed: u64,
    numbers: RandomNumbers,
    promise: &Promise,
    figure: impl Fn(usize, &Outcome) -> f64,
    made: impl Fn(u32) + Sync,
) -> Result<Selected, RunError> {
    let first = promise.first.max(AVERAGED * LEAST_OBSERVATIONS).next_multiple_of(AVERAGED);
    let pairs = plans.len().saturating_sub(1).max(1) as f64;
    let interval = AlwaysValid::new((first / AVERAGED) as usize, (1.0 - promise.confidence) / pairs);
    let mut race =
        Race { interval, observations: vec![Vec::new(); plans.len()], left: vec![true; plans.len()] };
    let mut set_aside = vec![None; plans.len()];
    let mut studies = Vec::new();
    for (i, plan) in plans.iter().enumerate() {
        let seed = match numbers {
            RandomNumbers::Common => seed,
            // An odd step visits every seed once.
            RandomNumbers::Independent => seed.wrapping_add((i as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15)),
        };
        studies.push(Study::new(plan, seed, Runs::Exactly(first), &made)?);
    }
    let mut runs = first;
    loop {
        race.take_in(&studies, &figure);
        for (i, out) in race.surely_worse().into_iter().enumerate() {
            if out {
                race.left[i] = false;
                set_aside[i] = Some(runs);
            }
        }
        let best = race.leader();
        let within = race.at_most_better_than(best);
        let held = within <= promise.indifference;
        if held || runs >= promise.most {
            return Ok(Selected { best, held, within, studies, set_aside });
        }
        runs = (runs + runs / 4).next_multiple_of(AVERAGED).min(promise.most.next_multiple_of(AVERAGED));
        for (i, study) in studies.iter_mut().enumerate().filter(|(i, _)| race.left[*i]) {
            study.extend(&plans[i], runs, &made)?;
        }
    }
}

/// The jobs compared so far, by means of so many runs.
struct Race {
    interval: AlwaysValid,
    observations: Vec<Vec<f64>>,
    left: Vec<bool>,
}

impl Race {
    /// Averages the runs that are new.
    fn take_in(&mut self, studies: &[Study], figure: impl Fn(usize, &Outcome) -> f64) {
        for (i, (observations, study)) in self.observations.iter_mut().zip(studies).enumerate() {
            let known = observations.len() * AVERAGED as usize;
            let new = study.outcomes[known..].chunks_exact(AVERAGED as usize);
            observations.extend(
                new.map(|runs| runs.iter().map(|run| figure(i, run)).sum::<f64>() / f64::from(AVERAGED)),
            );
        }
    }

    fn in_race(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.left.len()).filter(|i| self.left[*i])
    }

    /// Mean of `i` less that of `j`, and half the width of its interval.
    fn apart(&self, i: usize, j: usize) -> (f64, f64) {
        let (a, b) = (&self.observations[i], &self.observations[j]);
        let n = a.len().min(b.len());
        let differences = || a.iter().zip(b).map(|(a, b)| a - b);
        let mean = differences().sum::<f64>() / n as f64;
        let variance = differences().map(|d| (d - mean) * (d - mean)).sum::<f64>() / n as f64;
        // What never differs is known exactly.
        let half = if variance == 0.0 { 0.0 } else { libm::sqrt(variance) * self.interval.half_width(n) };
        (mean, half)
    }

    /// Those of which another job left is surely better.
    fn surely_worse(&self) -> Vec<bool> {
        let worse = |i: usize| {
            self.in_race().any(|j| {
                let (mean, half) = self.apart(i, j);
                mean > half
            })
        };
        (0..self.left.len()).map(|i| self.left[i] && worse(i)).collect()
    }

    /// Least mean of those left; the first of several.
    fn leader(&self) -> usize {
        let mean = |i: usize| self.observations[i].iter().sum::<f64>() / self.observations[i].len() as f64;
        self.in_race().min_by(|a, b| mean(*a).total_cmp(&mean(*b))).unwrap_or(0)
    }

    /// How much better than `best` another one left may be.
    fn at_most_better_than(&self, best: usize) -> f64 {
        let others = self.in_race().filter(|i| *i != best);
        others.map(|i| self.apart(best, i)).map(|(mean, half)| mean + half).fold(0.0, f64::max)
    }
}

#[cfg(test)]
mod tests;
