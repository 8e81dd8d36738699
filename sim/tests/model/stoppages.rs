//! Section 5: gaps are exponential in a loader's operating time; a stoppage interrupts the step, holds the loader with
//! whatever it occupies, and the rest of the step follows.

use super::jobs::*;
use super::log::*;
use super::time_accounts;
use sim::*;

/// A long job of one loader that stops for 7 s about once in 100 s of operating time.
fn stopping(loads: f64) -> Job {
    let mut job = without_rakers(one_and_one());
    (job.zones[0].need_m3, job.stockpiles[0].on_hand_m3) = (loads, loads);
    job.loaders[0].stoppages = Some(Stoppages { mean_gap_s: 100.0, length_s: Distribution::Constant(7.0) });
    job
}

fn replay(job: &Job, run: u32) -> Replay {
    let replay = Replay::new(&Plan::new(job).unwrap(), time_accounts::SEED, run).unwrap();
    time_accounts::check(job, &replay);
    replay
}

/// A stoppage: how long the loader had operated before it, how long it lasts, and in what it falls.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Stop {
    operated: Duration,
    lasts: Duration,
    during: LoaderActivity,
}

fn stops(run: &Replay, of: usize) -> Vec<Stop> {
    use LoaderActivity as L;
    let turns: Vec<(Duration, L)> = run
        .log
        .iter()
        .filter_map(|entry| match entry.event {
            Event::Loader { loader, activity, .. } if loader == of => Some((entry.at, activity)),
            _ => None,
        })
        .collect();
    let (mut operated, mut found) = (Duration::ZERO, Vec::new());
    for pair in turns.windows(2) {
        let ((from, activity), (to, _)) = (pair[0], pair[1]);
        if matches!(activity, L::Loading | L::Hauling | L::Returning | L::Passing | L::Dumping) {
            operated += to - from;
            if pair[1].1 == L::Stopped {
                found.push(Stop { operated, lasts: Duration::ZERO, during: activity });
            }
        } else if activity == L::Stopped {
            found.last_mut().unwrap().lasts += to - from;
        }
    }
    found
}

#[test]
fn a_stoppage_interrupts_a_step_and_the_rest_of_the_step_follows() {
    // However often it stops: 20 s of loading a load, 10 of hauling, 5 of dumping, 10 of returning, and 7 s a stoppage.
    for number in 0..20 {
        let run = replay(&stopping(40.0), number);
        let stops = stops(&run, 0);
        assert!(!stops.is_empty() && stops.iter().all(|stop| stop.lasts == Duration::from_secs(7)));
        assert_eq!(loader_s(&run, 0, LoaderActivity::Loading), 40.0 * 20.0);
        assert_eq!(loader_s(&run, 0, LoaderActivity::Hauling), 40.0 * 10.0);
        assert_eq!(loader_s(&run, 0, LoaderActivity::Dumping), 40.0 * 5.0);
        assert_eq!(loader_s(&run, 0, LoaderActivity::Returning), 39.0 * 10.0);
        let stopped = 7 * stops.len() as i64;
        assert_eq!(run.outcome.completion.working, Duration::from_secs(40 * 45 - 10 + stopped));
    }
}

#[test]
fn gaps_between_stoppages_are_exponential_in_operating_time() {
    // Of some 18,000 gaps of mean 100 s: mean, share over 100 s (1/e) and over 250 s (exp -2.5), within 4 standard
    // errors.
    let run = Replay::new(&Plan::new(&stopping(40_000.0)).unwrap(), time_accounts::SEED, 0).unwrap();
    let at: Vec<f64> = stops(&run, 0).iter().map(|stop| stop.operated.as_secs_f64()).collect();
    let gaps: Vec<f64> = at.iter().scan(0.0, |last, at| Some(at - std::mem::replace(last, *at))).collect();
    let n = gaps.len() as f64;
    assert!(n > 15_000.0);
    let mean = gaps.iter().sum::<f64>() / n;
    assert!((mean - 100.0).abs() < 4.0 * 100.0 / n.sqrt(), "mean gap {mean}");
    for limit in [100.0, 250.0] {
        let expected = (-limit / 100.0_f64).exp();
        let share = gaps.iter().filter(|gap| **gap > limit).count() as f64 / n;
        let error = (expected * (1.0 - expected) / n).sqrt();
        assert!((share - expected).abs() < 4.0 * error, "{share} of the gaps over {limit} s, not {expected}");
    }
}

