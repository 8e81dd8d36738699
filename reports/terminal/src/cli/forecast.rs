//! What can be typed after `heapcast forecast`.

use super::{JobArgs, LimitArgs, RowArgs, RunsArgs, SayArgs};
use crate::part_file::Share;
use clap::Args;
use reports::asked::{Percentiles, clock_s, minutes_s};
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast forecast arena.toml
  heapcast forecast arena.toml --units metric --out for-the-client
  heapcast forecast arena.toml --within \"1 min\"           as many runs as it takes
  heapcast forecast arena.toml --by \"2:30 pm\" --percentiles 50,80,99
  heapcast forecast arena.toml --alternative \"a second raker\" --json > second.json
  heapcast forecast arena.toml --change \"rakers = 2\" --change \"shift.start = 07:00\"
  heapcast forecast arena.toml --runs 400,000 --part 2/4 --out parts/2   a quarter of the runs, on any machine
  heapcast forecast arena.toml --merge parts/*              the forecast of all of them, to the same bytes

The folder then holds report.html, summary.json, percentiles.csv, runs.csv and the charts as SVG. It is replaced only
when all of it is complete, and only where heapcast wrote what is there; --out names another one. Times in files are
seconds; volumes stand in m3 and in yd3.";

/// `heapcast forecast`.
#[derive(Args, Debug)]
pub(crate) struct ForecastArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// Seed, runs and threads.
    #[command(flatten)]
    pub(crate) study: RunsArgs,
    /// Make as many runs as it takes to know the P80 to within this, such as "3 min" (at most a million)
    #[arg(long, value_name = "TIME", value_parser = minutes_s, conflicts_with = "runs")]
    pub(crate) within: Option<f64>,
    /// Percentiles to tell, in per cent
    #[arg(long, default_value = "10,50,80,90,95", value_name = "LIST")]
    pub(crate) percentiles: Percentiles,
    /// Tell the chance of being done, clean-up included, by this time of the clock: "15:00", "2:30 pm", "day 2 10:00"
    #[arg(long, value_name = "CLOCK", value_parser = clock_s)]
    pub(crate) by: Option<f64>,
    /// Make one part of the runs and no report, such as 2/4; every part may be made by another process or machine
    #[arg(long, value_name = "PART/PARTS", conflicts_with_all = ["within", "by", "json", "full"])]
    pub(crate) part: Option<Share>,
    /// Take the runs from the folders of all parts instead of making them
    #[arg(long, value_name = "FOLDER", num_args = 1.., conflicts_with_all = ["part", "within", "runs", "seed"])]
    pub(crate) merge: Vec<PathBuf>,
    /// Folder for the results
    #[arg(long, default_value = "forecast", value_name = "FOLDER")]
    pub(crate) out: PathBuf,
    /// The rows.
    #[command(flatten)]
    pub(crate) rows: RowArgs,
    /// What it may cost.
    #[command(flatten)]
    pub(crate) limits: LimitArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}
