//! Section 7: relief: the same random numbers with one thing improved, and the minutes saved.

use super::jobs::*;
use sim::*;

fn reliefs(job: &Job, runs: u32) -> (Study, Vec<Relief>) {
    let plan = Plan::new(job).unwrap();
    let study = Study::new(&plan, 5, Runs::Exactly(runs), |_| {}).unwrap();
    let reliefs = relief(job, &plan, &study, 2.0, Tries::exactly(runs), |_| {}).unwrap();
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
    job.loaders[0].lift_kg = Some(250.0);
    job.rakers = vec![raker("a", 0), Raker { rate_m3_per_h: 50.0, ..raker("b", 1) }];

    let mut expected = job.clone();
    expected.rakers.push(job.rakers[1].clone());
    assert_eq!(Improvement::AnotherRaker.of(&job, 2.0), Some(expected));

    let mut expected = job.clone();
    expected.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h *= 1.1);
    assert_eq!(Improvement::FasterRaking.of(&job, 2.0), Some(expected));

    let mut expected = job.clone();
    expected.loaders.iter_mut().for_each(|loader| loader.heaped_m3 *= 1.1);
    assert_eq!(Improvement::LargerBucket.of(&job, 2.0), Some(expected));

    let mut expected = job.clone();
    expected.zones.iter_mut().for_each(|zone| zone.ways[0].distance_m *= 0.9);
    assert_eq!(Improvement::ShorterWays.of(&job, 2.0), Some(expected));

    let mut expected = job.clone();
    expected.loaders.push(job.loaders[1].clone());
    assert_eq!(Improvement::AnotherLoader.of(&job, 2.0), Some(expected));

    let mut expected = job.clone();
    expected.zones[0].room = Some(3);
    assert_eq!(Improvement::MoreRoom.of(&job, 2.0), Some(expected));
}

#[test]
fn where_there_are_as_many_as_there_may_be_another_one_is_not_tried() {
    let mut job = with_loaders(one_and_one(), MOST_LOADERS - 1);
    job.rakers = vec![raker("raker", 0); MOST_RAKERS - 1];
    let full = Improvement::AnotherRaker.of(&Improvement::AnotherLoader.of(&job, 1.0).unwrap(), 1.0).unwrap();
    assert_eq!((full.loaders.len(), full.rakers.len()), (MOST_LOADERS, MOST_RAKERS));
    assert_eq!(Improvement::AnotherLoader.of(&full, 1.0), None);
    assert_eq!(Improvement::AnotherRaker.of(&full, 1.0), None);
}

