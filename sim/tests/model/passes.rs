//! Section 3.4: a leg is cut at its passes; each is queued for, held for its passing time, and left before any wait.

use super::jobs::*;
use super::log::*;
use sim::*;

/// North, 20 m, with the gate at this share of the way.
fn with_gate_at(share: f64, loads: f64) -> Job {
    let mut job = without_rakers(one_and_one());
    job.zones[0].need_m3 = loads;
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share }];
    job.passes = vec![gate()];
    job
}

#[test]
fn a_haul_is_cut_at_its_share_from_the_pile_and_the_return_at_the_rest() {
    // A quarter of 10 s, 4 s of gate, 7.5 s; back 7.5 s, 4 s, 2.5 s.
    expect(
        &with_gate_at(0.25, 2.0),
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:22.5 loader 1 passing the gate load 0
         0:26.5 loader 1 hauling load 0 to north
         0:34 loader 1 dumping load 0 at north
         0:39 load 0 raked out at north
         0:39 loader 1 returning to pile
         0:46.5 loader 1 passing the gate
         0:50.5 loader 1 returning to pile
         0:53 loader 1 loading load 1 at pile for north
         1:13 loader 1 hauling load 1 to north
         1:15.5 loader 1 passing the gate load 1
         1:19.5 loader 1 hauling load 1 to north
         1:27 loader 1 dumping load 1 at north
         1:32 load 1 raked out at north",
    );
}

#[test]
fn start_and_stop_belong_to_the_drive_that_is_cut() {
    // 20 m / 2 m/s + 6 s = 16 s loaded, 20 m / 4 m/s + 6 s = 11 s empty; half of each before the gate.
    let mut job = with_gate_at(0.5, 2.0);
    (job.loaders[0].start_stop_s, job.loaders[0].empty_m_per_s) = (6.0, 4.0);
    expect_of(
        &job,
        &["loader 1 p", "loader 1 d", "loader 1 l"],
        "0:00 loader 1 loading load 0 at pile for north
         0:28 loader 1 passing the gate load 0
         0:40 loader 1 dumping load 0 at north
         0:50.5 loader 1 passing the gate
         1:00 loader 1 loading load 1 at pile for north
         1:28 loader 1 passing the gate load 1
         1:40 loader 1 dumping load 1 at north",
    );
}

#[test]
fn several_passes_are_met_in_order_and_backwards_on_the_return() {
    let mut job = with_gate_at(0.2, 2.0);
    job.passes.push(Pass { name: "bridge".into(), passing_s: 7.0, ..gate() });
    job.zones[0].ways[0].passes.push(PassOnWay { pass: 1, share: 0.7 });
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:22 loader 1 passing the gate load 0
         0:26 loader 1 hauling load 0 to north
         0:31 loader 1 passing the bridge load 0
         0:38 loader 1 hauling load 0 to north
         0:41 loader 1 dumping load 0 at north
         0:46 loader 1 returning to pile
         0:49 loader 1 passing the bridge
         0:56 loader 1 returning to pile
         1:01 loader 1 passing the gate
         1:05 loader 1 returning to pile
         1:07 loader 1 loading load 1 at pile for north
         1:27 loader 1 hauling load 1 to north
         1:29 loader 1 passing the gate load 1
         1:33 loader 1 hauling load 1 to north
         1:38 loader 1 passing the bridge load 1
         1:45 loader 1 hauling load 1 to north
         1:48 loader 1 dumping load 1 at north",
    );
}

/// Two loaders at a face for two, a gate of 15 s in the middle of the way: they always meet there.
fn two_at_the_gate() -> Job {
    let mut job = with_loaders(with_gate_at(0.5, 3.0), 2);
    job.stockpiles[0].face = 2;
    job.passes[0].passing_s = 15.0;
    job
}

#[test]
fn one_machine_at_a_time_goes_through_both_directions_in_one_line() {
    // Loader 1 comes back to the gate at 0:55 while loader 2 went through from 0:40 to 0:55, and is at its own way
    // back at 1:15: loader 1 has long gone through.
    expect_of(
        &two_at_the_gate(),
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:20 loader 2 hauling load 1 to north
         0:25 loader 1 passing the gate load 0
         0:25 loader 2 waiting at the gate load 1
         0:40 loader 2 passing the gate load 1
         0:40 loader 1 hauling load 0 to north
         0:45 loader 1 dumping load 0 at north
         0:50 loader 1 returning to pile
         0:55 loader 1 passing the gate
         0:55 loader 2 hauling load 1 to north
         1:00 loader 2 dumping load 1 at north
         1:05 loader 2 returning to pile
         1:10 loader 1 returning to pile
         1:10 loader 2 passing the gate
         1:15 loader 1 loading load 2 at pile for north
         1:25 loader 2 returning to pile
         1:30 loader 2 done
         1:35 loader 1 hauling load 2 to north
         1:40 loader 1 passing the gate load 2
         1:55 loader 1 hauling load 2 to north
         2:00 loader 1 dumping load 2 at north",
    );
}

