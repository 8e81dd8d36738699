//! Section 5: set-up is a step of everybody before the first load, clean-up one after the last heap.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Base job of one load with set-up and clean-up of so many seconds.
fn once(set_up_s: f64, clean_up_s: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.0;
    job.shift.set_up_s = Distribution::Constant(set_up_s);
    job.shift.clean_up_s = Distribution::Constant(clean_up_s);
    job
}

#[test]
fn everybody_sets_up_before_the_first_load_and_cleans_up_after_the_last_heap() {
    let run = expect(
        &once(60.0, 90.0),
        "0:00 raker 1 set-up at north
         0:00 loader 1 set-up
         1:00 raker 1 waiting for a heap at north
         1:00 loader 1 loading load 0 at pile for north
         1:20 loader 1 hauling load 0 to north
         1:30 loader 1 dumping load 0 at north
         1:35 raker 1 raking load 0 at north
         1:35 loader 1 returning to pile
         1:45 loader 1 done
         2:25 load 0 raked out at north
         2:25 raker 1 clean-up at north
         2:25 loader 1 clean-up",
    );
    assert_eq!(run.outcome.completion.working, Duration::from_secs(145));
    assert_eq!(run.outcome.finish.working, Duration::from_secs(235));
    assert_eq!(loader_s(&run, 0, LoaderActivity::SetUp), 60.0);
    assert_eq!(raker_s(&run, 0, RakerActivity::CleanUp), 90.0);
}

#[test]
fn the_log_names_a_pile_only_while_a_loader_is_bound_for_one_at_it_or_carries_from_it() {
    use LoaderActivity as L;
    let run = only_run(&once(60.0, 90.0));
    let piles = |of: L| -> Vec<Option<usize>> {
        let told = run.log.iter().filter_map(|entry| match entry.event {
            Event::Loader { activity, stockpile, .. } if activity == of => Some(stockpile),
            _ => None,
        });
        told.collect()
    };
    for activity in [L::SetUp, L::Done, L::CleanUp] {
        assert_eq!(piles(activity), [None], "{activity:?}");
    }
    for activity in [L::Loading, L::Hauling, L::Dumping, L::Returning] {
        assert_eq!(piles(activity), [Some(0)], "{activity:?}");
    }
}

#[test]
fn a_loader_still_returning_joins_the_clean_up() {
    // A fast raker is done at 0:36; the loader is back at 0:45; clean-up is 0:36 to 0:56.
    let mut job = once(0.0, 20.0);
    job.rakers[0].rate_m3_per_h = 3_600.0;
    let run = expect(
        &job,
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         0:35 loader 1 returning to pile
         0:36 load 0 raked out at north
         0:36 raker 1 clean-up at north
         0:45 loader 1 clean-up",
    );
    assert_eq!(run.outcome.finish.working, Duration::from_secs(56));
    assert_eq!(loader_s(&run, 0, LoaderActivity::CleanUp), 11.0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::Returning), 10.0);
}

#[test]
fn the_time_accounts_close_at_the_finish_even_on_a_loader_still_returning() {
    let mut job = once(0.0, 5.0);
    job.rakers[0].rate_m3_per_h = 3_600.0;
    let run = only_run(&job);
    assert_eq!(run.outcome.finish.working, Duration::from_secs(41));
    assert_eq!(loader_s(&run, 0, LoaderActivity::Returning), 6.0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::CleanUp), 0.0);
}

#[test]
fn a_loader_still_at_a_gate_goes_through_it_and_joins_the_clean_up() {
    // Back: 5 s, gate 4 s, 5 s from 0:39: at the pile at 0:53; clean-up is 0:40 to 1:40.
    let mut job = once(0.0, 60.0);
    job.rakers[0].rate_m3_per_h = 3_600.0;
    job.passes = vec![gate()];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    expect_of(
        &job,
        &["loader", "raker 1 c"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:25 loader 1 passing the gate load 0
         0:29 loader 1 hauling load 0 to north
         0:34 loader 1 dumping load 0 at north
         0:39 loader 1 returning to pile
         0:40 raker 1 clean-up at north
         0:44 loader 1 passing the gate
         0:48 loader 1 returning to pile
         0:53 loader 1 clean-up",
    );
}

#[test]
fn without_clean_up_the_finish_is_the_completion() {
    let run = only_run(&once(30.0, 0.0));
    assert_eq!(run.outcome.finish, run.outcome.completion);
    assert_eq!(run.outcome.finish.working, Duration::from_secs(115));
}

#[test]
fn a_set_up_is_not_interrupted_and_the_rest_of_the_break_is_a_break() {
    let mut job = once(60.0, 0.0);
    job.shift.breaks = vec![pause(&job, 30.0, 90.0)];
    let run = expect_of(
        &job,
        &["loader 1 s", "loader 1 b", "loader 1 l", "raker"],
        "0:00 raker 1 set-up at north
         0:00 loader 1 set-up
         1:00 raker 1 break at north
         1:00 loader 1 break
         1:30 raker 1 waiting for a heap at north
         1:30 loader 1 loading load 0 at pile for north
         2:05 raker 1 raking load 0 at north",
    );
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 30.0);
}

