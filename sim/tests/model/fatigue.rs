//! Section 4: with fatigue the rate falls with the hours raked that day when a heap is begun.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Heaps of 1 m3 that take a fresh raker an hour; the heaps wait for the raker from the second on.
fn tiring(loads: f64, share_per_h: f64, floor: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = loads;
    job.rakers[0].rate_m3_per_h = 1.0;
    job.raking.fatigue = Some(Fatigue { share_per_h, floor });
    job
}

#[test]
fn the_rate_falls_with_the_hours_raked_before_the_heap_is_begun() {
    // Fresh: 1 h. After 1 h at 1 - 0.2: 1.25 h. After 2.25 h at 1 - 0.45 = 0.55: 1.818182 h.
    let run = expect_of(
        &tiring(3.0, 0.2, 0.1),
        &["load "],
        "1:00:35 load 0 raked out at north
         2:15:35 load 1 raked out at north
         4:04:40.454545 load 2 raked out at north",
    );
    assert_eq!(raker_s(&run, 0, RakerActivity::Waiting), 35.0);
}

#[test]
fn the_rate_never_falls_below_its_floor() {
    // After 1 h the rate would be 0.2 of the fresh one; the floor is 0.5: 2 h, and 2 h again.
    expect_of(
        &tiring(3.0, 0.8, 0.5),
        &["load "],
        "1:00:35 load 0 raked out at north
         3:00:35 load 1 raked out at north
         5:00:35 load 2 raked out at north",
    );
}

#[test]
fn only_raking_tires_not_waiting() {
    // The second load takes 2 h to load: its heap lies at 0:35 + 10 s + 2 h + 15 s. Only 1 h was raked by then.
    let mut job = tiring(2.0, 0.2, 0.1);
    job.loaders[0].load_s = 7_200.0;
    expect_of(
        &job,
        &["load "],
        "3:00:15 load 0 raked out at north
         5:15:40 load 1 raked out at north",
    );
}

#[test]
fn each_raker_tires_by_their_own_hours() {
    // Raker 1 takes load 0 (1 h), raker 2 load 1 (1 h, from 1:20). At 1:00:35 raker 1 takes load 2 after 1 h: 1.25 h. At
    // 1:01:20 raker 2 takes load 3, also after 1 h.
    let mut job = tiring(4.0, 0.2, 0.1);
    job.rakers.push(job.rakers[0].clone());
    expect_of(
        &job,
        &["load "],
        "1:00:35 load 0 raked out at north
         1:01:20 load 1 raked out at north
         2:15:35 load 2 raked out at north
         2:16:20 load 3 raked out at north",
    );
}

#[test]
fn a_night_refreshes_the_rakers() {
    // The day is 8:00 to 9:30. Load 0 is raked by 9:00:35; load 1, begun after 1 h, takes 75 min: 29 min 25 s on the
    // first day and 45 min 35 s on the second, till 8:45:35. Load 2 is begun then: only the second day's 45 min 35 s
    // = 0.759722 h count, so the rate is 1 - 0.151944 and it takes 3600 / 0.848056 = 4245.005 s = 1 h 10 min 45.005 s:
    // 44 min 25 s that day and 26 min 20.005 s on the third.
    let mut job = tiring(3.0, 0.2, 0.1);
    job.shift.end_s = Some(9.5 * 3_600.0);
    let third_load = Duration::try_from_secs_f64(3_600.0 / (1.0 - 0.2 * 2_735.0 / 3_600.0)).unwrap();
    let on_the_third_day = third_load - Duration::from_secs(2_665);
    let run = only_run(&job);
    assert_eq!(run.outcome.completion.clock, Duration::from_hours(48) + on_the_third_day);
}

#[test]
fn a_heap_raked_over_the_start_of_a_day_counts_on_that_day_from_its_start() {
    // Work goes on day and night, but for a break from 1:00 to 2:00 of each day. A fresh heap takes 10 h: 0:35 to 11:00:35. After
    // 10 h at 1 - 0.4 the second takes 16:40: with the break of the second day it is raked out at 28:40:35, 3:40:35 of it that day.
    // So the third, begun then, has 1 - 0.04 x 13,235 / 3,600 of the fresh rate: 42,206.73484 s.
    let mut job = tiring(3.0, 0.04, 0.1);
    job.rakers[0].rate_m3_per_h = 0.1;
    job.shift.breaks = vec![pause(&job, 3_600.0, 7_200.0)];
    expect_of(
        &job,
        &["load "],
        "11:00:35 load 0 raked out at north
         28:40:35 load 1 raked out at north
         40:24:01.73484 load 2 raked out at north",
    );
}
