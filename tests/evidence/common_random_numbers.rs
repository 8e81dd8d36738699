//! How many times fewer runs common random numbers needs than independent random numbers, for the same promise.
//!
//! Argument: the spread of a job comes mostly from days that are good or bad for all that is done (the day, the pace of the
//! people, how much the ground takes). With common random numbers these fall on both jobs alike and drop out of the difference but for
//! the small share by which the jobs differ; with independent random numbers they add up. Runs needed go with the variance of the
//! difference (Law, Simulation Modeling and Analysis, ch. 11, from memory), so the two ratios below have the same cause.

use super::comparison::{Comparison, Status};
use jobs::{one_and_one, with_lognormal_noise};
use sim::*;

#[allow(dead_code, reason = "shared with the tests of the model, which use more of it")]
#[path = "../../sim/tests/model/jobs.rs"]
mod jobs;

fn minutes(o: &Outcome) -> f64 {
    o.finish.working.as_mins_f64()
}

/// Sixty loads, a loader that takes 45 s and a raker who takes 50 s a load; good and bad days, every load with noise. About an
/// hour with a spread of some seven minutes.
fn before() -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 60.0;
    job.zones[0].room = Some(3);
    job.stockpiles[0].on_hand_m3 = 90.0;
    job.raking.stand_clear = true;
    with_lognormal_noise(job, 0.1, 0.25)
}

fn raking_faster(by: f64) -> Job {
    let mut job = before();
    job.rakers[0].rate_m3_per_h *= 1.0 + by;
    job
}

fn larger_bucket(by: f64) -> Job {
    let mut job = before();
    job.loaders[0].heaped_m3 *= 1.0 + by;
    job
}

fn plan(job: &Job) -> Plan {
    Plan::new(job).unwrap()
}

/// Variance of the difference with independent random numbers over that with common random numbers.
fn variance_ratio(after: &Job, runs: u32) -> f64 {
    let study = |job: &Job, seed| Study::new(&plan(job), seed, Runs::Exactly(runs), |_| {}).unwrap();
    let first = study(&before(), 1);
    let spread = |seed| paired(&first.outcomes, &study(after, seed).outcomes, minutes).mean.sd;
    (spread(2) / spread(1)).powi(2)
}

/// Runs made in all by selections with these seeds.
fn runs_needed(after: &Job, within_min: f64, numbers: RandomNumbers, seeds: std::ops::Range<u64>) -> u64 {
    let plans = [plan(&before()), plan(after)];
    let promise = Promise { indifference: within_min, confidence: 0.95, first: 200, most: 1_000_000 };
    let each = seeds.map(|seed| {
        let selected = select(&plans, seed, numbers, &promise, |_, o| minutes(o), |_| {}).unwrap();
        assert!(selected.held);
        selected.runs()
    });
    each.sum()
}

/// In every job half of the variance or more comes from days, so that five times is little to ask where a tenth is changed. The
/// changes of a hundredth are so small that the first 200 runs of each do not settle them with independent random numbers; with common
/// random numbers they mostly do, so what is found there is less than what common random numbers could save.
pub(super) fn what_common_random_numbers_saves() -> Comparison {
    let mut comparison = Comparison::new(
        "With common random numbers the difference of two jobs varies less, and fewer runs keep the same promise",
        "variances of 4,000 paired and 4,000 unpaired differences; runs of four selections each, half a minute of indifference; \
         at least five times is argued for in common_random_numbers.rs",
        Status::Computed,
        0.0,
    );
    for (what, after) in
        [("raking a tenth faster", raking_faster(0.1)), ("a bucket a tenth larger", larger_bucket(0.1))]
    {
        comparison.within(format!("{what}: times the variance"), variance_ratio(&after, 4_000), 5.0, 1_000.0);
    }
    for (what, after) in [
        ("raking a hundredth faster", raking_faster(0.01)),
        ("a bucket a hundredth larger", larger_bucket(0.01)),
    ] {
        let own = runs_needed(&after, 0.5, RandomNumbers::Independent, 1..5);
        let common = runs_needed(&after, 0.5, RandomNumbers::Common, 1..5);
        comparison.within(format!("{what}: times the runs"), own as f64 / common as f64, 5.0, 1_000.0);
    }
    comparison
}

#[test]
fn common_random_numbers_needs_many_times_fewer_runs_than_independent_ones() {
    what_common_random_numbers_saves().judge(4);
}
