//! Section 5, "at one instant": who goes first when several things fall on the same microsecond.

use super::jobs::*;
use super::log::*;
use sim::*;

/// What happens at this time, in order.
fn at(job: &Job, time: &str) -> Vec<String> {
    let run = only_run(job);
    let prefix = format!("{time} ");
    lines(job, &run).into_iter().filter_map(|line| Some(line.strip_prefix(&prefix)?.to_string())).collect()
}

#[test]
fn a_place_given_back_at_an_instant_is_free_for_who_arrives_at_it() {
    // Room for one; the heap of 0:35 is raked in 40 s, just when the second load arrives at 1:15.
    let mut job = one_and_one();
    job.zones[0].room = Some(1);
    job.rakers[0].rate_m3_per_h = 90.0;
    assert_eq!(loader_s(&only_run(&job), 0, LoaderActivity::WaitingForRoom), 0.0);
}

#[test]
fn deliveries_arrive_before_anything_ends_and_rakers_end_before_loaders() {
    // At 1:25 the truck comes, the first heap (0:35 and 50 s) is raked out, and loader 2 arrives (75 + 10 s).
    let mut job = with_loaders(one_and_one(), 2);
    (job.stockpiles[0].face, job.loaders[1].load_s) = (2, 75.0);
    job.loaders[0].load_s = 20.0;
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 85.0, late_s, volume_m3: 1.0 }];
    assert_eq!(
        at(&job, "1:25"),
        [
            "delivered 1.00 m3 to pile",
            "load 0 raked out at north",
            "raker 1 raking load 2 at north",
            "loader 2 dumping load 1 at north",
        ]
    );
}

#[test]
fn a_raker_starts_before_a_loader_in_a_queue_and_that_before_another_loader() {
    // Loaders 1 and 2 at a face for two, loader 3 takes loader 1's place at 0:20. At 0:35 loader 1 has dumped, and loader
    // 2 leaves the face to loader 4.
    let mut job = with_loaders(one_and_one(), 4);
    job.stockpiles[0].face = 2;
    job.loaders[1].load_s = 35.0;
    job.loaders[2].load_s = 40.0;
    assert_eq!(
        at(&job, "0:35"),
        [
            "raker 1 raking load 0 at north",
            "loader 4 loading load 3 at pile for north",
            "loader 1 returning to pile",
            "loader 2 hauling load 1 to north",
        ]
    );
}

#[test]
fn a_loader_served_in_a_queue_is_seen_by_who_chooses_at_the_same_instant() {
    // North takes 3 m3. At 0:40 loader 3, first in the line, starts loading the last of it; loader 1, whose dump ends
    // at 0:40 (haul 15 s), then chooses south.
    let zones = vec![zone("north", 3.0, 0, 30.0), zone("south", 1.0, 0, 30.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 3);
    job.loaders[0].load_s = 20.0;
    assert_eq!(
        at(&job, "0:40"),
        [
            "load 0 raked out at north",
            "loader 3 loading load 2 at pile for north",
            "loader 1 returning to pile",
            "loader 2 hauling load 1 to north",
        ]
    );
    assert_eq!(served(&job, &only_run(&job)), "north north north south");
    let run = only_run(&job);
    let bound_for = run.log.iter().find_map(|entry| match entry.event {
        Event::Loader { loader: 0, activity: LoaderActivity::Returning, zone, .. } => zone,
        _ => None,
    });
    assert_eq!(bound_for, Some(1));
}

#[test]
fn other_loaders_start_by_number() {
    let mut job = with_loaders(one_and_one(), 3);
    job.stockpiles[0].face = 3;
    assert_eq!(
        at(&job, "0:20"),
        [1, 2, 3].map(|n| format!("loader {n} hauling load {} to north", n - 1)).to_vec()
    );
}

#[test]
fn loaders_that_arrive_together_join_a_line_by_number() {
    // All three reach the gate at 0:25.
    let mut job = with_loaders(without_rakers(one_and_one()), 3);
    job.stockpiles[0].face = 3;
    job.passes = vec![gate()];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.zones[0].need_m3 = 3.0;
    expect_of(
        &job,
        &["loader 1 p", "loader 2 p", "loader 3 p"],
        "0:25 loader 1 passing the gate load 0
         0:29 loader 2 passing the gate load 1
         0:33 loader 3 passing the gate load 2
         0:44 loader 1 passing the gate",
    );
}

#[test]
fn a_step_of_no_duration_ends_before_the_next_thing_starts() {
    // Loading takes no time: the face for one is free again before loader 2 comes to it.
    let mut job = with_loaders(without_rakers(one_and_one()), 2);
    job.zones[0].need_m3 = 2.0;
    job.loaders.iter_mut().for_each(|loader| loader.load_s = 0.0);
    assert_eq!(
        at(&job, "0:00"),
        [
            "loader 1 loading load 0 at pile for north",
            "loader 1 hauling load 0 to north",
            "loader 2 loading load 1 at pile for north",
            "loader 2 hauling load 1 to north",
        ]
    );
}

#[test]
fn a_dump_of_no_duration_makes_nobody_stand_clear_for_any_time() {
    let mut job = one_and_one();
    job.raking.stand_clear = true;
    job.loaders[0].dump_s = 0.0;
    let run = only_run(&job);
    assert_eq!(raker_s(&run, 0, RakerActivity::StandingClear), 0.0);
    assert_eq!(run.outcome.completion.working, Duration::from_secs(530));
}

#[test]
fn a_break_that_ends_as_a_truck_comes_lets_both_in() {
    let mut job = without_rakers(one_and_one());
    job.stockpiles[0] = pile("pile", 1.0);
    job.zones[0].need_m3 = 2.0;
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 100.0, late_s, volume_m3: 1.0 }];
    job.shift.breaks = vec![pause(&job, 50.0, 100.0)];
    assert_eq!(at(&job, "1:40"), ["delivered 1.00 m3 to pile", "work resumes", "loader 1 returning to pile"]);
}
