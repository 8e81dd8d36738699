//! `heapcast check`: cautions and assumptions, without a run.

use super::{plan, read, tell};
use crate::cli::CheckArgs;
use crate::failure::Failure;
use reports::check::Checked;
use std::path::Path;

pub(super) fn run(args: &CheckArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    plan(&scenario)?;
    tell(&Checked(scenario), Path::new(""), args.say)
}
