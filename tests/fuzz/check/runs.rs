//! A job that was accepted can be made ready and run, and its books close.

use sim::{Handbook, Job, LoaderActivity, Micros, Outcome, Plan, RakerActivity, Replay, Runs, SECOND, Study};

#[path = "../../model/books.rs"]
mod books;
#[path = "../../model/log.rs"]
#[allow(dead_code, reason = "only what the books need of it")]
mod log;
#[path = "../../model/waits.rs"]
mod waits;

/// Runs of each job.
const RUNS: u32 = 2;
/// Loads by the handbook from which on a job is not run, and really moved from which on the log is not looked through.
const LOADS: f64 = 1_000.0;
const LOGGED: u32 = 120;
/// Days and stoppages from which on it is not either.
const DAYS: Micros = 30;
const STOPPAGES: f64 = 500.0;

pub(crate) fn check(job: &Job) {
    let plan = Plan::new(job).unwrap_or_else(|error| panic!("accepted, but: {error}"));
    assert_eq!(Plan::check(job), Ok(()));
    let handbook = Handbook::new(job);
    assert!(handbook.volume_m3.is_finite() && !handbook.plain_s.is_nan(), "{handbook:?}");
    if handbook.loads >= LOADS {
        return;
    }
    match Study::new(&plan, books::SEED, Runs::Exactly(RUNS), |_| ()) {
        Err(stuck) => assert!(!stuck.why.is_empty()),
        Ok(study) => {
            study.outcomes.iter().for_each(|outcome| totals(job, outcome));
            if let Some(outcome) = study.outcomes.iter().find(|outcome| short_log(job, outcome)) {
                let replay = Replay::new(&plan, books::SEED, outcome.run).unwrap_or_else(|e| panic!("{e}"));
                assert_eq!(replay.outcome, *outcome, "replayed");
                books::check(job, &replay);
            }
        }
    }
}

/// Every machine and every person is accounted for to the last microsecond, and no figure is none.
fn totals(job: &Job, outcome: &Outcome) {
    let time = outcome.finish.working;
    let sum = |times: &[Micros]| times.iter().sum::<Micros>();
    assert!(outcome.completion.clock <= outcome.finish.clock && time <= outcome.finish.clock, "{outcome:?}");
    assert!(outcome.loaders.iter().chain(&outcome.rakers).all(|time| *time >= 0), "{outcome:?}");
    assert_eq!(sum(&outcome.loaders), time * job.loaders.len() as Micros, "loaders");
    assert_eq!(sum(&outcome.rakers), time * job.rakers.len() as Micros, "rakers");
    assert!(outcome.progress.is_sorted() && outcome.progress[0] >= 0, "{outcome:?}");
    let figures = [outcome.placed_m3, outcome.short_m3, outcome.fuel_l, outcome.labour_h, outcome.cost];
    assert!(figures.iter().all(|figure| figure.is_finite() && *figure >= 0.0), "{outcome:?}");
    let slack = 1e-9 * (1.0 + outcome.placed_m3);
    assert!(outcome.left_over_m3.is_finite() && outcome.left_over_m3 >= -slack, "{outcome:?}");
    let activities = (outcome.loaders.len(), outcome.rakers.len());
    assert_eq!(activities, (LoaderActivity::COUNT, RakerActivity::COUNT));
}

fn short_log(job: &Job, outcome: &Outcome) -> bool {
    let gaps = job.loaders.iter().filter_map(|loader| Some(loader.stoppages.as_ref()?.mean_gap_s));
    let worked_s = (outcome.finish.working / SECOND) as f64;
    let stoppages: f64 = gaps.map(|gap_s| worked_s / gap_s).sum();
    let days = outcome.finish.clock / (86_400 * SECOND);
    outcome.loads <= LOGGED && days <= DAYS && stoppages <= STOPPAGES
}
