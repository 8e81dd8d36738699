//! Section 5: breaks. Rakers put down what they have in hand, loaders finish their cycle and stop where they would wait.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Base job of so many loads with a break from and to so many seconds after the start.
fn with_break(loads: f64, from_s: f64, to_s: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = loads;
    job.shift.breaks = vec![pause(&job, from_s, to_s)];
    job
}

#[test]
fn a_raker_puts_the_heap_down_and_takes_it_up_again_while_a_loader_finishes_its_cycle() {
    // 25 of 50 s are raked by 1:00; the other 25 s from 2:00.
    let job = with_break(2.0, 60.0, 120.0);
    let run = expect(
        &job,
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:00 work pauses
         1:00 raker 1 break load 0 at north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to pile
         1:30 loader 1 done
         2:00 work resumes
         2:00 raker 1 raking load 0 at north
         2:25 load 0 raked out at north
         2:25 raker 1 raking load 1 at north
         3:15 load 1 raked out at north",
    );
    assert_eq!(raker_s(&run, 0, RakerActivity::OnBreak), 60.0);
    // Done is no break, even in one.
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 0.0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::Done), 105.0);
}

#[test]
fn a_loader_starts_no_new_load_in_a_break_and_the_cycle_in_hand_comes_out_of_its_break() {
    // The break is 1:22 to 3:20; the loader is back at 1:30.
    let run = expect_of(
        &with_break(3.0, 82.0, 200.0),
        &["loader", "work"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to pile
         1:22 work pauses
         1:30 loader 1 break
         3:20 work resumes
         3:20 loader 1 loading load 2 at pile for north
         3:40 loader 1 hauling load 2 to north
         3:50 loader 1 dumping load 2 at north
         3:55 loader 1 returning to pile
         4:05 loader 1 done",
    );
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 110.0);
    assert_eq!(raker_s(&run, 0, RakerActivity::OnBreak), 118.0);
}

#[test]
fn nothing_is_begun_at_the_instant_a_break_begins() {
    // The heap lies at 0:35, when the break begins; so does the second load at 0:45 have to wait.
    expect_of(
        &with_break(2.0, 35.0, 100.0),
        &["loader 1 l", "loader 1 b", "raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:35 raker 1 break at north
         0:45 loader 1 break
         1:40 raker 1 raking load 0 at north
         1:40 loader 1 loading load 1 at pile for north
         2:30 load 0 raked out at north
         2:30 raker 1 raking load 1 at north
         3:20 load 1 raked out at north",
    );
    expect_of(
        &with_break(2.0, 45.0, 100.0),
        &["loader 1 l", "loader 1 b"],
        "0:00 loader 1 loading load 0 at pile for north
         0:45 loader 1 break
         1:40 loader 1 loading load 1 at pile for north",
    );
}

#[test]
fn a_heap_that_is_done_at_the_instant_a_break_begins_is_done() {
    expect_of(
        &with_break(2.0, 85.0, 185.0),
        &["load "],
        "1:25 load 0 raked out at north
         3:55 load 1 raked out at north",
    );
}

#[test]
fn a_loader_that_would_have_to_wait_for_room_in_a_break_has_its_break() {
    // Room for one: the break comes at 1:00, with 25 s of the first heap left; the loader arrives at 1:15.
    let mut job = with_break(2.0, 60.0, 200.0);
    job.zones[0].room = Some(1);
    expect_of(
        &job,
        &["loader 1 b", "loader 1 w", "loader 1 d", "load "],
        "0:30 loader 1 dumping load 0 at north
         1:15 loader 1 break load 1
         3:20 loader 1 waiting for room load 1 at north
         3:45 load 0 raked out at north
         3:45 loader 1 dumping load 1 at north
         4:00 loader 1 done
         4:40 load 1 raked out at north",
    );
}

#[test]
fn a_wait_that_a_break_falls_into_is_a_wait_before_and_after_and_a_break_between() {
    let mut job = with_break(2.0, 80.0, 200.0);
    job.zones[0].room = Some(1);
    let run = expect_of(
        &job,
        &["loader 1 b", "loader 1 w", "loader 1 d", "load "],
        "0:30 loader 1 dumping load 0 at north
         1:15 loader 1 waiting for room load 1 at north
         1:20 loader 1 break load 1
         3:20 loader 1 waiting for room load 1 at north
         3:25 load 0 raked out at north
         3:25 loader 1 dumping load 1 at north
         3:40 loader 1 done
         4:20 load 1 raked out at north",
    );
    assert_eq!(loader_s(&run, 0, LoaderActivity::WaitingForRoom), 10.0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 120.0);
}

/// Three loaders, room for two at the face, a gate of 15 s half-way.
fn queues_at_face_and_gate(loaders: usize) -> Job {
    let mut job = with_loaders(without_rakers(one_and_one()), loaders);
    job.zones[0].need_m3 = 3.0;
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.passes = vec![Pass { passing_s: 15.0, ..gate() }];
    job.stockpiles[0].face = 2;
    job
}

#[test]
fn places_in_a_line_are_kept_over_a_break_and_nobody_is_served() {
    // Loader 2 stands at the gate from 0:25; it is free from 0:40, in the break. Loader 1 comes back to it at 0:55 and
    // joins the line behind it.
    let mut job = queues_at_face_and_gate(2);
    job.zones[0].need_m3 = 2.0;
    job.shift.breaks = vec![pause(&job, 30.0, 100.0)];
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:20 loader 2 hauling load 1 to north
         0:25 loader 1 passing the gate load 0
         0:25 loader 2 waiting at the gate load 1
         0:30 loader 2 break load 1
         0:40 loader 1 hauling load 0 to north
         0:45 loader 1 dumping load 0 at north
         0:50 loader 1 returning to pile
         0:55 loader 1 break
         1:40 loader 1 waiting at the gate
         1:40 loader 2 passing the gate load 1
         1:55 loader 1 passing the gate
         1:55 loader 2 hauling load 1 to north
         2:00 loader 2 dumping load 1 at north",
    );
}

