//! The bundle that the screen, the page, the charts and the files are all drawn from.

use crate::failure::Failure;
use crate::findings::{RELIEF_RUNS, tries};
use crate::provenance::Provenance;
use scenarios::Scenario;
use scenarios::units::System;
use sim::{Duration, Handbook, Improvement, Job, Plan, Relief, Replay, Runs, Study};

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
    /// How closely the P80 was to be known \[s\], if that was asked for.
    pub within_s: Option<f64>,
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
            within_s: match wanted.runs {
                Runs::UntilP80Within { half_width_s, .. } => Some(half_width_s),
                Runs::Exactly(_) => None,
            },
            units: scenario.units,
            provenance: Provenance::new(&scenario, study.seed, study.runs(), command(study.runs())),
            study,
            scenario,
        })
    }

    /// Seconds after midnight of the first day at a moment of a run, counted from the start of the first day.
    pub fn clock_s(&self, clock: Duration) -> f64 {
        self.scenario.job.shift.start_s + clock.as_secs_f64()
    }
}

/// Runs that a forecast makes in all, those that each improvement is tried in at first included; `None` where nobody knows beforehand.
pub fn runs_in_all(runs: Runs, job: &Job) -> Option<u64> {
    let Runs::Exactly(n) = runs else { return None };
    let tried = Improvement::ALL.iter().filter(|i| i.of(job, 0.0).is_some()).count() as u64;
    Some(u64::from(n) + tried * u64::from(n.min(RELIEF_RUNS.0)))
}
