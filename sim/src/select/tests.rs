//! The race by hand arithmetic: figures are made from the number of the run, so that every mean and spread is known.

use super::*;
use crate::{Distribution, Job, Loader, Prices, Shift, Stockpile, Way, Zone};

/// One load by a loader alone: what it takes does not matter here.
fn plan() -> Plan {
    let way = Way { stockpile: 0, distance_m: 1.0, ..Way::default() };
    let loader = Loader { heaped_m3: 1.0, ..Loader::default() };
    let job = Job {
        material: crate::Material { density_kg_per_m3: 250.0, ..Default::default() },
        zones: vec![Zone { need_m3: 1.0, ways: vec![way], walks_m: vec![0.0], ..Zone::default() }],
        stockpiles: vec![Stockpile { on_hand_m3: 1.0, ..Stockpile::default() }],
        loaders: vec![Loader {
            loaded_m_per_s: 1.0,
            empty_m_per_s: 1.0,
            load_s: 1.0,
            dump_s: 1.0,
            width_m: 1.0,
            ..loader
        }],
        raking: crate::Raking { spread_share: 1.0, ..Default::default() },
        shift: Shift {
            set_up_s: Distribution::Constant(0.0),
            clean_up_s: Distribution::Constant(0.0),
            ..Shift::default()
        },
        prices: Prices::default(),
        ..Job::default()
    };
    Plan::new(&job).unwrap()
}

