//! Section 4: a crew that works together is all on each heap.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Rakers of 72 and 36 m3/h in north, on one heap.
fn crew(crowding: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.0;
    job.rakers = vec![raker("a", 0), Raker { rate_m3_per_h: 36.0, ..raker("b", 0) }];
    job.raking.together = Some(crowding);
    job
}

#[test]
fn a_crew_rakes_a_heap_at_the_sum_of_its_rates_times_the_crowding_factor() {
    // 108 m3/h: 33.333333 s. Times 0.8: 41.666667 s.
    expect_of(
        &crew(1.0),
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:00 raker 2 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         0:35 raker 2 raking load 0 at north
         1:08.333333 load 0 raked out at north",
    );
    expect_of(&crew(0.8), &["load "], "1:16.666667 load 0 raked out at north");
}

#[test]
fn a_crew_of_one_is_not_crowded() {
    let mut job = crew(0.5);
    job.rakers.truncate(1);
    expect_of(&job, &["load "], "1:25 load 0 raked out at north");
}

#[test]
fn a_crew_takes_one_heap_at_a_time() {
    let mut job = crew(1.0);
    job.zones[0].need_m3 = 2.0;
    // Each heap takes 45 s and the second lies there at 1:20.
    job.rakers[1].rate_m3_per_h = 8.0;
    job.loaders[0].load_s = 10.0;
    expect_of(
        &job,
        &["raker 2", "load "],
        "0:00 raker 2 waiting for a heap at north
         0:25 raker 2 raking load 0 at north
         1:10 load 0 raked out at north
         1:10 raker 2 raking load 1 at north
         1:55 load 1 raked out at north",
    );
}

#[test]
fn a_crew_walks_at_the_pace_of_its_slowest_from_where_the_first_starts() {
    // From south, where the first stands, 30 m at 0.5 m/s; the second stands at north already.
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 0.0, 0, 20.0)];
    let mut job = with_zones(crew(1.0), zones, 30.0);
    job.rakers[0].start_zone = 1;
    job.rakers[1].walking_m_per_s = 0.5;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at south
         0:00 raker 2 waiting for a heap at south
         0:35 raker 1 walking to north
         0:35 raker 2 walking to north
         1:35 raker 1 raking load 0 at north
         1:35 raker 2 raking load 0 at north
         2:08.333333 load 0 raked out at north",
    );
}

#[test]
fn a_crew_stands_clear_and_goes_on_as_one() {
    // 36 m3/h in all: 100 s a heap. The second dump, 1:15 to 1:20, comes between.
    let mut job = crew(1.0);
    job.zones[0].need_m3 = 2.0;
    job.raking.stand_clear = true;
    job.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h = 18.0);
    let run = expect_of(
        &job,
        &["load "],
        "2:20 load 0 raked out at north
         4:00 load 1 raked out at north",
    );
    assert_eq!(run.accounts.rakers[0], run.accounts.rakers[1]);
    assert_eq!(raker_s(&run, 1, RakerActivity::StandingClear), 5.0);
    assert_eq!(raker_s(&run, 1, RakerActivity::Raking), 200.0);
}