#[test]
fn a_clean_up_is_not_interrupted_once_begun() {
    // It begins at 1:25; a break at 1:40 and the end of the day at 2:00 do not stop it.
    let mut job = once(0.0, 100.0);
    job.shift.breaks = vec![pause(&job, 100.0, 110.0)];
    job.shift.end_s = Some(job.shift.start_s + 120.0);
    let run = only_run(&job);
    assert_eq!(
        run.outcome.finish,
        Moment { working: Duration::from_secs(185), clock: Duration::from_secs(185) }
    );
    assert_eq!(raker_s(&run, 0, RakerActivity::CleanUp), 100.0);
}

#[test]
fn a_clean_up_begins_in_working_hours() {
    // No rakers: the last dump ends at 0:35, in a break; the clean-up begins when it is over, at 1:40.
    let mut job = without_rakers(once(0.0, 30.0));
    job.shift.breaks = vec![pause(&job, 33.0, 100.0)];
    let run = expect_of(
        &job,
        &["loader", "load "],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 returning to pile
         0:45 loader 1 done
         1:40 loader 1 clean-up",
    );
    assert_eq!(run.outcome.completion.working, Duration::from_secs(35));
    assert_eq!(run.outcome.finish.working, Duration::from_secs(130));
}

#[test]
fn a_clean_up_left_from_the_evening_is_done_next_morning() {
    // The day ends at 0:33; the loader is back at 0:45, and the night falls.
    let mut job = without_rakers(once(0.0, 30.0));
    job.shift.end_s = Some(job.shift.start_s + 33.0);
    let run = only_run(&job);
    assert_eq!(
        run.outcome.completion,
        Moment { working: Duration::from_secs(35), clock: Duration::from_secs(35) }
    );
    assert_eq!(
        run.outcome.finish,
        Moment { working: Duration::from_secs(75), clock: Duration::from_secs(86_400 + 30) }
    );
}

#[test]
fn with_nothing_to_place_the_crew_sets_up_and_cleans_up() {
    let mut job = once(60.0, 30.0);
    job.zones[0].need_m3 = 0.0;
    let run = only_run(&job);
    assert_eq!((run.outcome.loads, run.outcome.finish.working), (0, Duration::from_secs(90)));
    assert_eq!(run.outcome.completion.working, Duration::from_secs(60));
}

#[test]
fn a_loader_that_waits_for_a_truck_nobody_needs_any_more_joins_the_clean_up() {
    // Loader 2, too wide for the gate, reaches north only from the far pile, whose truck is due in an hour. Loader 1
    // fills north with two loads from the near pile by 1:20.
    let mut job = with_loaders(without_rakers(once(0.0, 30.0)), 2);
    job.zones[0].need_m3 = 2.0;
    job.loaders[1].width_m = 2.5;
    job.passes = vec![Pass { passing_s: 0.0, ..gate() }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 40.0, passes: vec![] });
    let late_s = Distribution::Constant(0.0);
    let truck = Delivery { at_s: job.shift.start_s + 3_600.0, late_s, volume_m3: 1.0 };
    job.stockpiles.push(Stockpile { deliveries: vec![truck], ..pile("far", 0.0) });
    let run = expect_of(
        &job,
        &["loader 2"],
        "0:00 loader 2 waiting for a delivery
         1:20 loader 2 clean-up",
    );
    assert_eq!(run.outcome.finish.working, Duration::from_secs(110));
}
