//! What can be typed after `heapcast compare`.

use super::{DEFAULT_SEED, LimitArgs, MOST_RUNS, RowArgs, SayArgs, seed, system, whole};
use clap::Args;
use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use reports::asked::confidence;
use reports::compare::Prefer;
use scenarios::Variant;
use scenarios::units::System;
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast compare arena.toml                            the job as it stands and all its alternatives
  heapcast compare arena.toml --alternative \"a second raker\"
  heapcast compare arena.toml --change \"rakers = 2\" --change \"big bucket: bucket = 22 ft3\"
  heapcast compare one-loader.toml two-loaders.toml      separate files, the first against the second
  heapcast compare arena.toml --prefer cost --within '$20'
  heapcast compare arena.toml --within \"2 min\" --confidence 99

All of them are run on the same days and loads, and runs are made until the answer is sure: \"the best, or within 5 minutes of it
on average, 95 % sure\". Jobs that are surely worse than another get no more runs. The folder then holds report.html,
summary.json, comparison.csv, differences.csv, runs.csv and the charts as SVG.";

/// Runs of each job before any is set aside, when nothing else is asked for.
const FIRST_RUNS: u32 = 2_000;
/// Fewer do not know their own spread well enough.
const LEAST_RUNS: i64 = 200;
/// Runs of any one job at the most, when nothing else is asked for.
const USUAL_MOST: u32 = 50_000;

/// `heapcast compare`.
#[derive(Args, Debug)]
pub(crate) struct CompareArgs {
    /// Scenario files (TOML); the first is what the others are compared with
    #[arg(required = true, value_name = "FILE")]
    pub(crate) files: Vec<PathBuf>,
    /// An alternative of the first file, by its name; as often as wanted
    #[arg(long = "alternative", value_name = "NAME")]
    pub(crate) alternatives: Vec<String>,
    /// The first file's job with something changed, by the file's own keys; as often as wanted
    #[arg(long = "change", value_name = "[NAME:] KEY = VALUE[; KEY = VALUE]")]
    pub(crate) changes: Vec<Variant>,
    /// A difference that does not matter: a time, or money with --prefer cost [default: 5 min; 1 % of the cost]
    #[arg(long, value_name = "TIME|MONEY")]
    pub(crate) within: Option<String>,
    /// How sure the answer is to be, in per cent
    #[arg(long, value_name = "PERCENT", default_value = "95", value_parser = confidence)]
    pub(crate) confidence: f64,
    /// What the best is to have less of
    #[arg(long, value_parser = prefer(), default_value = "time")]
    pub(crate) prefer: Prefer,
    /// Runs of each before any is set aside
    #[arg(long, default_value_t = FIRST_RUNS, value_name = "NUMBER",
          value_parser = whole::<u32>(LEAST_RUNS, i64::from(MOST_RUNS)))]
    pub(crate) runs: u32,
    /// Runs of any one at the most
    #[arg(long, default_value_t = USUAL_MOST, value_name = "NUMBER",
          value_parser = whole::<u32>(LEAST_RUNS, i64::from(MOST_RUNS)))]
    pub(crate) most: u32,
    /// Seed of the random draws; the same seed and files give the same answer on any number of threads
    #[arg(long, default_value_t = DEFAULT_SEED, value_name = "NUMBER", value_parser = seed)]
    pub(crate) seed: u64,
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = whole::<u16>(1, 1024))]
    pub(crate) threads: Option<u16>,
    /// Units to show [default: the first file's own]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub(crate) units: Option<System>,
    /// Folder for the results
    #[arg(long, default_value = "comparison", value_name = "FOLDER")]
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

fn prefer() -> impl TypedValueParser<Value = Prefer> {
    let words = [("time", "Finish sooner"), ("cost", "Pay less")];
    PossibleValuesParser::new(words.map(|(word, help)| PossibleValue::new(word).help(help)))
        .map(|word| if word == "cost" { Prefer::Cost } else { Prefer::Time })
}
