//! `runs.csv`: one row a run.

use super::{Table, Unit, outcome};
use crate::findings::{LOADER_KEYS, RAKER_KEYS};
use crate::render::ExportError;
use sim::{Job, LoaderActivity, Outcome, RakerActivity, Study};

/// The runs of a study, in order, the first `most` of them.
pub(crate) fn runs_csv(job: &Job, study: &Study, most: usize) -> Result<Vec<u8>, ExportError> {
    columns(job).csv(study.outcomes.iter().take(most))
}

/// One run, with the columns of [`runs_csv`].
pub(crate) fn run_csv(job: &Job, outcome: &Outcome) -> Result<Vec<u8>, ExportError> {
    columns(job).csv([outcome])
}

fn columns(job: &Job) -> Table<'_, Outcome> {
    let loaders = LOADER_KEYS.iter().zip(LoaderActivity::ALL).fold(Table::new(), |table, (key, activity)| {
        table.figure(format!("loaders_{key}"), Unit::Seconds, move |o: &Outcome| o.loaders.time(activity))
    });
    let rakers = RAKER_KEYS.iter().zip(RakerActivity::ALL).fold(Table::new(), |table, (key, activity)| {
        table.figure(format!("rakers_{key}"), Unit::Seconds, move |o: &Outcome| o.rakers.time(activity))
    });
    outcome(job).chain(loaders).chain(rakers).rounded()
}
