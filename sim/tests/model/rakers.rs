//! Section 4: who rakes which heap, and how long it takes.

use super::jobs::*;
use super::log::*;
use sim::*;

#[test]
fn heaps_are_raked_in_the_order_they_were_dumped() {
    // Load 0 is dumped from 0:30 to 1:10, load 1 from 0:30 to 0:35: load 1 lies there first.
    let mut job = with_loaders(one_and_one(), 2);
    job.zones[0].need_m3 = 2.0;
    job.stockpiles[0].face = 2;
    job.loaders[0].dump_s = 40.0;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 1 at north
         1:25 load 1 raked out at north
         1:25 raker 1 raking load 0 at north
         2:15 load 0 raked out at north",
    );
}

#[test]
fn one_raker_works_one_heap_and_the_lower_number_takes_the_first() {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 3.0;
    job.rakers = vec![raker("a", 0), raker("b", 0)];
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:00 raker 2 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:20 raker 2 raking load 1 at north
         1:25 raker 1 waiting for a heap at north
         1:25 load 0 raked out at north
         2:05 raker 1 raking load 2 at north
         2:10 raker 2 waiting for a heap at north
         2:10 load 1 raked out at north
         2:55 load 2 raked out at north",
    );
}

#[test]
fn each_raker_works_at_their_own_rate() {
    // 1 m3 at 36 m3/h takes 100 s, at 72 m3/h 50 s.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 2.0;
    job.rakers = vec![Raker { rate_m3_per_h: 36.0, ..raker("a", 0) }, raker("b", 0)];
    expect_of(
        &job,
        &["load "],
        "2:10 load 1 raked out at north
         2:15 load 0 raked out at north",
    );
}

#[test]
fn the_raking_time_is_in_proportion_to_the_volume() {
    // 0.3 m3 x 50 s/m3 = 15 s.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 0.3;
    expect_of(&job, &["load "], "0:50 load 0 raked out at north");
}

#[test]
fn without_rakers_a_job_is_refused_unless_the_loader_spreads_everything() {
    let mut job = one_and_one();
    job.rakers.clear();
    assert!(Plan::new(&job).is_err());
    job.raking.spread_share = 0.99;
    assert!(Plan::new(&job).is_err());
    job.raking.spread_share = 1.0;
    assert!(Plan::new(&job).is_ok());
}

#[test]
fn without_rakers_a_heap_is_raked_out_when_its_dump_ends_and_gives_its_place_back() {
    let mut job = with_loaders(without_rakers(one_and_one()), 2);
    job.zones[0].need_m3 = 2.0;
    job.zones[0].room = Some(1);
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["load "],
        "0:35 load 0 raked out at north
         0:40 load 1 raked out at north",
    );
}
