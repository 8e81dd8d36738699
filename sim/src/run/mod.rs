//! One run.
use crate::outcome::{Books, Outcome};
use crate::observe::Observer;
use crate::plan::Plan;

/// A run that can make no progress.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("run {run} {why}")]
pub struct RunError {
    /// Which run.
    pub run: u32,
    /// What blocks what, in plain words.
    pub why: String,
}

pub(crate) struct Scratch {}

impl Scratch {
    pub(crate) fn new(_plan: &Plan) -> Self {
        todo!()
    }
    pub(crate) fn run(&mut self, _plan: &Plan, _seed: u64, _run: u32, _books: &mut Books) -> Result<Outcome, RunError> {
        todo!()
    }
    pub(crate) fn run_watched(&mut self, _plan: &Plan, _seed: u64, _run: u32, _books: &mut Books, _log: &mut impl Observer) -> Result<Outcome, RunError> {
        todo!()
    }
}
