//! Section 7: relief: the same luck with one thing improved, and the minutes saved.

use super::jobs::*;
use sim::*;

fn reliefs(job: &Job, runs: u32) -> (Study, Vec<Relief>) {
    let study = Study::new(&Plan::new(job).unwrap(), 5, Runs::Exactly(runs), |_| {}).unwrap();
    let reliefs = relief(job, &study, runs, |_| {}).unwrap();
    (study, reliefs)
}

fn saved_s(reliefs: &[Relief], improvement: Improvement) -> f64 {
    reliefs.iter().find(|relief| relief.improvement == improvement).unwrap().saved_s.value
}

#[test]
fn each_improvement_changes_one_thing() {
    let mut job = with_loaders(one_and_one(), 2);
    job.zones[0].room = Some(2);
    job.zones.push(Zone { name: "south".into(), room: None, ..job.zones[0].clone() });
    job.zones.iter_mut().for_each(|zone| zone.walks_m = vec![0.0, 0.0]);
    job.loaders[1].heaped_m3 = 0.5;
    job.loaders[0].rated_lift_kg = Some(500.0);
    job.rakers = vec![raker("a", 0), Raker { rate_m3_per_h: 50.0, ..raker("b", 1) }];

    let mut expected = job.clone();
    expected.rakers.push(job.rakers[1].clone());
    assert_eq!(Improvement::AnotherRaker.of(&job), Some(expected));

    let mut expected = job.clone();
    expected.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h *= 1.1);
    assert_eq!(Improvement::FasterRaking.of(&job), Some(expected));

    let mut expected = job.clone();
    expected.loaders.iter_mut().for_each(|loader| loader.heaped_m3 *= 1.1);
    assert_eq!(Improvement::LargerBucket.of(&job), Some(expected));

    let mut expected = job.clone();
    expected.zones.iter_mut().for_each(|zone| zone.ways[0].distance_m *= 0.9);
    assert_eq!(Improvement::ShorterWays.of(&job), Some(expected));

    let mut expected = job.clone();
    expected.loaders.push(job.loaders[1].clone());
    assert_eq!(Improvement::AnotherLoader.of(&job), Some(expected));

    let mut expected = job.clone();
    expected.zones[0].room = Some(3);
    assert_eq!(Improvement::MoreRoom.of(&job), Some(expected));
}

#[test]
fn what_is_not_there_is_not_improved() {
    let mut job = without_rakers(one_and_one());
    assert_eq!(Improvement::AnotherRaker.of(&job), None);
    assert_eq!(Improvement::FasterRaking.of(&job), None);
    assert_eq!(Improvement::MoreRoom.of(&job), None);
    job.zones[0].room = Some(1);
    assert!(Improvement::MoreRoom.of(&job).is_some());
}

#[test]
fn the_minutes_saved_are_those_of_hand_arithmetic_where_all_is_constant() {
    // The raker's 10 x 50 s after the first 35 s set the pace: 535 s. A tenth faster: 35 + 500 / 1.1. Ways a tenth
    // shorter: the first heap lies 1 s sooner. Another raker: two rakers with 50 s each keep up with a loader that comes
    // every 45 s: the tenth heap at 440 s is raked by 490 s. Another loader brings the first heap no sooner.
    let (_, reliefs) = reliefs(&one_and_one(), 3);
    let near = |improvement, expected: f64| {
        let saved = saved_s(&reliefs, improvement);
        assert!((saved - expected).abs() < 1e-4, "{improvement:?} saves {saved}, not {expected}");
    };
    near(Improvement::FasterRaking, 500.0 - 500.0 / 1.1);
    near(Improvement::ShorterWays, 1.0);
    near(Improvement::AnotherRaker, 45.0);
    near(Improvement::AnotherLoader, 0.0);
    // 9 loads of 1.1 m3 and one of 0.1 m3 are as much to rake.
    near(Improvement::LargerBucket, 0.0);
    assert!(reliefs.iter().all(|relief| relief.improvement != Improvement::MoreRoom));
    assert!(reliefs.is_sorted_by(|a, b| a.saved_s.value >= b.saved_s.value), "most minutes first");
    assert!(reliefs.iter().all(|relief| relief.saved_s.high - relief.saved_s.low < 1e-9));
}

#[test]
fn relief_is_the_mean_of_the_paired_differences_with_the_same_luck() {
    let job = with_lognormal_noise(one_and_one(), 0.2, 0.4);
    let (study, reliefs) = reliefs(&job, 60);
    for improvement in Improvement::ALL {
        let Some(improved) = improvement.of(&job) else { continue };
        let better = Study::new(&Plan::new(&improved).unwrap(), 5, Runs::Exactly(60), |_| {}).unwrap();
        let differences: Vec<f64> = study
            .outcomes
            .iter()
            .zip(&better.outcomes)
            .map(|(before, after)| (before.finish.working - after.finish.working) as f64 / 1e6)
            .collect();
        let told = reliefs.iter().find(|relief| relief.improvement == improvement).unwrap();
        let expected = mean(&differences);
        assert!((told.saved_s.value - expected.value).abs() < 1e-9);
        assert!((told.saved_s.low - expected.low).abs() < 1e-9);
        assert!((told.saved_s.high - expected.high).abs() < 1e-9);
    }
}

#[test]
fn the_interval_of_a_paired_difference_is_students() {
    // 1, 2, 3, 4: mean 2.5, sd 1.290994, t(3) at 97.5 % = 3.182446: half-width 2.054260.
    let told = mean(&[1.0, 2.0, 3.0, 4.0]);
    assert!((told.value - 2.5).abs() < 1e-12);
    assert!((told.high - told.value - 2.054_260).abs() < 1e-5);
    assert!((told.value - told.low - 2.054_260).abs() < 1e-5);
}
