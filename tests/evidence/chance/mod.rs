//! Chance: what the engine draws, held to the exact laws; streams that have nothing to do with one another; intervals that
//! hold the truth as often as they say.
//!
//! What is judged is the way from a seed to a completion, not the tables of the sampler alone. The exact laws are written out
//! here or in closed form from `libm`'s error and gamma functions; no quantile function of heapcast takes part.

pub(super) mod coverage;
pub(super) mod families;
pub(super) mod fits;
mod laws;
pub(super) mod streams;

use super::theory::*;
use sim::*;

/// The mean of what is drawn, in microseconds: months, so that even the smallest of a million draws is many of them.
const MEAN_US: f64 = 1e13;

/// Where a law is put so that the engine draws from it.
#[derive(Clone, Copy, Debug)]
enum Place {
    Loading,
    Haul,
    Dump,
    Raking,
    Day,
    LoaderPace,
    Travel,
    RakerPace,
    SetUp,
}

/// A job of one load in which one thing takes time, and that thing has the law. Its completions are draws.
fn one_draw(place: Place, law: &Distribution) -> Job {
    let mean_s = MEAN_US / 1e6;
    let mut job = job(1, 1);
    let chance = &mut job.chance;
    let multiplier = match place {
        Place::Loading => &mut chance.loads.loading,
        Place::Haul => &mut chance.loads.haul,
        Place::Dump => &mut chance.loads.dump,
        Place::Raking => &mut chance.loads.raking,
        Place::Day => &mut chance.days.day,
        Place::LoaderPace => &mut chance.days.loader_pace,
        Place::Travel => &mut chance.days.travel,
        Place::RakerPace => &mut chance.days.raker_pace,
        Place::SetUp => &mut job.shift.set_up_s,
    };
    *multiplier = if matches!(place, Place::SetUp) { law.times(mean_s) } else { law.clone() };
    match place {
        Place::Loading | Place::Day => job.loaders[0].load_s = mean_s,
        Place::Dump | Place::LoaderPace => job.loaders[0].dump_s = mean_s,
        Place::Haul | Place::Travel => job.zones[0].ways[0].distance_m = mean_s,
        Place::Raking | Place::RakerPace => {
            job.raking.spread_share = 0.0;
            job.rakers = vec![Raker {
                name: "raker".into(),
                rate_m3_per_h: 3600.0 / mean_s,
                start_zone: 0,
                walking_m_per_s: 1.0,
                cost_per_h: 0.0,
            }];
        }
        Place::SetUp => {}
    }
    job
}

/// Completions of so many runs of a job under a seed, in units of the mean, in the order of the runs.
fn draws(job: &Job, seed: u64, runs: u32) -> Vec<f64> {
    let study = Study::new(&Plan::new(job).unwrap(), seed, Runs::Exactly(runs), |_| {}).unwrap();
    study.outcomes.iter().map(|o| o.completion.working.as_micros() as f64 / MEAN_US).collect()
}

/// The score that a standard normal number reaches with this chance.
fn score(chance: f64) -> f64 {
    use statrs::distribution::{ContinuousCDF, Normal};
    Normal::standard().inverse_cdf(chance)
}
