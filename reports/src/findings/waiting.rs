//! Who waits for whom.

mod pace;

use crate::forecast::run::Forecast;
use pace::{Crew, Tried};
use serde::Serialize;
use sim::{Accounts, Duration, Job, LoaderActivity, LoaderTimes, RakerActivity, RakerTimes, Relief, Study};

/// Names of [`LoaderActivity`]'s columns in files, in its order.
pub const LOADER_KEYS: [&str; LoaderActivity::COUNT] = [
    "set_up",
    "loading",
    "hauling",
    "returning",
    "passing",
    "waiting_for_face",
    "waiting_for_pass",
    "waiting_for_room",
    "waiting_for_delivery",
    "dumping",
    "stopped",
    "on_break",
    "done",
    "clean_up",
];

/// Names of [`RakerActivity`]'s columns in files, in its order.
pub const RAKER_KEYS: [&str; RakerActivity::COUNT] =
    ["set_up", "raking", "waiting", "walking", "standing_clear", "on_break", "clean_up"];

/// Where the time goes and who waits for whom.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WhoWaits {
    /// The finding in one short sentence, fit for a title.
    pub title: String,
    /// The finding in a few words, fit for a column: `loader for the rake, 34 %`.
    pub short: String,
    /// What follows from it.
    pub sentence: String,
    /// Shares of the time on the job of all loaders together, in the order of [`LoaderActivity::ALL`].
    pub loaders: Vec<Part>,
    /// Shares of the time on the job of all rakers together, in the order of [`RakerActivity::ALL`]; empty without rakers.
    pub rakers: Vec<Part>,
    /// The same for each of them.
    pub each: Vec<Worker>,
}

/// One part of the time on the job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Part {
    /// Name of the column in files.
    pub key: &'static str,
    /// Plain words for it.
    pub words: &'static str,
    /// Share of the time on the job, nights out \[0 to 1\].
    pub share: f64,
    /// Mean time in a run \[min\].
    pub minutes: f64,
}

/// What somebody does on the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// Drives a loader.
    Loader,
    /// Rakes.
    Raker,
}

/// Where the time of one loader or raker goes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Worker {
    /// Name in the scenario.
    pub name: String,
    /// What they do.
    pub role: Role,
    /// Mean loads in a run; `None` for a raker.
    pub loads: Option<f64>,
    /// Where the time goes.
    pub parts: Vec<Part>,
}

/// Where the time goes, over all runs.
pub fn who_waits(forecast: &Forecast) -> WhoWaits {
    who_waits_with(&forecast.scenario.job, &forecast.study, &forecast.relief)
}

/// The same for any runs of a job, with what would help it.
pub fn who_waits_with(job: &Job, study: &Study, relief: &[Relief]) -> WhoWaits {
    let job_s = study.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.5).value;
    told(job, &study.accounts, study.runs(), Some(Tried::new(relief, job_s)))
}

/// The same for any runs of a job by who waits alone.
pub fn who_waits_in(job: &Job, study: &Study) -> WhoWaits {
    who_waits_by(job, &study.accounts, study.runs())
}

/// The same by the accounts of a job alone, summed over so many runs.
pub fn who_waits_by(job: &Job, accounts: &Accounts, runs: u32) -> WhoWaits {
    told(job, accounts, runs, None)
}

fn told(job: &Job, accounts: &Accounts, runs: u32, tried: Option<Tried>) -> WhoWaits {
    let runs = f64::from(runs.max(1));
    let loaders: LoaderTimes = accounts.loaders.iter().flat_map(LoaderTimes::iter).collect();
    let rakers: RakerTimes = accounts.rakers.iter().flat_map(RakerTimes::iter).collect();
    let (loaders, rakers) = (loader_parts(&loaders, runs), raker_parts(&rakers, runs));
    let each_loader = accounts.loaders.iter().zip(&accounts.loads).zip(&job.loaders);
    let each_raker = accounts.rakers.iter().zip(&job.rakers);
    let each = each_loader
        .map(|((times, loads), loader)| Worker {
            name: loader.name.clone(),
            role: Role::Loader,
            loads: Some(*loads as f64 / runs),
            parts: loader_parts(times, runs),
        })
        .chain(each_raker.map(|(times, raker)| Worker {
            name: raker.name.clone(),
            role: Role::Raker,
            loads: None,
            parts: raker_parts(times, runs),
        }))
        .collect();
    let crew = Crew::new(&loaders, &rakers, job.loaders.len(), job.rakers.len()).with(tried);
    WhoWaits { title: crew.title(), short: crew.short(), sentence: crew.sentence(), each, loaders, rakers }
}

fn loader_parts(times: &LoaderTimes, runs: f64) -> Vec<Part> {
    parts(times.iter().map(|(activity, time)| (activity.words(), time)), &LOADER_KEYS, times.total(), runs)
}

fn raker_parts(times: &RakerTimes, runs: f64) -> Vec<Part> {
    parts(times.iter().map(|(activity, time)| (activity.words(), time)), &RAKER_KEYS, times.total(), runs)
}

fn parts(
    times: impl Iterator<Item = (&'static str, Duration)>,
    keys: &[&'static str],
    whole: Duration,
    runs: f64,
) -> Vec<Part> {
    if whole == Duration::ZERO {
        return Vec::new();
    }
    times
        .zip(keys)
        .map(|((words, time), &key)| Part {
            key,
            words,
            share: time / whole,
            minutes: time.as_secs_f64() / runs / 60.0,
        })
        .collect()
}
