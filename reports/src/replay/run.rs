//! The run to be shown, and its every step.

use crate::failure::Failure;
use crate::provenance::Provenance;
use scenarios::Scenario;
use sim::{Plan, Replay, Runs, Study};

/// One run of a job, step by step.
pub struct OneRun {
    /// The file as it was read, and the job in it.
    pub scenario: Scenario,
    /// The run.
    pub replay: Replay,
    /// What it takes to get the same answer again.
    pub provenance: Provenance,
}

impl OneRun {
    /// Replays run `number`, or the run nearest the median of `runs`. `command` makes the line that gives the same answer again
    /// from the number of the run; `made` is told of runs as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run of the job can make no progress.
    pub fn new(
        scenario: Scenario,
        plan: &Plan,
        (seed, runs, number): (u64, u32, Option<u32>),
        command: impl FnOnce(u32) -> String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        let number = match number {
            Some(number) => number,
            None => {
                let study = Study::new(plan, seed, Runs::Exactly(runs), made)?;
                study.run_nearest_median().unwrap_or_default()
            }
        };
        let replay = Replay::new(plan, seed, number)?;
        let provenance = Provenance::new(&scenario, seed, 1, command(number));
        Ok(Self { scenario, replay, provenance })
    }
}
