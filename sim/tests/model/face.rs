//! Section 3.2: loaders queue for the face of a pile, first come first served.

use super::jobs::*;
use super::log::*;
use sim::*;

#[test]
fn a_loader_waits_while_another_loads_at_a_face_for_one() {
    let mut job = with_loaders(without_rakers(one_and_one()), 2);
    job.zones[0].need_m3 = 3.0;
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 waiting for the face of pile for north
         0:20 loader 2 loading load 1 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to pile
         0:40 loader 2 hauling load 1 to north
         0:45 loader 1 loading load 2 at pile for north
         0:50 loader 2 dumping load 1 at north
         0:55 loader 2 returning to pile
         1:05 loader 1 hauling load 2 to north
         1:05 loader 2 done
         1:15 loader 1 dumping load 2 at north",
    );
}

#[test]
fn a_face_for_two_lets_two_load_at_once_and_the_third_waits() {
    let mut job = with_loaders(without_rakers(one_and_one()), 3);
    job.zones[0].need_m3 = 3.0;
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:20 loader 3 loading load 2 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:20 loader 2 hauling load 1 to north
         0:30 loader 1 dumping load 0 at north
         0:30 loader 2 dumping load 1 at north
         0:35 loader 1 returning to pile
         0:35 loader 2 returning to pile
         0:40 loader 3 hauling load 2 to north
         0:45 loader 1 done
         0:45 loader 2 done
         0:50 loader 3 dumping load 2 at north",
    );
}

#[test]
fn each_pile_has_a_face_of_its_own() {
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 1, 20.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 2);
    job.stockpiles.push(pile("other pile", 9.0));
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at other pile for south
         0:20 loader 1 hauling load 0 to north
         0:20 loader 2 hauling load 1 to south
         0:30 loader 1 dumping load 0 at north
         0:30 loader 2 dumping load 1 at south",
    );
}

/// Haul 45 s; loader 1 loads in 30 s, the others in 20 s; loader 3 drives back twice as fast. North takes 4 m3: after
/// three loads, all three drive back for the fourth. Loader 1 gets it (2:05 to 2:35); behind it stands loader 3 (from
/// 1:55 + 5 + 22.5 = 2:22.5), then loader 2 (from 1:40 + 45 = 2:25).
fn three_for_the_last_load_of_north() -> Job {
    let zones = vec![zone("north", 4.0, 0, 90.0), zone("south", 1.0, 0, 90.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 3);
    job.loaders[0].load_s = 30.0;
    job.loaders[2].empty_m_per_s = 4.0;
    job
}

#[test]
fn a_loader_whose_zone_has_been_served_meanwhile_chooses_again_on_the_spot_and_keeps_its_turn() {
    // At 2:35 it is loader 3's turn: north needs nothing more, south takes 1 m3 from the same pile, so it loads at once
    // although loader 2 stands behind it. For loader 2, at 2:55, nothing is left.
    expect_of(
        &three_for_the_last_load_of_north(),
        &["loader 2 w", "loader 2 l", "loader 2 done", "loader 3 w", "loader 3 l"],
        "0:00 loader 2 waiting for the face of pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:30 loader 2 loading load 1 at pile for north
         0:50 loader 3 loading load 2 at pile for north
         2:22.5 loader 3 waiting for the face of pile for north
         2:25 loader 2 waiting for the face of pile for north
         2:35 loader 3 loading load 4 at pile for south
         2:55 loader 2 done",
    );
}

#[test]
fn a_loader_that_must_choose_another_pile_joins_the_queue_there() {
    // South is served from another pile: loader 3 gives its turn up and loads there, loader 2 finds nothing at once.
    let mut job = three_for_the_last_load_of_north();
    job.stockpiles.push(pile("other pile", 9.0));
    job.zones[1].ways[0].stockpile = 1;
    job.zones[1].need_m3 = 2.0;
    // As listed, all serve north first; at 2:35 loader 3, then loader 2 at the same instant, turn to south.
    expect_of(
        &job,
        &["loader 2", "loader 3"],
        "0:00 loader 2 waiting for the face of pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:30 loader 2 loading load 1 at pile for north
         0:50 loader 3 loading load 2 at pile for north
         0:50 loader 2 hauling load 1 to north
         1:10 loader 3 hauling load 2 to north
         1:35 loader 2 dumping load 1 at north
         1:40 loader 2 returning to pile
         1:55 loader 3 dumping load 2 at north
         2:00 loader 3 returning to pile
         2:22.5 loader 3 waiting for the face of pile for north
         2:25 loader 2 waiting for the face of pile for north
         2:35 loader 3 loading load 4 at other pile for south
         2:35 loader 2 waiting for the face of other pile for south
         2:55 loader 2 loading load 5 at other pile for south
         2:55 loader 3 hauling load 4 to south
         3:15 loader 2 hauling load 5 to south
         3:40 loader 3 dumping load 4 at south
         3:45 loader 3 returning to other pile
         4:00 loader 2 dumping load 5 at south",
    );
}

#[test]
fn a_loader_at_an_empty_pile_chooses_again() {
    // Loader 1 takes the last of the near pile at 0:00; loader 2, which chose before, has to see that it is gone.
    let mut job = with_loaders(without_rakers(one_and_one()), 3);
    job.stockpiles = vec![pile("near", 2.0), pile("far", 9.0)];
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 100.0, passes: vec![] });
    job.zones[0].need_m3 = 3.0;
    expect_of(
        &job,
        &["loader 3"],
        "0:00 loader 3 waiting for the face of near for north
         0:40 loader 3 loading load 2 at far for north
         1:00 loader 3 hauling load 2 to north
         1:50 loader 3 dumping load 2 at north",
    );
}