fn race(observations: &[&[f64]]) -> Race {
    Race {
        interval: AlwaysValid::new(2, 0.05),
        observations: observations.iter().map(|of_job| of_job.to_vec()).collect(),
        left: vec![true; observations.len()],
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * b.abs().max(1.0)
}

const PROMISE: Promise = Promise { indifference: 0.25, confidence: 0.9, first: 205, most: 275 };

#[test]
fn an_observation_is_the_average_of_ten_runs_and_none_is_taken_in_twice() {
    let plan = plan();
    let mut studies = vec![Study::new(&plan, 1, Runs::Exactly(20), |_| {}).unwrap()];
    let mut race = race(&[&[]]);
    let number = |_: usize, o: &Outcome| f64::from(o.run);
    race.take_in(&studies, number);
    assert_eq!(race.observations, [[4.5, 14.5]]);
    studies[0].extend(&plan, 37, |_| {}).unwrap();
    race.take_in(&studies, number);
    // Seven runs are no observation yet.
    assert_eq!(race.observations, [[4.5, 14.5, 24.5]]);
}

#[test]
fn two_jobs_are_compared_by_mean_and_spread_of_their_differences() {
    // Differences -1, 0, 1, -2: mean -0.5, variance (0.25 + 0.25 + 2.25 + 2.25) / 4.
    let race = race(&[&[1.0, 2.0, 3.0, 4.0], &[2.0, 2.0, 2.0, 6.0, 100.0]]);
    let (mean, half) = race.apart(0, 1);
    assert!(near(mean, -0.5) && near(half, 1.25_f64.sqrt() * race.interval.half_width(4)), "{mean} {half}");
    assert_eq!(race.apart(1, 0), (0.5, half));
    // A difference that is always the same is known exactly.
    let race = self::race(&[&[1.0, 2.0, 5.0], &[4.0, 5.0, 8.0]]);
    assert_eq!(race.apart(0, 1), (-3.0, 0.0));
}

#[test]
fn a_job_is_surely_worse_where_its_mean_is_higher_by_more_than_the_interval_than_that_of_one_left() {
    let apart = |by: f64| race(&[&[1.0, 2.0, 3.0, 4.0], &[1.0 + by, 4.0 + by, 1.0 + by, 4.0 + by]]);
    // Differences by +0, +2, -2, +0: variance 2.
    let half = 2.0_f64.sqrt() * apart(0.0).interval.half_width(4);
    assert_eq!(apart(half * 0.999).surely_worse(), [false, false]);
    assert_eq!(apart(half * 1.001).surely_worse(), [false, true]);
    assert_eq!(apart(half * -1.001).surely_worse(), [true, false]);
    // Of two that are always alike neither is worse, and who is out of the race sets nobody aside.
    let mut three = race(&[&[2.0, 3.0], &[2.0, 3.0], &[1.0, 2.0]]);
    assert_eq!(three.surely_worse(), [true, true, false]);
    three.left[2] = false;
    assert_eq!(three.surely_worse(), [false, false, false]);
}

#[test]
fn the_leader_is_the_first_of_those_left_with_the_least_mean() {
    let mut race = race(&[&[5.0, 1.0], &[2.0, 2.0, 2.0], &[1.0, 3.0], &[0.0, 0.0]]);
    assert_eq!(race.leader(), 3);
    race.left[3] = false;
    assert_eq!(race.leader(), 1);
}

#[test]
fn another_may_be_better_by_the_end_of_the_widest_interval_and_by_nothing_where_none_can() {
    let race = race(&[&[1.0, 2.0], &[2.0, 3.0], &[0.75, 1.75]]);
    assert_eq!(race.at_most_better_than(0), 0.25);
    assert_eq!(race.at_most_better_than(1), 1.25);
    assert_eq!(race.at_most_better_than(2), 0.0);
    let mut wide = self::race(&[&[1.0, 2.0], &[0.0, 3.0]]);
    assert_eq!(wide.at_most_better_than(0), wide.interval.half_width(2));
    wide.left[1] = false;
    assert_eq!(wide.at_most_better_than(0), 0.0);
}

/// Ten runs 1 above the other jobs and the next ten 1 below, so that the mean is the same and the variance 1.
fn now_above_now_below(job: usize, o: &Outcome) -> f64 {
    match (job, o.run / 10 % 2) {
        (0, _) => 0.0,
        (_, 0) => 1.0,
        _ => -1.0,
    }
}

#[test]
fn runs_grow_by_a_quarter_in_tens_up_to_the_most_where_nothing_is_decided() {
    let plans = [plan(), plan()];
    let made = std::sync::atomic::AtomicU32::new(0);
    let count = |runs| {
        made.fetch_add(runs, std::sync::atomic::Ordering::Relaxed);
    };
    let selected = select(&plans, 7, RandomNumbers::Common, &PROMISE, now_above_now_below, count).unwrap();
    // 205 made up to 210; a quarter more is 262, made up to 270; then 337, but 275 made up to 280 is the most.
    assert_eq!(selected.studies.iter().map(Study::runs).collect::<Vec<_>>(), [280, 280]);
    assert_eq!((selected.runs(), made.into_inner()), (560, 560));
    assert_eq!((selected.best, selected.held, &selected.set_aside[..]), (0, false, &[None, None][..]));
    // 28 observations, 14 above and 14 below. One pair, so all of the risk is its own; the first look is at 21 observations.
    let half = AlwaysValid::new(21, 1.0 - PROMISE.confidence).half_width(28);
    assert!(near(selected.within, half), "{} {half}", selected.within);
}

#[test]
fn the_risk_is_shared_by_the_pairs_and_the_first_look_is_enough_where_little_matters() {
    let plans = [plan(), plan(), plan()];
    let promise = Promise { indifference: 5.0, most: 100_000, ..PROMISE };
    let selected = select(&plans, 7, RandomNumbers::Common, &promise, now_above_now_below, |_| {}).unwrap();
    assert_eq!((selected.runs(), selected.held), (630, true));
    // 21 observations: 11 at 1 and 10 at -1, so a mean of 1 / 21 and a variance of 1 - 1 / 441. The others differ by nothing.
    let half = (1.0 - 1.0 / 441.0_f64).sqrt() * AlwaysValid::new(21, 0.1 / 2.0).half_width(21);
    assert!(near(selected.within, half - 1.0 / 21.0), "{} {half}", selected.within);
}

#[test]
fn one_that_is_surely_worse_gets_no_more_runs_and_what_is_surely_best_is_known_at_once() {
    let plans = [plan(), plan(), plan()];
    let figure = |job: usize, o: &Outcome| if job == 2 { 50.0 } else { now_above_now_below(job, o) };
    let selected = select(&plans, 7, RandomNumbers::Common, &PROMISE, figure, |_| {}).unwrap();
    assert_eq!(selected.set_aside, [None, None, Some(210)]);
    assert_eq!(selected.studies.iter().map(Study::runs).collect::<Vec<_>>(), [280, 280, 210]);
    let few = Promise { first: 1, ..PROMISE };
    let selected = select(&plans, 7, RandomNumbers::Common, &few, |job, _| job as f64, |_| {}).unwrap();
    assert_eq!((selected.best, selected.held, selected.within, selected.runs()), (0, true, 0.0, 600));
    assert_eq!(selected.set_aside, [None, Some(200), Some(200)]);
}

#[test]
fn as_much_as_the_indifference_still_keeps_the_promise() {
    // The same difference in every run is known exactly; the one ahead is set apart at once, so two that never differ.
    let plans = [plan(), plan()];
    let none = Promise { indifference: 0.0, ..PROMISE };
    let selected = select(&plans, 7, RandomNumbers::Common, &none, |_, o| f64::from(o.run), |_| {}).unwrap();
    assert_eq!((selected.best, selected.held, selected.within, selected.runs()), (0, true, 0.0, 420));
}

#[test]
fn common_random_numbers_are_those_of_one_seed_and_independent_ones_of_a_seed_for_each_job() {
    let plans = [plan(), plan(), plan()];
    let seeds = |numbers| {
        let selected = select(&plans, 7, numbers, &PROMISE, |_, _| 0.0, |_| {}).unwrap();
        selected.studies.iter().map(|study| study.seed).collect::<Vec<u64>>()
    };
    assert_eq!(seeds(RandomNumbers::Common), [7, 7, 7]);
    let step = 0x9E37_79B9_7F4A_7C15_u64;
    assert_eq!(seeds(RandomNumbers::Independent), [7, step + 7, step.wrapping_mul(2).wrapping_add(7)]);
}
