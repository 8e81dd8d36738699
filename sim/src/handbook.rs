//! The single guess of handbook arithmetic, to be shown beside the range.

use crate::job::Job;

/// Minutes really worked in an hour, by the usual rule of the trade (common practice, no source).
pub(crate) const MINUTES_WORKED_IN_AN_HOUR: f64 = 50.0;

/// What handbook arithmetic gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Handbook {
    /// Volume to move \[loose m3\].
    pub volume_m3: f64,
    /// Loads, not rounded.
    pub loads: f64,
    /// Mean cycle of each loader, without waiting \[s\].
    pub cycle_s: Vec<f64>,
    /// Loads times cycle, all loaders together \[s\].
    pub plain_s: f64,
    /// The same for the 50-minute hour: the handbook figure \[s\].
    pub time_s: f64,
}

impl Handbook {
    /// Works it out: volume over mean load, times the mean cycle over zones by need from the nearest pile; no waiting,
    /// no rakers, no chance, no set-up; loaders add up.
    pub fn new(job: &Job) -> Self {
        let _ = (job, MINUTES_WORKED_IN_AN_HOUR);
        todo!()
    }
}
