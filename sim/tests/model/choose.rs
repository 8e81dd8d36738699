//! Section 3.1: a loader chooses a zone and a pile.

use super::jobs::*;
use super::log::*;
use sim::*;

/// North 10 s and south 20 s from the pile, no rakers, one loader.
fn north_and_south(north_m3: f64, south_m3: f64) -> Job {
    let zones = vec![zone("north", north_m3, 0, 20.0), zone("south", south_m3, 0, 40.0)];
    without_rakers(with_zones(one_and_one(), zones, 0.0))
}

#[test]
fn a_loader_drives_load_haul_dump_return_until_the_need_is_met() {
    let job = north_and_south(2.0, 0.0);
    expect(
        &job,
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 load 1 raked out at north",
    );
}

#[test]
fn a_zone_whose_need_is_met_by_what_is_on_its_way_drops_out() {
    // Loader 1 starts loading for the only load of north before loader 2 chooses.
    let mut job = with_loaders(north_and_south(1.0, 1.0), 2);
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at pile for south
         0:20 loader 1 hauling load 0 to north
         0:20 loader 2 hauling load 1 to south
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to pile
         0:40 loader 2 dumping load 1 at south",
    );
}

#[test]
fn being_bound_for_a_zone_does_not_meet_its_need_only_loading_does() {
    // Loader 2 stands at the face, bound for north's second load, while loader 3 chooses: north still lacks 1 m3.
    let job = with_loaders(north_and_south(2.0, 1.0), 3);
    expect_of(
        &job,
        &["loader 2", "loader 3"],
        "0:00 loader 2 waiting for the face of pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:20 loader 2 loading load 1 at pile for north
         0:40 loader 3 loading load 2 at pile for south
         0:40 loader 2 hauling load 1 to north
         0:50 loader 2 dumping load 1 at north
         0:55 loader 2 returning to pile
         1:00 loader 3 hauling load 2 to south
         1:05 loader 2 done
         1:20 loader 3 dumping load 2 at south",
    );
}

#[test]
fn a_zone_drops_out_while_no_reachable_pile_has_material_now() {
    // North is reached from the far pile only, which is empty until the delivery at 1:00.
    let mut job = north_and_south(1.0, 3.0);
    job.stockpiles.push(pile("far pile", 0.0));
    job.stockpiles[1].deliveries.push(Delivery {
        at_s: job.shift.start_s + 60.0,
        late_s: Distribution::Constant(0.0),
        volume_m3: 1.0,
    });
    job.zones[0].ways[0].stockpile = 1;
    // Loads for south begin at 0:00 and 1:05 (20 + 20 + 5 + 20); at 0:45, when the second is chosen, north has none.
    // At 1:50 north can be served: it is listed first.
    assert_eq!(served(&job, &only_run(&job)), "south south north south");
}

#[test]
fn of_the_order_the_first_zone_with_room_for_one_more_is_chosen() {
    // A slow raker leaves the heap at north for 500 s: the second load finds no room there and goes south.
    let mut job = north_and_south(3.0, 3.0);
    job.rakers = vec![Raker { rate_m3_per_h: 7.2, ..raker("raker", 0) }];
    job.raking.spread_share = 0.0;
    (job.zones[0].room, job.zones[1].room) = (Some(1), Some(2));
    // Full from the third load on: "if none has, the first".
    assert_eq!(served(&job, &only_run(&job)), "north south south north north south");
}

#[test]
fn a_loader_bound_for_a_zone_takes_its_room_in_the_eyes_of_those_who_choose() {
    let mut job = with_loaders(north_and_south(2.0, 2.0), 2);
    job.zones[0].room = Some(1);
    // No heap lies anywhere at the start, but loader 1 is on its way to north.
    expect_of(
        &job,
        &["loader 2"],
        "0:00 loader 2 waiting for the face of pile for south
         0:20 loader 2 loading load 1 at pile for south
         0:40 loader 2 hauling load 1 to south
         1:00 loader 2 dumping load 1 at south
         1:05 loader 2 returning to pile
         1:25 loader 2 loading load 3 at pile for south
         1:45 loader 2 hauling load 3 to south
         2:05 loader 2 dumping load 3 at south",
    );
}

#[test]
fn where_no_zone_has_room_the_first_of_the_order_is_chosen_all_the_same() {
    let mut job = with_loaders(north_and_south(3.0, 1.0), 3);
    job.zones[0].room = Some(1);
    job.zones[1].room = Some(1);
    // Loaders 1 and 2 are bound for north and south; for loader 3 there is room nowhere: north.
    assert_eq!(served(&job, &only_run(&job)), "north south north north");
}