#[test]
fn waiting_brings_no_stoppage_nearer() {
    // The same random numbers with and without long waits for room: every stoppage comes after the same operating time.
    let free = stopping(40.0);
    let mut waiting = free.clone();
    (waiting.rakers, waiting.raking.spread_share) = (vec![raker("raker", 0)], 0.0);
    waiting.rakers[0].rate_m3_per_h = 10.0;
    waiting.zones[0].room = Some(1);
    for number in 0..20 {
        let (free, waiting) = (replay(&free, number), replay(&waiting, number));
        assert!(loader_s(&waiting, 0, LoaderActivity::WaitingForRoom) > 10_000.0);
        let (free, waiting) = (stops(&free, 0), stops(&waiting, 0));
        // The last return belongs to the second only: the first is over with the last dump.
        assert_eq!(free[..], waiting[..free.len()]);
    }
}

#[test]
fn a_loader_stopped_in_a_gate_keeps_the_others_out() {
    // That nobody else passes meanwhile is checked for every run here; that it happens, below.
    let mut job = with_loaders(stopping(100.0), 3);
    job.passes = vec![Pass { passing_s: 15.0, ..gate() }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    let mut held = 0;
    for number in 0..20 {
        let run = replay(&job, number);
        held += stops(&run, 0).iter().filter(|stop| stop.during == LoaderActivity::Passing).count();
    }
    assert!(held > 20, "{held} stoppages in the gate");
}

#[test]
fn rakers_stand_clear_of_a_loader_that_stops_while_dumping() {
    let mut job = stopping(100.0);
    (job.rakers, job.raking.spread_share) = (vec![raker("raker", 0)], 0.0);
    job.raking.stand_clear = true;
    // That nobody rakes while a loader dumps, stopped or not, is checked for every run here; that it happens, below.
    let mut held = 0;
    for number in 0..20 {
        let (mut doing, mut dumping) = (RakerActivity::Waiting, false);
        for entry in &replay(&job, number).log {
            match entry.event {
                Event::Raker { activity, .. } => doing = activity,
                Event::Loader { activity: LoaderActivity::Stopped, .. } if dumping => {
                    assert!(!matches!(doing, RakerActivity::Raking));
                    held += usize::from(doing == RakerActivity::StandingClear);
                }
                Event::Loader { activity, .. } => dumping = activity == LoaderActivity::Dumping,
                _ => {}
            }
        }
    }
    assert!(held > 20, "{held} stoppages beside a raker");
}

#[test]
fn each_loader_has_stoppages_of_its_own_that_no_other_loader_disturbs() {
    let alone = replay(&stopping(40.0), 3);
    let both = replay(&with_loaders(stopping(80.0), 2), 3);
    let (alone, first, second) = (stops(&alone, 0), stops(&both, 0), stops(&both, 1));
    assert!(alone.len() > 5 && first.len() > 5);
    let common = alone.len().min(first.len());
    let at = |stops: &[Stop]| stops[..common].iter().map(|stop| stop.operated).collect::<Vec<_>>();
    assert_eq!(at(&alone), at(&first));
    assert_ne!(alone[0].operated, second[0].operated);
}

#[test]
fn a_loader_stopped_when_a_break_begins_stays_stopped() {
    // Hours of stoppage: the break of 100 s in the middle adds nothing, and is not entered as one.
    let mut job = stopping(40.0);
    job.loaders[0].stoppages =
        Some(Stoppages { mean_gap_s: 600.0, length_s: Distribution::Constant(7_200.0) });
    let plain = replay(&job, 0);
    let first = stops(&plain, 0)[0];
    let begins_s = first.operated.as_secs_f64() + 1_000.0;
    job.shift.breaks = vec![pause(&job, begins_s, begins_s + 100.0)];
    let run = replay(&job, 0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 0.0);
    assert_eq!(run.outcome.finish, plain.outcome.finish);
}
