//! Section 3.5: a zone holds so many heaps, first come first served.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Base job with room for so many heaps.
fn with_room(room: u32, loads: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].room = Some(room);
    job.zones[0].need_m3 = loads;
    job
}

#[test]
fn a_full_zone_holds_the_loader_until_a_heap_is_raked_out() {
    expect(
        &with_room(1, 2.0),
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 waiting for room load 1 at north
         1:25 raker 1 waiting for a heap at north
         1:25 load 0 raked out at north
         1:25 loader 1 dumping load 1 at north
         1:30 raker 1 raking load 1 at north
         1:30 loader 1 returning to pile
         1:40 loader 1 done
         2:20 load 1 raked out at north",
    );
}

#[test]
fn heaps_lying_raked_and_being_dumped_all_take_their_place() {
    // Room for two: at 1:15 one heap is raked, so the second may be dumped; at 2:00 the first has gone and the second
    // is raked (from 1:25); at 2:45 the second has gone at 2:15. The raker is the slower: with 200 s a heap, the third
    // load finds one heap raked and one waiting at 2:00, and waits until 3:55.
    let mut job = with_room(2, 4.0);
    assert_eq!(loader_s(&only_run(&job), 0, LoaderActivity::WaitingForRoom), 0.0);
    job.rakers[0].rate_m3_per_h = 18.0;
    expect_of(
        &job,
        &["loader 1 d", "loader 1 w", "load "],
        "0:30 loader 1 dumping load 0 at north
         1:15 loader 1 dumping load 1 at north
         2:00 loader 1 waiting for room load 2 at north
         3:55 load 0 raked out at north
         3:55 loader 1 dumping load 2 at north
         4:40 loader 1 waiting for room load 3 at north
         7:15 load 1 raked out at north
         7:15 loader 1 dumping load 3 at north
         7:30 loader 1 done
         10:35 load 2 raked out at north
         13:55 load 3 raked out at north",
    );
}

#[test]
fn a_heap_takes_its_place_when_dumping_starts_not_when_it_ends() {
    // Room for one, two loaders; dumping takes 60 s. Loader 2 is there at 0:50, when no heap lies yet but one is being
    // dumped.
    let mut job = with_loaders(with_room(1, 2.0), 2);
    job.loaders.iter_mut().for_each(|loader| loader.dump_s = 60.0);
    expect_of(
        &job,
        &["loader 2", "load "],
        "0:00 loader 2 waiting for the face of pile for north
         0:20 loader 2 loading load 1 at pile for north
         0:40 loader 2 hauling load 1 to north
         0:50 loader 2 waiting for room load 1 at north
         2:20 load 0 raked out at north
         2:20 loader 2 dumping load 1 at north
         3:20 loader 2 returning to pile
         3:30 loader 2 done
         4:10 load 1 raked out at north",
    );
}

#[test]
fn loaders_are_given_room_in_the_order_they_came() {
    // Loader 3 has a faster loaded drive and comes first of the two that wait.
    let mut job = with_loaders(with_room(1, 3.0), 3);
    job.stockpiles[0].face = 3;
    job.loaders[0].load_s = 5.0;
    job.loaders[2].loaded_m_per_s = 4.0;
    expect_of(
        &job,
        &["loader 2 w", "loader 3 w", "loader 1 d", "loader 2 d", "loader 3 d"],
        "0:15 loader 1 dumping load 0 at north
         0:25 loader 3 waiting for room load 2 at north
         0:30 loader 1 done
         0:30 loader 2 waiting for room load 1 at north
         1:10 loader 3 dumping load 2 at north
         1:25 loader 3 done
         2:05 loader 2 dumping load 1 at north
         2:20 loader 2 done",
    );
}

#[test]
fn without_a_limit_of_room_nobody_waits_for_it() {
    let mut job = with_loaders(one_and_one(), 3);
    job.rakers[0].rate_m3_per_h = 1.0;
    let run = only_run(&job);
    for loader in 0..3 {
        assert_eq!(loader_s(&run, loader, LoaderActivity::WaitingForRoom), 0.0);
    }
}

#[test]
fn room_in_one_zone_is_no_room_in_another() {
    // As listed and with room for one each, a slow raker in north: loads go north, south, then wait at north.
    let zones =
        [zone("north", 2.0, 0, 20.0), zone("south", 1.0, 0, 20.0)].map(|zone| Zone { room: Some(1), ..zone });
    let mut job = with_zones(one_and_one(), zones.into(), 30.0);
    job.rakers[0].rate_m3_per_h = 12.0;
    expect_of(
        &job,
        &["loader 1 w", "loader 1 du"],
        "0:30 loader 1 dumping load 0 at north
         1:15 loader 1 dumping load 1 at south
         2:00 loader 1 waiting for room load 2 at north
         5:35 loader 1 dumping load 2 at north",
    );
}