#[test]
fn the_pile_is_the_nearest_to_the_zone_that_has_material() {
    let mut job = north_and_south(4.0, 0.0);
    job.stockpiles = vec![pile("far", 9.0), pile("near", 2.0)];
    job.zones[0].ways = [(0, 60.0), (1, 20.0)]
        .map(|(stockpile, distance_m)| Way { stockpile, distance_m, passes: vec![] })
        .into();
    // Chosen at 1:20, the third load comes from the far pile, 30 s away, and the loader returns there.
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at near for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to near
         0:45 loader 1 loading load 1 at near for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to far
         1:50 loader 1 loading load 2 at far for north
         2:10 loader 1 hauling load 2 to north
         2:40 loader 1 dumping load 2 at north
         2:45 loader 1 returning to far
         3:15 loader 1 loading load 3 at far for north
         3:35 loader 1 hauling load 3 to north
         4:05 loader 1 dumping load 3 at north",
    );
}

#[test]
fn a_loader_takes_the_shortest_way_it_fits_through() {
    // Through the gate, 2 m wide, it is 20 m; around it, 60 m.
    let mut job = north_and_south(1.0, 0.0);
    job.passes = vec![gate()];
    let through = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.zones[0].ways = vec![
        Way { stockpile: 0, distance_m: 60.0, passes: vec![] },
        Way { stockpile: 0, distance_m: 20.0, passes: through },
    ];
    let completion = |width_m: f64| {
        let mut job = job.clone();
        job.loaders[0].width_m = width_m;
        only_run(&job).outcome.completion.working
    };
    assert_eq!(completion(1.0), Duration::from_secs(20 + 10 + 4 + 5));
    assert_eq!(completion(2.0), Duration::from_secs(20 + 10 + 4 + 5), "as wide as the gate still fits");
    assert_eq!(completion(2.001), Duration::from_secs(20 + 30 + 5));
}

#[test]
fn what_remains_of_a_need_or_a_pile_under_a_twentieth_of_the_smallest_bucket_counts_as_nothing() {
    // Two buckets, 1 m3 and 0.4 m3: nothing is less than 0.02 m3, but of a need as stated.
    let loads = |need_m3: f64, stock_m3: f64| {
        let mut job = with_loaders(north_and_south(need_m3, 0.0), 2);
        job.loaders[1].heaped_m3 = 0.4;
        job.stockpiles[0].on_hand_m3 = stock_m3;
        volumes(&only_run(&job))
    };
    assert_eq!(loads(1.419, 9.0), [1.0, 0.4]);
    assert_eq!(loads(1.421, 9.0), [1.0, 0.4, 0.021]);
    assert_eq!(loads(9.0, 1.419), [1.0, 0.4]);
    assert_eq!(loads(9.0, 1.421), [1.0, 0.4, 0.021]);
    assert_eq!(loads(0.019, 9.0), [0.019]);
}

#[test]
fn at_the_start_a_loader_stands_at_the_pile_of_its_first_load() {
    let mut job = north_and_south(1.0, 0.0);
    job.stockpiles = vec![pile("empty", 0.0), pile("full", 9.0)];
    job.zones[0].ways = [(0, 20.0), (1, 200.0)]
        .map(|(stockpile, distance_m)| Way { stockpile, distance_m, passes: vec![] })
        .into();
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at full for north
         0:20 loader 1 hauling load 0 to north
         2:00 loader 1 dumping load 0 at north",
    );
}

#[test]
fn a_loader_goes_back_by_the_way_from_the_zone_it_served_to_the_pile_of_its_next_load() {
    // The near pile holds one load for each zone; the third comes from the far one, 60 m from the north: 30 s there and back.
    let mut zones = vec![zone("south", 1.0, 0, 20.0), zone("north", 2.0, 0, 20.0)];
    zones[1].ways.push(Way { stockpile: 1, distance_m: 60.0, passes: vec![] });
    let mut job = with_zones(one_and_one(), zones, 0.0);
    job.stockpiles = vec![pile("near", 2.0), pile("far", 1.0)];
    expect_of(
        &job,
        &["loader 1 loading", "loader 1 returning"],
        "0:00 loader 1 loading load 0 at near for south
         0:35 loader 1 returning to near
         0:45 loader 1 loading load 1 at near for north
         1:20 loader 1 returning to far
         1:50 loader 1 loading load 2 at far for north
         2:45 loader 1 returning to far",
    );
}
