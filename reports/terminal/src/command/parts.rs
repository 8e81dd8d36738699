//! A question whose runs are shared among several processes: one part of them made, or all of them merged.

use super::work::{telling, with_threads};
use crate::cli::OwnArgs;
use crate::failure::Failure;
use crate::output_folder::OutputFolder;
use crate::part_file::{self, Share};
use crate::progress::Progress;
use crate::say;
use reports::answer::Answer;
use reports::ask::{InParts, Prepared};
use reports::failure::Failure as NoAnswer;
use scenarios::units::figure;
use sim::StudyPart;
use std::path::Path;

/// Makes one part of the runs.
pub(super) fn make(
    share: Share,
    prepared: Box<dyn Prepared>,
    own: &OwnArgs,
    out: &Path,
    folder: OutputFolder,
) -> Result<(), Failure> {
    let in_parts = in_parts(prepared)?;
    let (plan, seed, all) = in_parts.study();
    let runs = share.runs(all);
    let progress = Progress::new(Some(runs.len() as u64), telling(own.say));
    let part = with_threads(own.threads, || StudyPart::new(plan, seed, runs.clone(), |n| progress.made(n)))?;
    progress.finish();
    folder.replace(&[part_file::document(part.map_err(NoAnswer::from)?, all)?])?;
    let [made, all] = [runs.len() as u32, all].map(|n| figure(f64::from(n)));
    say::out(&format!(
        "{made} of {all} runs are in {}. When all parts are made, merge them with --merge.\n",
        scenarios::shown_path(out)
    ))
}

/// The answer from runs that were made in parts.
pub(super) fn merged(prepared: Box<dyn Prepared>, own: &OwnArgs) -> Result<Box<dyn Answer + Send>, Failure> {
    let in_parts = in_parts(prepared)?;
    let study = part_file::merge(&own.parts.merge, in_parts.study().0)?;
    let progress = Progress::of("working out what the runs tell", telling(own.say));
    let answer = with_threads(own.threads, || in_parts.merged(study, &|_| ()))?;
    progress.finish();
    Ok(answer?)
}

fn in_parts(prepared: Box<dyn Prepared>) -> Result<Box<dyn InParts>, Failure> {
    prepared.in_parts().ok_or_else(|| Failure::asked("its runs cannot be made in parts".into()))
}
