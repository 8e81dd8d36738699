//! What can be typed after `heapcast sweep`.

use super::{JobArgs, LimitArgs, MOST_RUNS, SayArgs, seed, whole};
use clap::Args;
use reports::asked::{clock_s, kept_share};
use scenarios::Vary;
use std::path::PathBuf;

/// Runs at every point when nothing else is asked for.
const SWEEP_RUNS: u32 = 2_000;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast sweep arena.toml --vary \"rakers 1..4\"
  heapcast sweep arena.toml --vary \"bucket 8..20 ft3 by 2\" --by \"2:30 pm\"
  heapcast sweep arena.toml --vary \"rakers 1..4\" --vary \"haul 10..80 yd by 10\" --by 15:00 --chance 90
  heapcast sweep arena.toml --vary \"loader.compact tractor.loading = 15, 20, 30 s\" --change \"rakers = 2\"

What can vary: rakers, loaders, bucket (heaped), haul (mean), room (heaps a zone), or any key of the file with an \"=\"
behind it. A range is written 1..4 or 8..20 ft3 by 2, a list 8.5, 11, 14 ft3; at most 40 values, at most 400 points.
The folder then holds report.html, summary.json, sweep.csv (one row a point) and the charts sweep.svg and cost.svg.";

/// `heapcast sweep`.
#[derive(Args, Debug)]
pub(crate) struct SweepArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// What to vary and over which values, such as "rakers 1..4"; given twice, every value of one with every of the other
    #[arg(long, value_name = "WHAT VALUES", required = true)]
    pub(crate) vary: Vec<Vary>,
    /// Find the cheapest that is done, clean-up included, by this time of the clock: "15:00", "2:30 pm", "day 2 10:00"
    #[arg(long, value_name = "CLOCK", value_parser = clock_s)]
    pub(crate) by: Option<f64>,
    /// How often it is to be done by then, in per cent
    #[arg(long, value_name = "PERCENT", value_parser = kept_share, default_value = "80", requires = "by")]
    pub(crate) chance: f64,
    /// Seed of all random numbers; every point has the same random numbers
    #[arg(long, default_value_t = super::DEFAULT_SEED, value_name = "NUMBER", value_parser = seed)]
    pub(crate) seed: u64,
    /// Runs to make at every point
    #[arg(long, default_value_t = SWEEP_RUNS, value_name = "NUMBER",
          value_parser = whole::<u32>(1, i64::from(MOST_RUNS)))]
    pub(crate) runs: u32,
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = whole::<u16>(1, 1024))]
    pub(crate) threads: Option<u16>,
    /// Folder for the results
    #[arg(long, default_value = "sweep", value_name = "FOLDER")]
    pub(crate) out: PathBuf,
    /// What it may cost.
    #[command(flatten)]
    pub(crate) limits: LimitArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}
