//! Section 1: the two rules by which a job ends.

use super::jobs::*;
use super::log::*;
use sim::*;

/// North and south need so much; one pile.
fn north_and_south(north_m3: f64, south_m3: f64, stock_m3: f64, finish: FinishRule) -> Job {
    let zones = vec![zone("north", north_m3, 0, 20.0), zone("south", south_m3, 0, 20.0)];
    let mut job = with_zones(without_rakers(one_and_one()), zones, 0.0);
    job.stockpiles[0].on_hand_m3 = stock_m3;
    job.finish = finish;
    job
}

#[test]
fn area_covered_leaves_the_rest_at_the_pile() {
    let job = north_and_south(1.5, 1.0, 5.0, FinishRule::AreaCovered);
    let run = only_run(&job);
    assert_eq!(volumes(&run), [1.0, 0.5, 1.0]);
    assert!((run.outcome.left_over_m3 - 2.5).abs() < 1e-9);
    assert_eq!(run.outcome.short_m3, 0.0);
}

#[test]
fn piles_that_run_out_leave_a_shortfall_zone_by_zone() {
    let run = only_run(&north_and_south(1.5, 1.0, 2.0, FinishRule::AreaCovered));
    assert_eq!(volumes(&run), [1.0, 0.5, 0.5]);
    assert_eq!(run.accounts.zones[0].short_m3, 0.0);
    assert!((run.accounts.zones[1].short_m3 - 0.5).abs() < 1e-9);
    assert!((run.outcome.short_m3 - 0.5).abs() < 1e-9);
    assert_eq!(run.outcome.left_over_m3, 0.0);
    assert_eq!((run.outcome.ends_short, run.outcome.done()), (true, None));
}

#[test]
fn crumbs_that_are_missing_do_not_leave_a_job_undone() {
    // A twentieth of the smallest bucket (1 m3) is missing, or a hair less.
    let lacks = |m3: f64| only_run(&north_and_south(1.0, 0.0, 1.0 - m3, FinishRule::AreaCovered)).outcome;
    let (short, not_short) = (lacks(0.0501), lacks(0.0499));
    assert!(short.ends_short && (short.short_m3 - 0.0501).abs() < 1e-9);
    assert_eq!((not_short.short_m3, not_short.done()), (0.0, Some(not_short.finish)));
}

#[test]
fn pile_cleared_places_the_surplus_in_its_zone_with_full_buckets() {
    // While south lacks its half load, north is cut to what it needs; then the surplus of 3 m3 goes there uncut.
    let job = north_and_south(1.5, 0.5, 5.0, FinishRule::PileCleared { surplus_zone: 0 });
    let run = only_run(&job);
    assert_eq!(volumes(&run), [1.0, 0.5, 0.5, 1.0, 1.0, 1.0]);
    assert_eq!(served(&job, &run), "north north south north north north");
    assert!((run.accounts.zones[0].placed_m3 - 4.5).abs() < 1e-9);
    assert_eq!(run.outcome.left_over_m3, 0.0);
}

#[test]
fn the_surplus_zone_takes_full_buckets_from_the_moment_nobody_else_needs_more() {
    // South comes last and is the surplus zone: its own half load is not cut, once north has what it needs.
    let job = north_and_south(1.0, 0.5, 3.2, FinishRule::PileCleared { surplus_zone: 1 });
    let run = only_run(&job);
    assert_eq!(volumes(&run), [1.0, 1.0, 1.0, 0.2]);
    assert_eq!(served(&job, &run), "north south south south");
}

#[test]
fn a_surplus_zone_that_needs_nothing_itself_takes_the_surplus() {
    let job = north_and_south(1.0, 0.0, 2.0, FinishRule::PileCleared { surplus_zone: 1 });
    assert_eq!(served(&job, &only_run(&job)), "north south");
}

#[test]
fn pile_cleared_places_later_deliveries_too() {
    let mut job = north_and_south(1.0, 0.0, 1.0, FinishRule::PileCleared { surplus_zone: 0 });
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 300.0, late_s, volume_m3: 1.4 }];
    let run = only_run(&job);
    assert_eq!(volumes(&run), [1.0, 1.0, 0.4]);
    // Back from the zone: 300 + 10 + 20 + 10 + 5, and another cycle of 45 s.
    assert_eq!(run.outcome.completion.working, Duration::from_secs(390));
}

#[test]
fn pile_cleared_may_run_short_too() {
    let run = only_run(&north_and_south(3.0, 1.0, 2.0, FinishRule::PileCleared { surplus_zone: 1 }));
    assert_eq!(volumes(&run), [1.0, 1.0]);
    assert!((run.outcome.short_m3 - 2.0).abs() < 1e-9);
    // The job was to clear the pile, and did.
    assert_eq!(run.outcome.done(), Some(run.outcome.finish));
}

