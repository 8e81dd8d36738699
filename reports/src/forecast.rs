//! The bundle that the screen, the page, the charts and the files are all drawn from.

use scenarios::Scenario;
use scenarios::units::System;
use sim::{Handbook, Micros, Relief, Replay, SECOND, Study};

/// Everything known about one job once its runs are made.
pub struct Forecast {
    /// The file as it was read, and the job in it.
    pub scenario: Scenario,
    /// All runs.
    pub study: Study,
    /// The single guess of handbook arithmetic.
    pub handbook: Handbook,
    /// What each improvement saves, most minutes first.
    pub relief: Vec<Relief>,
    /// Runs each improvement was tried in.
    pub relief_runs: u32,
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

/// What it takes to get the same answer again.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Provenance {
    /// Version of heapcast.
    pub version: String,
    /// Seed of all luck.
    pub seed: u64,
    /// Runs made.
    pub runs: u32,
    /// The scenario file as typed.
    pub file: String,
    /// SHA-256 of what was read, in hexadecimal.
    pub scenario_hash: String,
    /// The named alternative chosen, if any.
    pub alternative: Option<String>,
    /// The command as typed, without folders of the machine.
    pub command: String,
}

impl Provenance {
    /// All of it in a line.
    pub fn words(&self) -> String {
        let hash = self.scenario_hash.get(..12).unwrap_or(&self.scenario_hash);
        let runs = scenarios::units::figure(f64::from(self.runs));
        let plural = if self.runs == 1 { "run" } else { "runs" };
        format!("heapcast {}, seed {}, {runs} {plural}, scenario {hash}", self.version, self.seed)
    }
}

impl Forecast {
    /// Seconds after midnight of the first day at a moment of a run \[us from the start of the first day\].
    pub fn clock_s(&self, clock: Micros) -> f64 {
        self.scenario.job.shift.start_s + seconds(clock)
    }
}

/// Microseconds as seconds.
pub fn seconds(micros: Micros) -> f64 {
    micros as f64 / SECOND as f64
}
