//! Comparisons for the tests of what is said and shown. All numbers are made up.

use crate::compare::{Choice, Comparison, Judged};
use crate::example;
use scenarios::units::System;
use sim::{Duration, Moment, Promise};

/// Runs of each.
pub(crate) const RUNS: u32 = 100;

/// A job whose run *k* takes so many minutes and costs so much.
pub(crate) fn choice(name: &str, minutes: impl Fn(u32) -> f64, cost: impl Fn(u32) -> f64) -> Choice {
    let mut study = example::forecast().study;
    for (run, outcome) in (0..RUNS).zip(&mut study.outcomes) {
        let time = Duration::try_from_secs_f64(minutes(run) * 60.0).expect("a time that fits");
        let moment = Moment { working: time, clock: time };
        (outcome.completion, outcome.finish) = (moment, moment);
        (outcome.cost, outcome.short_m3) = (cost(run), 0.0);
    }
    let mut scenario = example::scenario();
    // Jobs that differ in nothing would be told to be the same.
    scenario.job.loaders[0].name = name.to_owned();
    Choice { name: name.into(), scenario, study, set_aside: None }
}

/// These jobs judged by working time with five minutes to spare, the promise reached.
pub(crate) fn comparison(choices: Vec<Choice>, best: usize, within: f64) -> Comparison {
    let mut provenance = example::forecast().provenance;
    provenance.runs = RUNS * choices.len() as u32;
    Comparison {
        choices,
        best,
        held: true,
        within,
        promise: Promise { indifference: 300.0, confidence: 0.95, first: 100, most: 50_000 },
        judged: Judged::WorkingTime,
        units: System::Us,
        provenance,
    }
}

/// How the first takes its time: two hours and a half-minute more each run.
pub(crate) fn usual(run: u32) -> f64 {
    120.0 + 0.5 * f64::from(run)
}

/// Alternately the one and the other.
pub(crate) fn alternately(run: u32, even: f64, odd: f64) -> f64 {
    if run.is_multiple_of(2) { even } else { odd }
}

/// The first, a second raker who saves 20 and 40 minutes alternately for $21 more, and a slower bucket for $10 less.
pub(crate) fn three() -> Comparison {
    let mut slow = choice("a smaller bucket", |k| usual(k) + 10.0, |_| 990.0);
    slow.set_aside = Some(RUNS);
    let mut first = choice("as it stands", usual, |_| 1_000.0);
    first.set_aside = Some(RUNS);
    let raker = choice("a second raker", |k| usual(k) - alternately(k, 20.0, 40.0), |_| 1_021.0);
    comparison(vec![first, raker, slow], 1, 0.0)
}