#[test]
fn at_a_pass_it_is_first_come_first_served_whichever_way_they_go() {
    // Loader 3 loads from 0:00 in 36 s, so it reaches the gate loaded at 0:41. There stands nobody, but loader 2 is
    // inside until 0:55. Loader 1 comes back to it at 0:50: after loader 3.
    let mut job = with_loaders(two_at_the_gate(), 3);
    job.stockpiles[0].face = 3;
    job.loaders[2].load_s = 36.0;
    expect_of(
        &job,
        &["loader 1 w", "loader 1 p", "loader 2 w", "loader 2 p", "loader 3 w", "loader 3 p"],
        "0:25 loader 1 passing the gate load 0
         0:25 loader 2 waiting at the gate load 1
         0:40 loader 2 passing the gate load 1
         0:41 loader 3 waiting at the gate load 2
         0:55 loader 3 passing the gate load 2
         0:55 loader 1 waiting at the gate
         1:10 loader 1 passing the gate
         1:10 loader 2 waiting at the gate",
    );
}

#[test]
fn a_pass_for_two_lets_two_through_at_once() {
    let mut job = two_at_the_gate();
    job.passes[0].at_once = 2;
    let run = only_run(&job);
    assert_eq!(loader_s(&run, 0, LoaderActivity::WaitingForPass), 0.0);
    assert_eq!(loader_s(&run, 1, LoaderActivity::WaitingForPass), 0.0);
}

#[test]
fn a_pass_is_left_before_its_loader_waits_for_room() {
    // The gate lies at the very zone, where one heap has room and is raked for 300 s. Loader 1 waits there with its
    // second load, and loader 2 goes through the gate behind it.
    let mut job = with_loaders(with_gate_at(1.0, 3.0), 2);
    job.raking.spread_share = 0.0;
    job.rakers = vec![Raker { rate_m3_per_h: 12.0, ..raker("raker", 0) }];
    job.zones[0].room = Some(1);
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 waiting for the face of pile for north
         0:20 loader 2 loading load 1 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 passing the gate load 0
         0:34 loader 1 dumping load 0 at north
         0:39 loader 1 passing the gate
         0:40 loader 2 hauling load 1 to north
         0:43 loader 1 returning to pile
         0:50 loader 2 passing the gate load 1
         0:53 loader 1 loading load 2 at pile for north
         0:54 loader 2 waiting for room load 1 at north
         1:13 loader 1 hauling load 2 to north
         1:23 loader 1 passing the gate load 2
         1:27 loader 1 waiting for room load 2 at north
         5:39 loader 2 dumping load 1 at north
         5:44 loader 2 passing the gate
         5:48 loader 2 returning to pile
         5:58 loader 2 done
         10:44 loader 1 dumping load 2 at north
         10:49 loader 1 passing the gate
         10:53 loader 1 returning to pile
         11:03 loader 1 done",
    );
}

#[test]
fn ways_to_different_zones_may_share_a_pass() {
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 2);
    job.stockpiles[0].face = 2;
    job.passes = vec![gate()];
    job.zones.iter_mut().for_each(|zone| zone.ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }]);
    expect_of(
        &job,
        &["loader 2"],
        "0:00 loader 2 loading load 1 at pile for south
         0:20 loader 2 hauling load 1 to south
         0:25 loader 2 waiting at the gate load 1
         0:29 loader 2 passing the gate load 1
         0:33 loader 2 hauling load 1 to south
         0:38 loader 2 dumping load 1 at south",
    );
}

#[test]
fn the_drive_of_a_leg_is_rounded_once_and_its_parts_add_up_to_it() {
    // 20 m at 3 m/s are 6.666667 s; a third of that is 2.222222 s (from 2.222222333), the rest 4.444445 s.
    let mut job = with_gate_at(1.0 / 3.0, 1.0);
    job.loaders[0].loaded_m_per_s = 3.0;
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:22.222222 loader 1 passing the gate load 0
         0:26.222222 loader 1 hauling load 0 to north
         0:30.666667 loader 1 dumping load 0 at north",
    );
}
