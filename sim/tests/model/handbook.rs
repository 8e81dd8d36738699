//! Section 7: the handbook figure.

use super::jobs::*;
use sim::*;

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

#[test]
fn loads_are_volume_over_mean_load_not_rounded_and_time_is_loads_times_cycle_in_50_minute_hours() {
    let mut job = one_and_one();
    job.material.fill_factor = 0.8;
    job.zones[0].need_m3 = 9.0;
    let figure = Handbook::new(&job);
    near(figure.volume_m3, 9.0);
    near(figure.loads, 11.25);
    near(figure.cycle_s[0].unwrap(), 45.0);
    near(figure.plain_s, 506.25);
    near(figure.time_s, 607.5);
}

#[test]
fn the_lift_limit_is_respected() {
    // 400 kg x 0.5 / 250 kg/m3 = 0.8 m3.
    let mut job = one_and_one();
    job.loaders[0].lift_kg = Some(200.0);
    near(Handbook::new(&job).loads, 12.5);
}

#[test]
fn the_mean_cycle_is_over_zones_by_need_from_the_nearest_pile() {
    // North 3 m3 at 20 m: 45 s. South 1 m3 at 40 m from its nearest pile: 65 s. Mean (3 x 45 + 65) / 4 = 50 s.
    let zones = vec![zone("north", 3.0, 0, 20.0), zone("south", 1.0, 0, 90.0)];
    let mut job = with_zones(one_and_one(), zones, 0.0);
    job.stockpiles.push(pile("other pile", 9.0));
    job.zones[1].ways.push(Way { stockpile: 1, distance_m: 40.0, passes: vec![] });
    let figure = Handbook::new(&job);
    near(figure.cycle_s[0].unwrap(), 50.0);
    near(figure.plain_s, 200.0);
}

#[test]
fn starting_stopping_gates_and_the_own_spreading_are_in_the_cycle_but_no_waiting_rakers_or_set_up() {
    // 20 + (10 + 3 + 4) + (5 + 0.5 x 30) + (10 + 3 + 4) = 74 s.
    let mut job = one_and_one();
    job.loaders[0].start_stop_s = 3.0;
    job.loaders[0].spread_s_per_m3 = 30.0;
    job.raking.spread_share = 0.5;
    job.passes = vec![gate()];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.zones[0].room = Some(1);
    job.rakers[0].rate_m3_per_h = 1.0;
    job.shift.set_up_s = Distribution::Constant(3_600.0);
    job.shift.clean_up_s = Distribution::Constant(3_600.0);
    near(Handbook::new(&job).cycle_s[0].unwrap(), 74.0);
    near(Handbook::new(&job).plain_s, 740.0);
}

#[test]
fn loaders_add_up() {
    // 1 m3 in 45 s and 0.5 m3 in 45 s: 30 s a cubic metre.
    let mut job = with_loaders(one_and_one(), 2);
    job.loaders[1].heaped_m3 = 0.5;
    let figure = Handbook::new(&job);
    near(figure.plain_s, 300.0);
    // Loads of both: 300 / 45 each.
    near(figure.loads, 2.0 * 300.0 / 45.0);
}

#[test]
fn chance_changes_nothing() {
    let plain = Handbook::new(&one_and_one());
    assert_eq!(Handbook::new(&with_lognormal_noise(one_and_one(), 0.2, 0.5)), plain);
}

#[test]
fn where_the_pile_is_to_be_cleared_all_of_it_is_moved() {
    let mut job = one_and_one();
    job.stockpiles[0].on_hand_m3 = 12.0;
    near(Handbook::new(&job).volume_m3, 10.0);
    job.finish = FinishRule::PileCleared { surplus_zone: 0 };
    near(Handbook::new(&job).volume_m3, 12.0);
    job.finish = FinishRule::AreaCovered;
    job.stockpiles[0].on_hand_m3 = 7.0;
    near(Handbook::new(&job).volume_m3, 7.0);
}

#[test]
fn where_no_zone_has_a_need_of_its_own_the_cycle_is_the_plain_mean_over_zones() {
    // 45 s and 65 s.
    let zones = vec![zone("north", 0.0, 0, 20.0), zone("south", 0.0, 0, 40.0)];
    let mut job = with_zones(one_and_one(), zones, 0.0);
    job.finish = FinishRule::PileCleared { surplus_zone: 1 };
    let figure = Handbook::new(&job);
    near(figure.cycle_s[0].unwrap(), 55.0);
    near(figure.plain_s, 550.0);
}

#[test]
fn the_own_spreading_grows_with_the_load() {
    // 20 + 10 + (5 + 0.5 x 2 x 30) + 10 = 75 s.
    let mut job = one_and_one();
    job.loaders[0].heaped_m3 = 2.0;
    job.loaders[0].spread_s_per_m3 = 30.0;
    job.raking.spread_share = 0.5;
    near(Handbook::new(&job).cycle_s[0].unwrap(), 75.0);
}
