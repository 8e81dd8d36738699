//! The bundle that the screen, the page, the charts and the files are all drawn from.

use crate::failure::Failure;
use scenarios::Scenario;
use scenarios::units::System;
use sim::{Duration, Handbook, Improvement, Job, Plan, Relief, Replay, Runs, Study, Tries};

/// Runs each improvement is tried in at first, and at the most (our own choice; that intervals of means hold in 200 runs is
/// held to arithmetic).
const RELIEF_RUNS: (u32, u32) = (200, 2_000);
/// Runs that a truckload more is tried in: where it gets the job done in all 500, it does in more than 99 of 100 with 95 % certainty.
const TRUCKLOAD_RUNS: u32 = 500;

/// How each improvement is tried: until the 95 % interval of what it saves is no wider to either side than what is worth naming,
/// than a four-hundredth of the job, or than a twenty-fifth of what it saves (our own choices: half of the 5 min in which hours
/// are told, for an hour saved and for days of work).
pub fn tries(study: &Study) -> Tries {
    let job_s = study.sorted(|o| seconds(o.finish.working)).percentile(0.5).value;
    let (fewest, most) = RELIEF_RUNS;
    let least_s = crate::findings::worth_naming_from(job_s).max(job_s / 400.0);
    let often_short = study.share_short().value > 0.1;
    let of_chances = if often_short { most } else { TRUCKLOAD_RUNS };
    Tries { fewest, most, least_s, share: 0.04, of_chances }
}

/// Everything known about one job once its runs are made.
pub struct Forecast {
    /// The file as it was read, and the job in it.
    pub scenario: Scenario,
    /// All runs.
    pub study: Study,
    /// The single guess of handbook arithmetic.
    pub handbook: Handbook,
    /// What each improvement saves: a truckload more where runs end short, then most minutes first.
    pub relief: Vec<Relief>,
    /// The run nearest the median, watched.
    pub typical: Replay,
    /// Percentiles to tell, as shares \[0 to 1\], rising.
    pub percentiles: Vec<f64>,
    /// A clock time whose chance of being kept is asked for \[s after midnight of the first day\].
    pub by_s: Option<f64>,
    /// Units to show.
    pub units: System,
    /// What it takes to get the same answer again.
    pub provenance: Provenance,
}

/// What is wanted of a forecast.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Seed of all random numbers.
    pub seed: u64,
    /// How many runs.
    pub runs: Runs,
    /// Percentiles to tell, as shares \[0 to 1\], rising.
    pub percentiles: Vec<f64>,
    /// A clock time whose chance of being kept is asked for \[s after midnight of the first day\].
    pub by_s: Option<f64>,
}

/// What it takes to get the same answer again.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Provenance {
    /// Version of heapcast.
    pub version: String,
    /// Seed of all random numbers.
    pub seed: u64,
    /// Runs made.
    pub runs: u32,
    /// The scenario file as typed.
    pub file: String,
    /// SHA-256 of what was read, in hexadecimal.
    pub scenario_hash: String,
    /// The named alternative chosen, if any.
    pub alternative: Option<String>,
    /// What else was changed, as typed, in this order.
    pub changes: Vec<String>,
    /// The command as typed, without folders of the machine.
    pub command: String,
}

impl Provenance {
    /// Of something made from a scenario.
    pub fn new(scenario: &Scenario, seed: u64, runs: u32, command: String) -> Self {
        Self {
            version: env!("CARGO_PKG_VERSION").to_owned(),
            seed,
            runs,
            file: scenario.file.clone(),
            scenario_hash: scenario.hash.clone(),
            alternative: scenario.alternative.clone(),
            changes: scenario.changes.iter().map(ToString::to_string).collect(),
            command,
        }
    }

    /// All of it in a line.
    pub fn words(&self) -> String {
        let hash = self.scenario_hash.get(..12).unwrap_or(&self.scenario_hash);
        let runs = scenarios::units::figure(f64::from(self.runs));
        let plural = if self.runs == 1 { "run" } else { "runs" };
        format!("heapcast {}, seed {}, {runs} {plural}, scenario {hash}", self.version, self.seed)
    }
}

impl Forecast {
    /// Makes all runs of a job and works out what they tell. `plan` is the scenario's job made ready; `command` makes the line that gives the same answer again
    /// from the number of runs; `made` is told of runs as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run of the job can make no progress, or the model has no meaning for an improved one.
    pub fn new(
        scenario: Scenario,
        plan: &Plan,
        wanted: &Wanted,
        command: impl FnOnce(u32) -> String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        let study = Study::new(plan, wanted.seed, wanted.runs, &made)?;
        Self::of(scenario, plan, study, wanted, command, made)
    }

    /// The same from runs that are made already, by whoever.
    ///
    /// # Errors
    /// As [`Forecast::new`].
    pub fn of(
        scenario: Scenario,
        plan: &Plan,
        study: Study,
        wanted: &Wanted,
        command: impl FnOnce(u32) -> String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        let job = &scenario.job;
        let relief = sim::relief(job, plan, &study, scenario.stated.truckload_m3, tries(&study), &made)?;
        let typical = Replay::new(plan, study.seed, study.run_nearest_median().unwrap_or_default())?;
        Ok(Self {
            handbook: Handbook::new(job),
            relief,
            typical,
            percentiles: wanted.percentiles.clone(),
            by_s: wanted.by_s,
            units: scenario.units,
            provenance: Provenance::new(&scenario, study.seed, study.runs(), command(study.runs())),
            study,
            scenario,
        })
    }

    /// Seconds after midnight of the first day at a moment of a run, counted from the start of the first day.
    pub fn clock_s(&self, clock: Duration) -> f64 {
        self.scenario.job.shift.start_s + seconds(clock)
    }
}

/// A duration in seconds.
pub fn seconds(time: Duration) -> f64 {
    time.as_secs_f64()
}

/// Runs that a forecast makes in all, those that each improvement is tried in at first included; `None` where nobody knows beforehand.
pub fn runs_in_all(runs: Runs, job: &Job) -> Option<u64> {
    let Runs::Exactly(n) = runs else { return None };
    let tried = Improvement::ALL.iter().filter(|i| i.of(job, 0.0).is_some()).count() as u64;
    Some(u64::from(n) + tried * u64::from(n.min(RELIEF_RUNS.0)))
}
