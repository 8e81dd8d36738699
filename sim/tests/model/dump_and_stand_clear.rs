//! Section 3.6: no heap of a zone is raked while any loader dumps there; each goes on with the time it had left.

use super::jobs::*;
use super::log::*;
use sim::*;

fn standing_clear(loads: f64) -> Job {
    let mut job = one_and_one();
    job.raking.stand_clear = true;
    job.zones[0].need_m3 = loads;
    job
}

#[test]
fn a_raker_stands_clear_of_a_dump_and_goes_on_with_the_time_left() {
    // 40 of 50 s are raked by 1:15; the other 10 s after the dump of 5 s.
    expect_of(
        &standing_clear(2.0),
        &["raker", "load ", "loader 1 d"],
        "0:00 raker 1 waiting for a heap at north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         1:15 raker 1 standing clear load 0 at north
         1:15 loader 1 dumping load 1 at north
         1:20 raker 1 raking load 0 at north
         1:30 load 0 raked out at north
         1:30 raker 1 raking load 1 at north
         1:30 loader 1 done
         2:20 load 1 raked out at north",
    );
}

#[test]
fn without_stand_clear_a_raker_goes_on_beside_the_bucket() {
    let mut job = standing_clear(2.0);
    job.raking.stand_clear = false;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:25 load 0 raked out at north
         1:25 raker 1 raking load 1 at north
         2:15 load 1 raked out at north",
    );
}

#[test]
fn a_raker_may_take_a_heap_while_a_loader_dumps_and_stands_by() {
    // Two loaders at a face for two; loader 2 dumps from 0:30 to 1:00, the heap of loader 1 lies there at 0:35.
    let mut job = with_loaders(standing_clear(2.0), 2);
    job.stockpiles[0].face = 2;
    job.loaders[1].dump_s = 30.0;
    expect_of(
        &job,
        &["raker", "load ", "loader 1 du", "loader 2 du"],
        "0:00 raker 1 waiting for a heap at north
         0:30 loader 1 dumping load 0 at north
         0:30 loader 2 dumping load 1 at north
         0:35 raker 1 standing clear load 0 at north
         1:00 raker 1 raking load 0 at north
         1:50 load 0 raked out at north
         1:50 raker 1 raking load 1 at north
         2:40 load 1 raked out at north",
    );
}

#[test]
fn with_two_loaders_dumping_the_rakers_wait_for_the_last() {
    // Loader 1 dumps its second load 1:15 to 1:20, loader 2 its first 1:18 to 1:38.
    let mut job = with_loaders(standing_clear(3.0), 2);
    job.stockpiles[0].face = 2;
    (job.loaders[1].load_s, job.loaders[1].dump_s) = (68.0, 20.0);
    expect_of(
        &job,
        &["raker", "load ", "loader 1 du", "loader 2 du"],
        "0:00 raker 1 waiting for a heap at north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         1:15 raker 1 standing clear load 0 at north
         1:15 loader 1 dumping load 2 at north
         1:18 loader 2 dumping load 1 at north
         1:38 raker 1 raking load 0 at north
         1:48 load 0 raked out at north
         1:48 raker 1 raking load 2 at north
         2:38 load 2 raked out at north
         2:38 raker 1 raking load 1 at north
         3:28 load 1 raked out at north",
    );
}

#[test]
fn two_rakers_each_go_on_with_the_time_they_had_left() {
    // Heaps lie at 0:35 and 1:20 and are raked in 100 s each. At the third dump, 2:00, the first raker has 15 + 5 s
    // left (5 s were lost to the second dump), the second 60 s.
    let mut job = standing_clear(3.0);
    job.rakers = vec![raker("a", 0), raker("b", 0)];
    job.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h = 36.0);
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:00 raker 2 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:15 raker 1 standing clear load 0 at north
         1:20 raker 1 raking load 0 at north
         1:20 raker 2 raking load 1 at north
         2:00 raker 1 standing clear load 0 at north
         2:00 raker 2 standing clear load 1 at north
         2:05 raker 1 raking load 0 at north
         2:05 raker 2 raking load 1 at north
         2:25 load 0 raked out at north
         2:25 raker 1 raking load 2 at north
         3:05 raker 2 waiting for a heap at north
         3:05 load 1 raked out at north
         4:05 load 2 raked out at north",
    );
}

#[test]
fn a_dump_in_another_zone_disturbs_nobody() {
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_zones(standing_clear(1.0), zones, 0.0);
    job.rakers = vec![raker("a", 0), raker("b", 1)];
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:00 raker 2 waiting for a heap at south
         0:35 raker 1 raking load 0 at north
         1:20 raker 2 raking load 1 at south
         1:25 raker 1 waiting for a heap at north
         1:25 load 0 raked out at north
         2:10 load 1 raked out at south",
    );
}

#[test]
fn a_heap_that_is_finished_at_the_instant_a_dump_starts_is_finished() {
    // Raking in 40 s: over at 1:15, when the second dump starts. What ends ends first.
    let mut job = standing_clear(2.0);
    job.rakers[0].rate_m3_per_h = 90.0;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:15 raker 1 waiting for a heap at north
         1:15 load 0 raked out at north
         1:20 raker 1 raking load 1 at north
         2:00 load 1 raked out at north",
    );
}

#[test]
fn a_raker_freed_as_a_dump_starts_takes_the_next_heap_first_and_stands_by() {
    // Two heaps of loaders 1 and 2 lie at 0:35; the first is raked out at 1:15, just when loader 1 is back to dump its
    // second load. Rakers start before loaders: the second heap is begun and put down at once.
    let mut job = with_loaders(standing_clear(3.0), 2);
    job.stockpiles[0].face = 2;
    job.rakers[0].rate_m3_per_h = 90.0;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:15 load 0 raked out at north
         1:15 raker 1 raking load 1 at north
         1:15 raker 1 standing clear load 1 at north
         1:20 raker 1 raking load 1 at north
         2:00 load 1 raked out at north
         2:00 raker 1 raking load 2 at north
         2:40 load 2 raked out at north",
    );
}