#[test]
fn a_zone_that_can_get_no_more_does_not_hold_the_surplus_up() {
    // North, reached from its own pile only, lacks 1 m3 for good. The other pile's surplus still goes to south.
    let mut job = north_and_south(2.0, 1.0, 1.0, FinishRule::PileCleared { surplus_zone: 1 });
    job.stockpiles.push(pile("other pile", 3.0));
    job.zones[1].ways[0].stockpile = 1;
    let run = only_run(&job);
    assert_eq!(served(&job, &run), "north south south south");
    assert!((run.outcome.short_m3 - 1.0).abs() < 1e-9);
    assert_eq!(run.outcome.left_over_m3, 0.0);
}

#[test]
fn a_loader_that_can_only_take_the_surplus_waits_until_there_is_one() {
    // Loader 2 is too wide for the gate to north. The text is silent on whether it goes home; as everything delivered is
    // to be placed, it waits: until loader 1 takes the last of north's two loads at 0:45.
    // The last load of the pile is loader 1's, back at 1:30 too.
    let mut job = north_and_south(2.0, 0.0, 4.0, FinishRule::PileCleared { surplus_zone: 1 });
    job = with_loaders(job, 2);
    job.loaders[1].width_m = 2.5;
    job.passes = vec![Pass { passing_s: 0.0, ..gate() }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["loader 2"],
        "0:00 loader 2 waiting for a delivery
         0:45 loader 2 loading load 2 at pile for south
         1:05 loader 2 hauling load 2 to south
         1:15 loader 2 dumping load 2 at south
         1:20 loader 2 returning to pile
         1:30 loader 2 done",
    );
}

#[test]
fn the_surplus_opens_while_what_another_zone_lacks_is_still_to_come() {
    // North is reached from the north pile only, which is empty until 2:00. South takes the surplus of the other pile
    // meanwhile: none of that can be placed elsewhere.
    let mut job = north_and_south(1.0, 0.0, 0.0, FinishRule::PileCleared { surplus_zone: 1 });
    job.stockpiles[0].name = "north pile".into();
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 120.0, late_s, volume_m3: 1.0 }];
    job.stockpiles.push(pile("other pile", 2.0));
    job.zones[1].ways[0].stockpile = 1;
    let run = expect(
        &job,
        "0:00 loader 1 loading load 0 at other pile for south
         0:20 loader 1 hauling load 0 to south
         0:30 loader 1 dumping load 0 at south
         0:35 load 0 raked out at south
         0:35 loader 1 returning to other pile
         0:45 loader 1 loading load 1 at other pile for south
         1:05 loader 1 hauling load 1 to south
         1:15 loader 1 dumping load 1 at south
         1:20 load 1 raked out at south
         1:20 loader 1 waiting for a delivery
         2:00 delivered 1.00 m3 to north pile
         2:00 loader 1 returning to north pile
         2:10 loader 1 loading load 2 at north pile for north
         2:30 loader 1 hauling load 2 to north
         2:40 loader 1 dumping load 2 at north
         2:45 load 2 raked out at north",
    );
    assert_eq!((run.outcome.short_m3, run.outcome.left_over_m3), (0.0, 0.0));
}

#[test]
fn the_surplus_closes_again_when_what_another_zone_lacks_has_come() {
    // North is reached from the north pile, which is empty until 0:40.
    let mut job = north_and_south(2.0, 0.0, 0.0, FinishRule::PileCleared { surplus_zone: 1 });
    job.stockpiles[0].name = "north pile".into();
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 40.0, late_s, volume_m3: 2.0 }];
    job.stockpiles.push(pile("other pile", 3.0));
    job.zones[1].ways[0].stockpile = 1;
    job.zones[1].ways.push(Way { stockpile: 0, distance_m: 20.0, passes: vec![] });
    job.zones[1].ways[0].distance_m = 24.0;
    // Chosen at 0:37 for south, before the truck; at its turn at 0:49 south needs nothing more while north does. From north
    // no way leads to the other pile: at 2:09 it returns the way it came.
    expect_of(
        &job,
        &["loader 1 l", "loader 1 r", "loader 1 du", "delivered"],
        "0:00 loader 1 loading load 0 at other pile for south
         0:32 loader 1 dumping load 0 at south
         0:37 loader 1 returning to other pile
         0:40 delivered 2.00 m3 to north pile
         0:49 loader 1 loading load 1 at north pile for north
         1:19 loader 1 dumping load 1 at north
         1:24 loader 1 returning to north pile
         1:34 loader 1 loading load 2 at north pile for north
         2:04 loader 1 dumping load 2 at north
         2:09 loader 1 returning to other pile
         2:19 loader 1 loading load 3 at other pile for south
         2:51 loader 1 dumping load 3 at south
         2:56 loader 1 returning to other pile
         3:08 loader 1 loading load 4 at other pile for south
         3:40 loader 1 dumping load 4 at south",
    );
}