#[test]
fn a_gate_that_is_left_at_the_instant_a_break_begins_is_entered_after_the_break() {
    // The loaders load until 0:20 and 0:40 and are at the gate 5 s later; it takes 30 s, so the first leaves it at 0:55, when the
    // break begins. The second goes through from 1:40 to 2:10, drives 5 s and dumps until 2:20.
    let mut job = without_rakers(with_loaders(with_break(2.0, 55.0, 100.0), 2));
    job.passes = vec![Pass { passing_s: 30.0, ..gate() }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    // Without a log, as in a study, what nobody can interfere with is not waited for.
    let study = Study::new(&Plan::new(&job).unwrap(), 1, Runs::Exactly(1), |_| {}).unwrap();
    assert_eq!(study.outcomes[0].completion.working, Duration::from_secs(140));
    assert_eq!(only_run(&job).outcome, study.outcomes[0]);
}

#[test]
fn a_pass_that_is_free_with_nobody_before_it_is_used_in_a_break() {
    let mut job = queues_at_face_and_gate(1);
    job.zones[0].need_m3 = 1.0;
    job.shift.breaks = vec![pause(&job, 10.0, 100.0)];
    expect_of(
        &job,
        &["loader", "load "],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:25 loader 1 passing the gate load 0
         0:40 loader 1 hauling load 0 to north
         0:45 loader 1 dumping load 0 at north
         0:50 load 0 raked out at north",
    );
}

#[test]
fn after_a_break_the_queues_are_served_by_who_joined_first() {
    // Loader 3 stands at the face from 0:00, loader 2 at the gate from 0:25; both could go on from 0:40, in the break.
    // Loader 1, back at the gate at 0:55, goes through it after loader 2, from 1:55 to 2:10.
    let mut job = queues_at_face_and_gate(3);
    job.shift.breaks = vec![pause(&job, 10.0, 100.0)];
    expect_of(
        &job,
        &["loader 2", "loader 3", "work"],
        "0:00 loader 2 loading load 1 at pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:10 work pauses
         0:10 loader 3 break
         0:20 loader 2 hauling load 1 to north
         0:25 loader 2 break load 1
         1:40 work resumes
         1:40 loader 3 loading load 2 at pile for north
         1:40 loader 2 passing the gate load 1
         1:55 loader 2 hauling load 1 to north
         2:00 loader 2 dumping load 1 at north
         2:00 loader 3 hauling load 2 to north
         2:05 loader 2 returning to pile
         2:05 loader 3 waiting at the gate load 2
         2:10 loader 3 passing the gate load 2
         2:10 loader 2 waiting at the gate
         2:25 loader 2 passing the gate
         2:25 loader 3 hauling load 2 to north
         2:30 loader 3 dumping load 2 at north",
    );
}

#[test]
fn after_a_break_rakers_go_on_before_loaders() {
    // In the break a heap waits for a raker and a loader for the face: at 1:40 the raker starts first.
    let run = only_run(&with_break(2.0, 35.0, 100.0));
    let job = with_break(2.0, 35.0, 100.0);
    let at_the_end: Vec<String> =
        lines(&job, &run).into_iter().filter(|line| line.starts_with("1:40")).collect();
    assert_eq!(
        at_the_end,
        [
            "1:40 work resumes",
            "1:40 raker 1 raking load 0 at north",
            "1:40 loader 1 loading load 1 at pile for north"
        ]
    );
}

#[test]
fn a_walk_is_put_down_and_taken_up_again() {
    // The walk of 30 s begins at 1:25; 15 s of it are left at 1:40.
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 30.0);
    job.shift.breaks = vec![pause(&job, 100.0, 160.0)];
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:25 raker 1 walking to south
         1:40 raker 1 break at south
         2:40 raker 1 walking to south
         2:55 raker 1 raking load 1 at south",
    );
}

