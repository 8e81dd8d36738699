//! Sections 1 and 9: a need as stated is served and a pile used, however small. Less than a twentieth of the smallest bucket
//! counts as nothing only of what remains of them.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Nobody rakes; every cycle is 20 + 10 + 5 + 10 s with a bucket of 1 m3, so that less than 0.05 m3 is crumbs.
fn zones_of(needs_m3: &[f64], stock_m3: f64) -> Job {
    let names = ["north", "south", "east"];
    let zones = needs_m3.iter().enumerate().map(|(i, need)| zone(names[i % 3], *need, 0, 20.0));
    let mut job = with_zones(without_rakers(one_and_one()), zones.collect(), 0.0);
    job.stockpiles[0].on_hand_m3 = stock_m3;
    job
}

/// The only outcome of a study, which may be made a shorter way: the same as the replay's.
#[track_caller]
fn same_in_a_study(job: &Job) -> Outcome {
    let study = Study::new(&Plan::new(job).unwrap(), 1, Runs::Exactly(1), |_| {}).unwrap();
    assert_eq!(study.outcomes[0], only_run(job).outcome);
    study.outcomes[0].clone()
}

/// Volumes loaded, and what is short in the end, by the log, by a study alike.
#[track_caller]
fn loads(job: &Job) -> (Vec<f64>, f64) {
    let outcome = same_in_a_study(job);
    (volumes(&only_run(job)), (outcome.short_m3 * 1e9).round() / 1e9)
}

#[test]
fn two_hundred_pits_of_twenty_litres_take_two_hundred_loads() {
    let job = zones_of(&[0.02; 200], 4.0);
    let outcome = same_in_a_study(&job);
    assert_eq!((outcome.loads, outcome.short_m3, outcome.ends_short), (200, 0.0, false));
    // The way back of the last load is not waited for.
    assert_eq!(outcome.completion.working, Duration::from_secs(200 * 45 - 10));
    assert!((outcome.placed_m3 - 4.0).abs() < 1e-9);
}

#[test]
fn a_bigger_bucket_does_not_make_small_zones_vanish() {
    let with_bucket = |heaped_m3| {
        let mut job = zones_of(&[0.02; 200], 5.0);
        job.loaders[0].heaped_m3 = heaped_m3;
        same_in_a_study(&job)
    };
    assert_eq!(with_bucket(0.4), with_bucket(0.5));
}

#[test]
fn one_small_zone_is_served() {
    let job = zones_of(&[0.001], 3.0);
    assert_eq!(loads(&job), (vec![0.001], 0.0));
    assert_eq!(same_in_a_study(&job).completion.working, Duration::from_secs(35));
}

#[test]
fn a_zone_that_needs_nothing_gets_nothing() {
    assert_eq!(loads(&zones_of(&[0.0, 0.02, 0.0], 1.0)), (vec![0.02], 0.0));
}

#[test]
fn small_zones_are_served_in_a_yard_too() {
    // Two loaders, two rakers, times that are drawn: many runs, and not one pit is left out.
    let mut job = with_loaders(zones_of(&[0.02, 1.5, 0.03], 9.0), 2);
    job.rakers = vec![raker("raker 1", 0), raker("raker 2", 1)];
    job.raking.spread_share = 0.0;
    let job = with_lognormal_noise(job, 0.1, 0.3);
    let plan = Plan::new(&job).unwrap();
    let study = Study::new(&plan, 1, Runs::Exactly(50), |_| {}).unwrap();
    for (run, outcome) in study.outcomes.iter().enumerate() {
        let replay = Replay::new(&plan, 1, run as u32).unwrap();
        assert_eq!(replay.outcome, *outcome);
        let loads: Vec<u64> = replay.accounts.zones.iter().map(|zone| zone.loads).collect();
        assert!(loads[0] == 1 && loads[1] >= 1 && loads[2] == 1, "run {run}: {loads:?}");
    }
}

#[test]
fn what_remains_of_a_need_below_a_twentieth_of_the_bucket_is_left() {
    assert_eq!(loads(&zones_of(&[1.0499], 3.0)), (vec![1.0], 0.0));
    assert_eq!(loads(&zones_of(&[1.0501], 3.0)), (vec![1.0, 0.0501], 0.0));
}

