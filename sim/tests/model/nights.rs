//! Section 5: the end of the day works like a break; a night lasts from when the last of the crew has stopped until the
//! next start of day.

use super::jobs::*;
use super::log::*;
use sim::*;

/// Base job of so many loads with days of one minute.
fn minute_days(loads: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = loads;
    job.shift.end_s = Some(job.shift.start_s + 60.0);
    job
}

#[test]
fn a_night_falls_when_the_last_of_the_crew_has_stopped_and_lasts_until_the_start_of_day() {
    // The loader finishes its cycle at 1:30. Raking: 25 s on the first day, 25 + 35 s on the second, 15 s on the third.
    let run = expect(
        &minute_days(2.0),
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:00 work ends for the day
         1:00 raker 1 break load 0 at north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to pile
         1:30 raker 1 night load 0 at north
         1:30 loader 1 night
         24:00:00 work resumes
         24:00:00 raker 1 raking load 0 at north
         24:00:00 loader 1 done
         24:00:25 load 0 raked out at north
         24:00:25 raker 1 raking load 1 at north
         24:01:00 work ends for the day
         24:01:00 raker 1 night load 1 at north
         24:01:00 loader 1 night
         48:00:00 work resumes
         48:00:00 raker 1 raking load 1 at north
         48:00:00 loader 1 done
         48:00:15 load 1 raked out at north",
    );
    let (clock_s, working_s) = (48 * 3_600 + 15, 90 + 60 + 15);
    let expected = Moment { clock: Duration::from_secs(clock_s), working: Duration::from_secs(working_s) };
    assert_eq!(run.outcome.completion, expected);
    assert_eq!(run.outcome.finish, expected);
    assert_eq!(raker_s(&run, 0, RakerActivity::OnBreak), 30.0);
}

#[test]
fn a_loader_starts_no_load_after_hours_and_goes_on_next_morning() {
    // Back at 1:30 with a third load to fetch, it stops at the pile: the night falls then.
    let run = expect_of(
        &minute_days(3.0),
        &["loader"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to pile
         1:30 loader 1 night
         24:00:00 loader 1 loading load 2 at pile for north
         24:00:20 loader 1 hauling load 2 to north
         24:00:30 loader 1 dumping load 2 at north
         24:00:35 loader 1 returning to pile
         24:00:45 loader 1 done
         24:01:00 loader 1 night
         48:00:00 loader 1 done
         48:01:00 loader 1 night
         72:00:00 loader 1 done",
    );
    assert_eq!(run.outcome.completion.clock, Duration::from_secs(72 * 3_600 + 5));
}

#[test]
fn a_loader_waiting_for_room_at_the_end_of_the_day_keeps_its_place_over_the_night() {
    // Room for one: it waits from 1:15 (after hours: break) and the heap is raked out 25 s into the second day.
    let mut job = minute_days(2.0);
    job.zones[0].room = Some(1);
    expect_of(
        &job,
        &["loader", "work"],
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:00 work ends for the day
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 night load 1
         24:00:00 work resumes
         24:00:00 loader 1 waiting for room load 1 at north
         24:00:25 loader 1 dumping load 1 at north
         24:00:30 loader 1 returning to pile
         24:00:40 loader 1 done
         24:01:00 work ends for the day
         24:01:00 loader 1 night
         48:00:00 work resumes
         48:00:00 loader 1 done",
    );
}

#[test]
fn breaks_come_back_every_day() {
    // A day is 60 s with a break from 0:10 to 0:20: the raker works 40 - 60 and 0 - 10, 20 - 60 ... The first heap lies
    // at 0:35.
    let mut job = minute_days(2.0);
    job.shift.breaks = vec![pause(&job, 40.0, 50.0)];
    // Raked: 35-40, 50-60; second day 0-35 (first heap), 35-40, 50-60; third day 35 s.
    expect_of(
        &job,
        &["load ", "work"],
        "0:40 work pauses
         0:50 work resumes
         1:00 work ends for the day
         24:00:00 work resumes
         24:00:35 load 0 raked out at north
         24:00:40 work pauses
         24:00:50 work resumes
         24:01:00 work ends for the day
         48:00:00 work resumes
         48:00:35 load 1 raked out at north",
    );
}

#[test]
fn without_an_end_of_day_the_crew_goes_on_through_the_night_with_a_break_each_day() {
    // One heap of 1 m3 takes 30 h; the break of half an hour at 9:00 comes twice.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.0;
    job.rakers[0].rate_m3_per_h = 1.0 / 30.0;
    job.shift.breaks = vec![pause(&job, 3_600.0, 5_400.0)];
    let run = expect_of(
        &job,
        &["load ", "work"],
        "1:00:00 work pauses
         1:30:00 work resumes
         25:00:00 work pauses
         25:30:00 work resumes
         31:00:35 load 0 raked out at north",
    );
    assert_eq!(run.outcome.finish.working, run.outcome.finish.clock);
}

#[test]
fn the_night_starts_no_sooner_than_the_day_ends() {
    // Everything is done well before the end of the day: no night.
    let mut job = minute_days(1.0);
    job.shift.end_s = Some(job.shift.start_s + 86.0);
    let run = only_run(&job);
    assert_eq!(
        run.outcome.finish,
        Moment { working: Duration::from_secs(85), clock: Duration::from_secs(85) }
    );
}

#[test]
fn a_raker_who_walks_at_the_end_of_the_day_walks_on_next_morning() {
    // The walk of 30 s begins at 1:25; the day ends at 1:30; 25 s are left.
    let zones = vec![zone("north", 1.0, 0, 20.0), zone("south", 1.0, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 30.0);
    job.shift.end_s = Some(job.shift.start_s + 90.0);
    expect_of(
        &job,
        &["raker"],
        "0:00 raker 1 waiting for a heap at north
         0:35 raker 1 raking load 0 at north
         1:25 raker 1 walking to south
         1:30 raker 1 night at south
         24:00:00 raker 1 walking to south
         24:00:25 raker 1 raking load 1 at south",
    );
}
