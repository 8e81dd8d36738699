//! Section 3.1: the job's fill order.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Three zones of two loads each, at 40, 20 and 60 m.
fn three_zones(order: FillOrder) -> Job {
    let zones =
        [("a", 40.0), ("b", 20.0), ("c", 60.0)].map(|(name, distance_m)| zone(name, 2.0, 0, distance_m));
    let mut job = with_zones(without_rakers(one_and_one()), zones.into(), 0.0);
    job.fill_order = order;
    job
}

fn order_of(job: &Job) -> String {
    served(job, &only_run(job))
}

#[test]
fn as_listed() {
    assert_eq!(order_of(&three_zones(FillOrder::AsListed)), "a a b b c c");
}

#[test]
fn farthest_first() {
    assert_eq!(order_of(&three_zones(FillOrder::FarthestFirst)), "c c a a b b");
}

#[test]
fn nearest_first() {
    assert_eq!(order_of(&three_zones(FillOrder::NearestFirst)), "b b a a c c");
}

#[test]
fn of_equally_far_zones_the_lower_number_goes_first() {
    for order in [FillOrder::FarthestFirst, FillOrder::NearestFirst] {
        let mut job = three_zones(order);
        job.zones.iter_mut().for_each(|zone| zone.ways[0].distance_m = 40.0);
        assert_eq!(order_of(&job), "a a b b c c");
    }
}

#[test]
fn how_far_a_zone_is_counts_from_the_pile_its_load_would_come_from() {
    // From the first pile, b (20 m) is nearest; but a lies 10 m from the second pile. Once that has given its one load,
    // the rest of a is 40 m off.
    let mut job = three_zones(FillOrder::NearestFirst);
    job.stockpiles.push(pile("second", 1.0));
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 10.0, passes: vec![] });
    assert_eq!(order_of(&job), "a b b a c c");
    job.fill_order = FillOrder::FarthestFirst;
    // c, then b (20 m) before a (10 m), then a.
    assert_eq!(order_of(&job), "c c b b a a");
}

#[test]
fn in_turn_starts_with_the_first_and_leaves_out_what_is_full() {
    let mut job = three_zones(FillOrder::InTurn);
    job.zones[0].need_m3 = 1.0;
    job.zones[2].need_m3 = 4.0;
    assert_eq!(order_of(&job), "a b c b c c c");
}

#[test]
fn the_turn_goes_round_among_all_loaders() {
    let mut job = with_loaders(three_zones(FillOrder::InTurn), 2);
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["loader 1 l", "loader 2 l"],
        // Loader 2 chooses at 0:35 (c, after its own b), loader 1 at 0:45 (a), loader 2 at 1:40 (b), loader 1 at 1:50 (c).
        "0:00 loader 1 loading load 0 at pile for a
         0:00 loader 2 loading load 1 at pile for b
         0:45 loader 2 loading load 2 at pile for c
         1:05 loader 1 loading load 3 at pile for a
         2:10 loader 1 loading load 4 at pile for c
         2:10 loader 2 loading load 5 at pile for b",
    );
}

#[test]
fn most_room_left_first_counting_heaps_and_loaders_bound() {
    // Rooms 1, 3 and 2, and a raker so slow that every heap stays. Left: 1 3 2, 1 2 2 (ties: lower number), 1 1 2,
    // 1 1 1, 0 1 1, 0 0 1, and then none has room: the most room left is still the order; all have 0: a.
    let mut job = three_zones(FillOrder::MostRoom);
    job.rakers = vec![Raker { rate_m3_per_h: 1.0, ..raker("raker", 0) }];
    job.raking.spread_share = 0.0;
    for (zone, room) in job.zones.iter_mut().zip([1, 3, 2]) {
        (zone.room, zone.need_m3) = (Some(room), 3.0);
    }
    assert!(order_of(&job).starts_with("b b c a b c a"));
}

#[test]
fn a_zone_without_a_limit_has_the_most_room() {
    let mut job = three_zones(FillOrder::MostRoom);
    (job.zones[0].room, job.zones[2].room) = (Some(9), Some(9));
    assert_eq!(order_of(&job), "b b a a c c");
}
