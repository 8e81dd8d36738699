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