#[test]
fn what_is_not_there_is_not_improved() {
    let mut job = without_rakers(one_and_one());
    assert_eq!(Improvement::AnotherRaker.of(&job, 2.0), None);
    assert_eq!(Improvement::FasterRaking.of(&job, 2.0), None);
    assert_eq!(Improvement::MoreRoom.of(&job, 2.0), None);
    job.zones[0].room = Some(1);
    assert!(Improvement::MoreRoom.of(&job, 2.0).is_some());
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
fn relief_is_the_mean_of_the_paired_differences_with_the_same_random_numbers() {
    let job = with_lognormal_noise(one_and_one(), 0.2, 0.4);
    let (study, reliefs) = reliefs(&job, 60);
    for improvement in Improvement::ALL {
        let Some(improved) = improvement.of(&job, 2.0) else { continue };
        let better = Study::new(&Plan::new(&improved).unwrap(), 5, Runs::Exactly(60), |_| {}).unwrap();
        let differences: Vec<f64> = study
            .outcomes
            .iter()
            .zip(&better.outcomes)
            .map(|(before, after)| (before.finish.working - after.finish.working).as_secs_f64())
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

/// Half of the material comes an hour after the start; the rest lies there.
fn half_comes_later() -> Job {
    let mut job = one_and_one();
    let pile = &mut job.stockpiles[0];
    pile.on_hand_m3 = 5.0;
    pile.deliveries = vec![Delivery {
        at_s: job.shift.start_s + 3_600.0,
        late_s: Distribution::Constant(0.0),
        volume_m3: 5.0,
    }];
    job
}

#[test]
fn a_later_delivery_is_tried_half_an_hour_earlier_and_there_from_the_start() {
    // All there: 535 s, as above. The second half is moved as it comes, so half an hour earlier is half an hour saved.
    let (study, reliefs) = reliefs(&half_comes_later(), 3);
    let before_s = study.outcomes[0].finish.working.as_secs_f64();
    assert!(before_s > 3_600.0);
    assert!((saved_s(&reliefs, Improvement::EarlierDeliveries) - 1_800.0).abs() < 1e-4);
    assert!((saved_s(&reliefs, Improvement::AllThere) - (before_s - 535.0)).abs() < 1e-4);
    assert!(
        reliefs.iter().all(|relief| relief.improvement != Improvement::AnotherTruckload),
        "nothing is short"
    );
}

#[test]
fn a_delivery_is_not_brought_forward_beyond_midnight_and_an_early_one_is_left_alone() {
    let mut job = half_comes_later();
    job.shift.start_s = 300.0;
    job.stockpiles[0].deliveries[0].at_s = 900.0;
    let earlier = Improvement::EarlierDeliveries.of(&job, 2.0).unwrap();
    assert_eq!(earlier.stockpiles[0].deliveries[0].at_s, 0.0);
    let there = Improvement::AllThere.of(&job, 2.0).unwrap();
    assert_eq!(there.stockpiles[0].deliveries[0].at_s, 300.0);
    assert_eq!(there.stockpiles[0].deliveries[0].volume_m3, 5.0);
    // It comes before the start and keeps its word: nothing to improve.
    job.stockpiles[0].deliveries[0].at_s = 200.0;
    assert_eq!(Improvement::EarlierDeliveries.of(&job, 2.0), None);
    job.stockpiles[0].deliveries.clear();
    assert_eq!(Improvement::AllThere.of(&job, 2.0), None);
}

#[test]
fn one_more_truckload_is_the_last_truck_again_or_the_usual_one_at_the_largest_pile() {
    let mut job = half_comes_later();
    let sooner = Delivery {
        at_s: job.shift.start_s + 60.0,
        volume_m3: 3.0,
        ..job.stockpiles[0].deliveries[0].clone()
    };
    job.stockpiles[0].deliveries.push(sooner);
    let more = Improvement::AnotherTruckload.of(&job, 2.0).unwrap();
    let volumes: Vec<f64> = more.stockpiles[0].deliveries.iter().map(|d| d.volume_m3).collect();
    assert_eq!((volumes, truckload_m3(&job, 2.0)), (vec![10.0, 3.0], 5.0));
    job.stockpiles[0].deliveries.clear();
    let small = Stockpile { name: "small".into(), on_hand_m3: 1.0, ..job.stockpiles[0].clone() };
    job.stockpiles.push(small);
    let more = Improvement::AnotherTruckload.of(&job, 2.0).unwrap();
    let on_hand: Vec<f64> = more.stockpiles.iter().map(|pile| pile.on_hand_m3).collect();
    assert_eq!((on_hand, truckload_m3(&job, 2.0)), (vec![7.0, 1.0], 2.0));
}

#[test]
fn what_one_more_truckload_saves_is_the_chance_of_being_done() {
    // 10 m3 are needed and 8 m3 are there.
    let mut job = one_and_one();
    job.stockpiles[0].on_hand_m3 = 8.0;
    let (_, short) = reliefs(&job, 4);
    assert_eq!(short[0].improvement, Improvement::AnotherTruckload, "it comes first");
    let done = short[0].done.unwrap();
    assert_eq!((done.before.value, done.after.value, done.truckload_m3), (0.0, 1.0, 2.0));
    assert!(short[0].saved_s.value < 0.0, "more to move takes longer");
    assert!(short[1..].iter().all(|relief| relief.done.is_none()));
}

#[test]
fn an_improvement_is_tried_until_its_saving_is_known_as_closely_as_asked() {
    let job = with_lognormal_noise(one_and_one(), 0.2, 0.4);
    let plan = Plan::new(&job).unwrap();
    let study = Study::new(&plan, 5, Runs::Exactly(2_000), |_| {}).unwrap();
    let tried = |tries: Tries| relief(&job, &plan, &study, 2.0, tries, |_| {}).unwrap();
    let tries = Tries { fewest: 50, most: 2_000, least_s: 3.0, share: 0.0, of_chances: 50 };
    let told = tried(tries);
    let half = |r: &Relief| (r.saved_s.high - r.saved_s.low) / 2.0;
    let is_enough = |r: &Relief| half(r) <= 3.0 || r.saved_s.n == 2_000 || r.done.is_some();
    assert!(told.iter().all(is_enough), "{told:?}");
    assert!(told.iter().any(|r| r.saved_s.n == 50) && told.iter().any(|r| r.saved_s.n > 50), "{told:?}");
    // As if so many runs had been asked for at first.
    for relief in &told {
        let all = tried(Tries::exactly(relief.saved_s.n as u32));
        assert!(all.contains(relief), "{relief:?}");
    }
}

#[test]
fn a_truckload_that_is_seldom_needed_does_not_come_before_what_saves_time() {
    // About one run in twenty takes more than the 10.9 m3 that are there for 10 m3.
    let mut job = one_and_one();
    job.chance.days.need = Distribution::Uniform { least: 0.9, greatest: 1.1 };
    job.stockpiles[0].on_hand_m3 = 10.9;
    let (_, reliefs) = reliefs(&job, 400);
    let more = reliefs.iter().position(|r| r.improvement == Improvement::AnotherTruckload).unwrap();
    let done = reliefs[more].done.unwrap();
    assert!(done.before.value > 0.9 && done.before.value < 1.0 && done.after.value == 1.0, "{done:?}");
    assert!(more > 0 && reliefs.is_sorted_by(|a, b| a.saved_s.value >= b.saved_s.value), "{reliefs:?}");
}
