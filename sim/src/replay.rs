//! One run alone, with its full event log.

use crate::error::RunError;
use crate::observe::Entry;
use crate::outcome::{Accounts, Outcome};
use crate::plan::Plan;
use crate::run::Scratch;

/// One run with everything that happened in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Replay {
    /// The same outcome, to the last bit, as in the study.
    pub outcome: Outcome,
    /// The run's own accounts.
    pub accounts: Accounts,
    /// Everything that happened, in order.
    pub log: Vec<Entry>,
}

impl Replay {
    /// Runs run number `run` of the study with this seed once more, observed.
    ///
    /// # Errors
    /// If the run can make no progress.
    pub fn new(plan: &Plan, seed: u64, run: u32) -> Result<Self, RunError> {
        let (mut accounts, mut log) = (plan.empty_accounts(), Vec::new());
        let outcome = Scratch::new(plan).run_observed(plan, seed, run, &mut accounts, &mut log)?;
        Ok(Self { outcome, accounts, log })
    }
}
