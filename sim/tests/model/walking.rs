//! Section 4: rakers walk to where the oldest waiting heap lies.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Two zones at the same distance from the pile and 30 s apart on foot; the loads go north and south in turn.
fn north_and_south(loads_each: f64, rakers: Vec<Raker>) -> Job {
    let zones = vec![zone("north", loads_each, 0, 20.0), zone("south", loads_each, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 30.0);
    job.fill_order = FillOrder::InTurn;
    job.rakers = rakers;
    job
}

#[test]
fn a_raker_walks_to_the_oldest_heap_when_there_is_none_in_their_zone() {
    // Heaps lie at 0:35 (north), 1:20 (south), 2:05 (north), 2:50 (south).
    expect_of(
        &north_and_south(2.0, vec![raker("a", 0)]),
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:25 load 0 raked out at north
         1:25 raker 1 walking to south
         1:55 raker 1 raking load 1 at south
         2:45 load 1 raked out at south
         2:45 raker 1 walking to north
         3:15 raker 1 raking load 2 at north
         4:05 load 2 raked out at north
         4:05 raker 1 walking to south
         4:35 raker 1 raking load 3 at south
         5:25 load 3 raked out at south",
    );
}

#[test]
fn a_raker_takes_the_heaps_of_their_own_zone_before_an_older_one_elsewhere() {
    // 72 s a heap: at 1:47 a heap lies at south since 1:20, so the raker walks there (2:17) and rakes till 3:29. By then
    // one lies at north (2:05) and one at south (2:50): the raker stays.
    let mut job = north_and_south(2.0, vec![raker("a", 0)]);
    job.rakers[0].rate_m3_per_h = 50.0;
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:47 raker 1 walking to south
         2:17 raker 1 raking load 1 at south
         3:29 raker 1 raking load 3 at south
         4:41 raker 1 walking to north
         5:11 raker 1 raking load 2 at north",
    );
}

#[test]
fn a_raker_stays_where_they_last_worked() {
    // South has one load only and comes second; the third and last heap lies at north at 2:05.
    let mut job = north_and_south(2.0, vec![raker("a", 0)]);
    job.zones[1].need_m3 = 1.0;
    job.rakers[0].rate_m3_per_h = 3_600.0;
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         0:36 raker 1 waiting for a heap at north
         1:20 raker 1 walking to south
         1:50 raker 1 raking load 1 at south
         1:51 raker 1 waiting for a heap at south
         2:05 raker 1 walking to north
         2:35 raker 1 raking load 2 at north",
    );
}

#[test]
fn a_raker_starts_the_day_in_their_own_zone() {
    expect_of(
        &north_and_south(1.0, vec![raker("a", 1)]),
        &["raker"],
        "0:00 raker 1 waiting for a heap at south
         0:35 raker 1 walking to north
         1:05 raker 1 raking load 0 at north
         1:55 raker 1 walking to south
         2:25 raker 1 raking load 1 at south",
    );
}

#[test]
fn nobody_sets_out_for_a_heap_to_which_somebody_is_walking() {
    // Both stand in south. For the heap at north (0:35) raker 1 sets out; raker 2 stays for the heap of 1:20.
    expect_of(
        &north_and_south(1.0, vec![raker("a", 1), raker("b", 1)]),
        &["raker"],
        "0:00 raker 1 waiting for a heap at south
         0:00 raker 2 waiting for a heap at south
         0:35 raker 1 walking to north
         1:05 raker 1 raking load 0 at north
         1:20 raker 2 raking load 1 at south
         1:55 raker 1 waiting for a heap at north",
    );
}

#[test]
fn a_second_heap_in_a_zone_calls_a_second_raker() {
    // Two heaps at north at 0:35, both rakers in south: both walk.
    let mut job = with_loaders(north_and_south(2.0, vec![raker("a", 1), raker("b", 1)]), 2);
    job.zones[1].need_m3 = 0.0;
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at south
         0:00 raker 2 waiting for a heap at south
         0:35 raker 1 walking to north
         0:35 raker 2 walking to north
         1:05 raker 1 raking load 0 at north
         1:05 raker 2 raking load 1 at north",
    );
}

#[test]
fn a_raker_who_need_not_walk_chooses_before_one_who_must() {
    // Raker 1 stands in south, raker 2 in north, where the heap lies at 0:35.
    let job = north_and_south(1.0, vec![raker("a", 1), raker("b", 0)]);
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at south
         0:00 raker 2 waiting for a heap at north
         0:35 raker 2 raking load 0 at north
         1:20 raker 1 raking load 1 at south
         1:25 raker 2 waiting for a heap at north",
    );
}

#[test]
fn a_raker_finishes_the_walk_and_looks_again_when_the_heap_was_taken_meanwhile() {
    // Raker 2 rakes load 0 in north from 0:35 to 1:25. Loader 2's heap lies at north at 0:40: raker 1 sets out for it
    // from south, 60 s away, and while they walk raker 2 takes it at 1:25. Raker 1 arrives at 1:40 and finds none.
    let mut job = with_loaders(north_and_south(2.0, vec![raker("a", 1), raker("b", 0)]), 2);
    job.zones[1].need_m3 = 0.0;
    job.stockpiles[0].face = 2;
    job.loaders[1].dump_s = 10.0;
    job.rakers[0].walking_m_per_s = 0.5;
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at south
         0:00 raker 2 waiting for a heap at north
         0:35 raker 2 raking load 0 at north
         0:40 raker 1 walking to north
         1:25 raker 2 raking load 1 at north
         1:40 raker 1 waiting for a heap at north",
    );
}

#[test]
fn where_no_distance_is_given_the_walk_takes_no_time() {
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let job = with_zones(one_and_one(), zones, 0.0);
    expect_of(&job, &["load "], "1:25 load 0 raked out at north\n2:15 load 1 raked out at south");
}

#[test]
fn of_heaps_in_other_zones_the_oldest_calls_first_whatever_the_number_of_its_zone() {
    // Heaps lie at middle at 0:40, at south at 1:32.5 and at north at 2:20; the first takes 100 s to rake. When
    // the raker looks up at 2:20, south's is the older though north is listed first.
    let zones = ["north", "middle", "south"].map(|name| zone(name, 1.0, 0, 20.0));
    let mut job = with_zones(one_and_one(), zones.into(), 30.0);
    job.rakers = vec![Raker { rate_m3_per_h: 36.0, ..raker("a", 1) }];
    // Farthest first: middle 30 m, south 25 m, north 20 m.
    job.fill_order = FillOrder::FarthestFirst;
    (job.zones[1].ways[0].distance_m, job.zones[2].ways[0].distance_m) = (30.0, 25.0);
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at middle
         0:40 raker 1 raking load 0 at middle
         2:20 raker 1 walking to south
         2:50 raker 1 raking load 1 at south
         4:30 raker 1 walking to north
         5:00 raker 1 raking load 2 at north",
    );
}