#[test]
fn a_pile_is_used_however_small() {
    assert_eq!(loads(&zones_of(&[2.0], 0.03)), (vec![0.03], 1.97));
    // Nothing is no pile.
    assert_eq!(loads(&zones_of(&[2.0], 0.0)), (vec![], 2.0));
}

#[test]
fn what_remains_of_a_pile_below_a_twentieth_of_the_bucket_is_left() {
    assert_eq!(loads(&zones_of(&[2.0], 1.0499)), (vec![1.0], 1.0));
    assert_eq!(loads(&zones_of(&[2.0], 1.0501)), (vec![1.0, 0.0501], 0.9499));
}

#[test]
fn what_remains_of_a_pile_is_no_crumb_to_a_zone_that_needs_no_more_than_that() {
    assert_eq!(loads(&zones_of(&[1.0, 0.02], 1.03)), (vec![1.0, 0.02], 0.0));
    assert_eq!(loads(&zones_of(&[1.0, 0.02], 1.02)), (vec![1.0, 0.02], 0.0));
    // But to one that needs more it is: nothing is brought there, and all it needs is short.
    assert_eq!(loads(&zones_of(&[1.0, 0.02], 1.015)), (vec![1.0], 0.02));
    assert_eq!(loads(&zones_of(&[0.02, 0.02], 0.03)), (vec![0.02], 0.02));
}

#[test]
fn a_small_zone_that_gets_nothing_is_short_and_one_that_gets_most_of_it_is_not() {
    let nothing = same_in_a_study(&zones_of(&[1.0, 0.02], 1.0));
    assert!(nothing.ends_short && (nothing.short_m3 - 0.02).abs() < 1e-9);
    let some = same_in_a_study(&zones_of(&[0.04], 0.03));
    assert_eq!((some.loads, some.short_m3, some.ends_short), (1, 0.0, false));
}

#[test]
fn a_delivery_is_used_however_small_and_with_it_what_remained() {
    // 1.04 m3 lie there, 0.04 of them remain; at 5:00 come 0.005 m3.
    let mut job = zones_of(&[2.0], 1.04);
    let late_s = Distribution::Constant(0.0);
    let at_s = job.shift.start_s + 300.0;
    job.stockpiles[0].deliveries = vec![Delivery { at_s, late_s, volume_m3: 0.005 }];
    let run = expect_of(
        &job,
        &["loader", "delivered"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 waiting for a delivery
         5:00 delivered 0.01 m3 to pile
         5:00 loader 1 returning to pile
         5:10 loader 1 loading load 1 at pile for north
         5:30 loader 1 hauling load 1 to north
         5:40 loader 1 dumping load 1 at north",
    );
    assert_eq!(volumes(&run), [1.0, 0.045]);
}

#[test]
fn a_loader_that_finds_a_small_zone_served_at_its_turn_is_done() {
    // Both stand in the line for the little that south needs.
    let job = with_loaders(zones_of(&[1.0, 0.02], 3.0), 3);
    expect_of(
        &job,
        &["loader 2", "loader 3"],
        "0:00 loader 2 waiting for the face of pile for south
         0:00 loader 3 waiting for the face of pile for south
         0:20 loader 2 loading load 1 at pile for south
         0:40 loader 3 done
         0:40 loader 2 hauling load 1 to south
         0:50 loader 2 dumping load 1 at south",
    );
}

#[test]
fn the_smallest_bucket_decides_what_crumbs_are() {
    // Loader 2's bucket of 0.4 m3: what remains counts from 0.02 m3 on.
    let mut job = with_loaders(zones_of(&[1.03], 3.0), 2);
    job.loaders[1] = Loader { heaped_m3: 0.4, width_m: 3.0, ..job.loaders[1].clone() };
    job.passes = vec![gate()];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    assert_eq!(job.negligible_m3(), 0.4 * 0.05);
    assert_eq!(volumes(&only_run(&job)), [1.0, 0.03]);
}
