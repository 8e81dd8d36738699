//! Section 3: nothing can lock up; a run that can make no progress all the same is an error that says so, never a hang.

use super::jobs::*;
use sim::*;

#[test]
fn a_day_that_is_one_long_break_is_an_error() {
    let mut job = one_and_one();
    job.shift.end_s = Some(job.shift.start_s + 60.0);
    job.shift.breaks = vec![pause(&job, 0.0, 60.0)];
    let plan = Plan::new(&job).unwrap();
    let deadlock = Replay::new(&plan, 1, 4).unwrap_err();
    assert_eq!(deadlock.run, 4);
    assert_eq!(
        deadlock.to_string(),
        "run 4 was given up after more than a hundred years of work: a rate, a speed or the hours of a day are far too \
         small for the volume; look at their units"
    );
    // A study tells of the first such run.
    let deadlock = Study::new(&plan, 1, Runs::Exactly(3), |_| {}).unwrap_err();
    assert_eq!(deadlock.run, 0);
}

#[test]
fn loaders_that_meet_in_every_gate_never_lock_up() {
    // Gates in series that all want in both directions, room for one, one slow raker, a face for one.
    let mut job = with_loaders(one_and_one(), 6);
    (job.zones[0].room, job.zones[0].need_m3, job.stockpiles[0].on_hand_m3) = (Some(1), 60.0, 60.0);
    job.passes = vec![gate(); 3];
    job.zones[0].ways[0].passes =
        [0.0, 0.5, 1.0].iter().enumerate().map(|(pass, share)| PassOnWay { pass, share: *share }).collect();
    let run = super::log::only_run(&job);
    // The raker is the slowest by far: 60 heaps, each dumped (5 s) and raked (50 s) before the next has room; the first
    // arrives after 20 + 10 + 3 x 4 s.
    assert_eq!(run.outcome.completion.working, Duration::from_secs(42 + 60 * 55));
}

#[test]
fn a_zone_nobody_can_reach_is_short_and_holds_nothing_up() {
    let zones = vec![zone("north", 2.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 0.0);
    job.passes = vec![Pass { width_m: 0.5, ..gate() }];
    job.zones[1].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    let run = super::log::only_run(&job);
    assert_eq!((run.outcome.loads, run.outcome.short_m3), (2, 1.0));
}
