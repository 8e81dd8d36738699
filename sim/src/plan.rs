//! A job made ready to run.

use crate::job::Job;
use crate::outcome::Books;

/// Most loaders in a job.
pub const MOST_LOADERS: usize = 64;
/// Most rakers in a job.
pub const MOST_RAKERS: usize = 64;

/// A job that the model cannot run.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{0}")]
pub struct JobError(pub String);

/// A job made ready to run: distributions compiled into tables, ways sorted, everything in microseconds.
pub struct Plan {}

impl Plan {
    /// Makes a job ready.
    ///
    /// # Errors
    /// If the model has no meaning for it.
    pub fn new(job: &Job) -> Result<Self, JobError> {
        let _ = job;
        todo!()
    }
    /// Books for the job with every entry 0.
    pub(crate) fn empty_books(&self) -> Books {
        todo!()
    }
}
