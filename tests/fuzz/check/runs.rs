//! A job that was accepted can be made ready and run, and its time accounts close.

use sim::{Duration, Handbook, Job, Outcome, Plan, Replay, Runs, Study};

#[path = "../../../sim/tests/model/log.rs"]
#[allow(dead_code, reason = "only what the time accounts need of it")]
mod log;
#[path = "../../../sim/tests/model/time_accounts.rs"]
mod time_accounts;
#[path = "../../../sim/tests/model/waits.rs"]
mod waits;

/// Runs of each job.
const RUNS: u32 = 2;
/// Loads by the handbook from which on a job is not run, and really moved from which on the log is not looked through.
const LOADS: f64 = 1_000.0;
const LOGGED: u32 = 120;
/// Days and stoppages from which on it is not either.
const DAYS: f64 = 30.0;
const STOPPAGES: f64 = 500.0;

pub(crate) fn check(job: &Job) {
    let plan = Plan::new(job).unwrap_or_else(|error| panic!("accepted, but: {error}"));
    assert_eq!(Plan::check(job), Ok(()));
    let handbook = Handbook::new(job);
    assert!(handbook.volume_m3.is_finite() && !handbook.plain_s.is_nan(), "{handbook:?}");
    if handbook.loads >= LOADS {
        return;
    }
    match Study::new(&plan, time_accounts::SEED, Runs::Exactly(RUNS), |_| ()) {
        Err(deadlock) => assert!(!deadlock.why.to_string().is_empty()),
        Ok(study) => {
            study.outcomes.iter().for_each(|outcome| totals(job, outcome));
            if let Some(outcome) = study.outcomes.iter().find(|outcome| short_log(job, outcome)) {
                let replay =
                    Replay::new(&plan, time_accounts::SEED, outcome.run).unwrap_or_else(|e| panic!("{e}"));
                assert_eq!(replay.outcome, *outcome, "replayed");
                time_accounts::check(job, &replay);
            }
        }
    }
}

/// Every machine and every person is accounted for to the last microsecond, and no figure is none.
fn totals(job: &Job, outcome: &Outcome) {
    let time = outcome.finish.working;
    assert!(outcome.completion.clock <= outcome.finish.clock && time <= outcome.finish.clock, "{outcome:?}");
    assert!(outcome.loaders.iter().all(|(_, time)| time >= Duration::ZERO), "{outcome:?}");
    assert!(outcome.rakers.iter().all(|(_, time)| time >= Duration::ZERO), "{outcome:?}");
    assert_eq!(outcome.loaders.total(), time * job.loaders.len() as i64, "loaders");
    assert_eq!(outcome.rakers.total(), time * job.rakers.len() as i64, "rakers");
    assert!(outcome.progress.is_sorted() && outcome.progress[0] >= Duration::ZERO, "{outcome:?}");
    let figures = [outcome.placed_m3, outcome.short_m3, outcome.fuel_l, outcome.labour_h, outcome.cost];
    assert!(figures.iter().all(|figure| figure.is_finite() && *figure >= 0.0), "{outcome:?}");
    let slack = 1e-9 * (1.0 + outcome.placed_m3);
    assert!(outcome.left_over_m3.is_finite() && outcome.left_over_m3 >= -slack, "{outcome:?}");
}

fn short_log(job: &Job, outcome: &Outcome) -> bool {
    let gaps = job.loaders.iter().filter_map(|loader| Some(loader.stoppages.as_ref()?.mean_gap_s));
    let worked_s = outcome.finish.working.as_secs_f64().floor();
    let stoppages: f64 = gaps.map(|gap_s| worked_s / gap_s).sum();
    let days = outcome.finish.clock / Duration::from_hours(24);
    outcome.loads <= LOGGED && days <= DAYS && stoppages <= STOPPAGES
}
