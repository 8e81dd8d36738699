//! What can be typed after `heapcast replay`.

use super::{JobArgs, LimitArgs, RunsArgs, SayArgs};
use clap::Args;
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast replay arena.toml                 the run nearest the median
  heapcast replay arena.toml --run 4312      the run in that row of runs.csv, with the same seed
  heapcast replay arena.toml --run 0 --out first-run

The folder then holds events.csv (everything that happened), loads.csv (one row a load), replay.json and timeline.svg.";

/// `heapcast replay`.
#[derive(Args, Debug)]
pub(crate) struct ReplayArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// Seed, runs and threads.
    #[command(flatten)]
    pub(crate) study: RunsArgs,
    /// Number of the run, counted from 0 as in runs.csv [default: the run nearest the median]
    #[arg(long, value_name = "NUMBER", value_parser = super::whole::<u32>(0, i64::from(super::MOST_RUNS)))]
    pub(crate) run: Option<u32>,
    /// Folder for the results
    #[arg(long, default_value = "replay", value_name = "FOLDER")]
    pub(crate) out: PathBuf,
    /// What it may cost.
    #[command(flatten)]
    pub(crate) limits: LimitArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}