#[test]
fn a_raker_who_stands_clear_when_a_break_begins_goes_on_after_it() {
    // 40 of 50 s are raked when the second dump begins at 1:15; the break is 1:17 to 1:40.
    let mut job = with_break(2.0, 77.0, 100.0);
    job.raking.stand_clear = true;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:15 raker 1 standing clear load 0 at north
         1:17 raker 1 break load 0 at north
         1:40 raker 1 raking load 0 at north
         1:50 load 0 raked out at north
         1:50 raker 1 raking load 1 at north
         2:40 load 1 raked out at north",
    );
}

#[test]
fn a_dump_that_outlasts_a_break_keeps_the_raker_standing_clear_after_it() {
    // Dumps of 60 s: 0:30 to 1:30 and 2:10 to 3:10. 40 of 50 s are raked before the second; the break is 2:20 to 2:40.
    let mut job = with_break(2.0, 140.0, 160.0);
    job.raking.stand_clear = true;
    job.loaders[0].dump_s = 60.0;
    expect_of(
        &job,
        &["raker", "load "],
        "0:00 raker 1 waiting for a heap at north
         1:30 raker 1 raking load 0 at north
         2:10 raker 1 standing clear load 0 at north
         2:20 raker 1 break load 0 at north
         2:40 raker 1 standing clear load 0 at north
         3:10 raker 1 raking load 0 at north
         3:20 load 0 raked out at north
         3:20 raker 1 raking load 1 at north
         4:10 load 1 raked out at north",
    );
}

#[test]
fn several_breaks_each_hold_the_work_up() {
    // 10 heaps of 50 s follow one another from 0:35; 30 s and 100 s of breaks come between.
    let mut job = with_break(10.0, 60.0, 90.0);
    job.shift.breaks.push(pause(&job, 200.0, 300.0));
    assert_eq!(only_run(&job).outcome.completion.working, Duration::from_secs(535 + 130));
}

#[test]
fn breaks_that_touch_are_one_and_nothing_is_begun_between_them() {
    // The loader is back at the pile at 0:45 and 1:30; from 1:00 to 3:00 nothing new is loaded.
    let mut job = with_break(3.0, 60.0, 120.0);
    job.shift.breaks.push(pause(&job, 120.0, 180.0));
    expect_of(
        &job,
        &["work", "loader 1 loading"],
        "0:00 loader 1 loading load 0 at pile for north
         0:45 loader 1 loading load 1 at pile for north
         1:00 work pauses
         3:00 work resumes
         3:00 loader 1 loading load 2 at pile for north",
    );
}

#[test]
fn loaders_back_in_a_break_join_the_line_for_the_face_and_one_that_is_done_is_done() {
    // Loader 2 is back before loader 1, which drives back at 0.5 m/s, and loads first after the break. Loader 3 does not fit
    // through the gate to south: it brings the last that north needs, and is done when it is back, in the break.
    let zones = vec![zone("north", 3.0, 0, 20.0), zone("south", 2.0, 0, 20.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 3);
    job.zones[1].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.passes = vec![gate()];
    job.stockpiles[0].face = 2;
    job.loaders[0].empty_m_per_s = 0.5;
    job.loaders[2] = Loader { load_s: 40.0, width_m: 2.5, ..job.loaders[2].clone() };
    job.shift.breaks = vec![pause(&job, 30.0, 200.0)];
    let run = expect_of(
        &job,
        &["loader 3", "work", "loader 1 l", "loader 2 l", "loader 1 b", "loader 2 b"],
        "0:00 loader 1 loading load 0 at pile for north
         0:00 loader 2 loading load 1 at pile for north
         0:00 loader 3 waiting for the face of pile for north
         0:20 loader 3 loading load 2 at pile for north
         0:30 work pauses
         0:45 loader 2 break
         1:00 loader 3 hauling load 2 to north
         1:10 loader 3 dumping load 2 at north
         1:15 loader 1 break
         1:15 loader 3 returning to pile
         1:25 loader 3 done
         3:20 work resumes
         3:20 loader 2 loading load 3 at pile for south
         3:20 loader 1 loading load 4 at pile for south",
    );
    let on_break = [0, 1, 2].map(|loader| loader_s(&run, loader, LoaderActivity::OnBreak));
    assert_eq!(on_break, [125.0, 155.0, 0.0]);
}
