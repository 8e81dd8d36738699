//! Sections 3.6 and 4: the loader may spread a share of each load itself.

use super::jobs::*;
use super::log::*;
use sim::*;

#[test]
fn the_loader_spreads_its_share_while_dumping_and_the_raker_the_rest() {
    // 0.4 x 1 m3 x 30 s/m3 = 12 s longer dumps; raking 0.6 x 50 = 30 s.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.5;
    job.raking.spread_share = 0.4;
    job.loaders[0].spread_s_per_m3 = 30.0;
    expect_of(
        &job,
        &["loader 1 du", "raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:30 loader 1 dumping load 0 at north
         0:47 raker 1 raking load 0 at north
         1:17 raker 1 waiting for a heap at north
         1:17 load 0 raked out at north
         1:27 loader 1 dumping load 1 at north
         1:38 raker 1 raking load 1 at north
         1:53 load 1 raked out at north",
    );
}

#[test]
fn without_a_share_the_time_to_spread_counts_for_nothing() {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.0;
    job.loaders[0].spread_s_per_m3 = 30.0;
    expect_of(&job, &["load "], "1:25 load 0 raked out at north");
}

#[test]
fn a_loader_that_spreads_everything_needs_nobody() {
    // 5 + 30 s of dump, and the zone is done.
    let mut job = without_rakers(one_and_one());
    job.zones[0].need_m3 = 1.0;
    job.loaders[0].spread_s_per_m3 = 30.0;
    expect_of(&job, &["load "], "1:05 load 0 raked out at north");
}

#[test]
fn with_stand_clear_the_spreading_counts_as_dumping() {
    // The second dump lasts from 1:27 to 1:44 and interrupts the raking that began at 0:47 (30 s: over at 1:17)... so
    // the raker is slowed to 60 s a heap: over at 1:47, or 2:04 with 17 s of standing clear.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 2.0;
    job.raking.spread_share = 0.4;
    job.raking.stand_clear = true;
    job.loaders[0].spread_s_per_m3 = 30.0;
    job.rakers[0].rate_m3_per_h = 36.0;
    let run = expect_of(
        &job,
        &["load "],
        "2:04 load 0 raked out at north
         3:04 load 1 raked out at north",
    );
    assert_eq!(raker_s(&run, 0, RakerActivity::StandingClear), 17.0);
}

/// Two zones 30 m apart on foot, two loads each; the loader spreads everything, and there is a raker all the same.
fn all_spread_with_a_raker() -> Job {
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 30.0);
    job.raking.spread_share = 1.0;
    job
}

#[test]
fn nobody_walks_to_a_heap_that_is_spread_already() {
    let job = all_spread_with_a_raker();
    let run = expect(
        &job,
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for south
         1:05 loader 1 hauling load 1 to south
         1:15 loader 1 dumping load 1 at south
         1:20 load 1 raked out at south",
    );
    assert_eq!(raker_s(&run, 0, RakerActivity::Waiting), 80.0);
    // Rakers or none: the same run.
    let without = only_run(&Job { rakers: vec![], ..job });
    assert_eq!(run.outcome.completion, without.outcome.completion);
}

#[test]
fn a_heap_that_is_spread_already_is_raked_out_in_a_break_too() {
    // The break is 1:10 to 5:00: the cycle in hand goes on, and with its dump the work is over; nobody has to come back.
    let mut job = all_spread_with_a_raker();
    job.shift.breaks = vec![pause(&job, 70.0, 300.0)];
    expect_of(
        &job,
        &["loader", "raker", "load ", "work"],
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for south
         1:05 loader 1 hauling load 1 to south
         1:10 work pauses
         1:10 raker 1 break at north
         1:15 loader 1 dumping load 1 at south
         1:20 load 1 raked out at south",
    );
}
