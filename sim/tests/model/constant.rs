//! All-constant jobs against hand arithmetic, to the microsecond.

use super::jobs::*;
use super::log::only_run;
use sim::*;

#[test]
fn a_slow_raker_sets_the_pace_of_a_constant_job() {
    // The first heap lies at 20 + 10 + 5 = 35 s; the loader's cycle is 45 s, so ten heaps of 50 s follow one another.
    let run = only_run(&one_and_one());
    assert_eq!(run.outcome.completion.working, Duration::from_secs(35 + 10 * 50));
    assert_eq!(run.outcome.loads, 10);
    assert!((run.outcome.placed_m3 - 10.0).abs() < 1e-12);
}

#[test]
fn a_fast_raker_waits_for_the_loader() {
    // The loader's cycle is 20 + 10 + 5 + 10 = 45 s; the tenth heap lies at 9 x 45 + 35 s and takes 3.6 s.
    let mut job = one_and_one();
    job.rakers[0].rate_m3_per_h = 1_000.0;
    let run = only_run(&job);
    assert_eq!(run.outcome.completion.working, Duration::from_micros(443_600_000));
    assert_eq!(run.accounts.rakers[0].time(RakerActivity::Raking), Duration::from_secs(36));
}

#[test]
fn room_for_one_heap_makes_the_loader_wait_until_it_is_raked_out() {
    // The first heap lies at 35 s and is gone at 85 s; each later one is dumped when the one before it is gone: 55 s.
    let mut job = one_and_one();
    job.zones[0].room = Some(1);
    let run = only_run(&job);
    assert_eq!(run.outcome.completion.working, Duration::from_secs(85 + 9 * 55));
}
