//! The command line: what can be typed, and what it means.

use crate::asked::{Percentiles, clock_s, minutes_s};
use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand};
use scenarios::units::System;
use std::path::PathBuf;

/// The seed when none is given: the same file gives the same answer, whoever asks.
pub const DEFAULT_SEED: u64 = 1;
/// Runs when nothing else is asked for.
pub const DEFAULT_RUNS: u32 = 10_000;
/// Runs after which `--within` gives up.
pub const MOST_RUNS: u32 = 1_000_000;

const EXAMPLES: &str = "\
Examples:
  heapcast new arena.toml                    write down a job, asked question by question
  heapcast check arena.toml                  what is wrong, doubtful or assumed, without a run
  heapcast forecast arena.toml               done by when, what holds it up, what would help
  heapcast forecast arena.toml --by 15:00    and the chance of being done by three
  heapcast replay arena.toml                 one run step by step

Units in a scenario file are typed with every figure: \"44 yd3\", \"17.5 ft3\", \"0.5 m3\", \"60 in\", \"4 mph\", \"20 s\".
Exit codes: 0 fine, 1 could not be carried out, 2 something typed is wrong, 130 stopped by you.";

const FORECAST_EXAMPLES: &str = "\
Examples:
  heapcast forecast arena.toml
  heapcast forecast arena.toml --units metric --out for-the-client
  heapcast forecast arena.toml --within \"1 min\"           as many runs as it takes
  heapcast forecast arena.toml --by \"2:30 pm\" --percentiles 50,80,99
  heapcast forecast arena.toml --alternative \"a second raker\" --json > second.json

The folder then holds report.html, summary.json, percentiles.csv, runs.csv and the charts as SVG. It is replaced only
when all of it is complete. Times in files are seconds; volumes stand in m3 and in yd3.";

const REPLAY_EXAMPLES: &str = "\
Examples:
  heapcast replay arena.toml                 the run nearest the median
  heapcast replay arena.toml --run 4312      the run in that row of runs.csv, with the same seed
  heapcast replay arena.toml --run 0 --out first-run

The folder then holds events.csv (everything that happened), loads.csv (one row a load), replay.json and timeline.svg.";

const CHECK_EXAMPLES: &str = "\
Examples:
  heapcast check arena.toml
  heapcast check arena.toml --alternative \"a second raker\"
  heapcast check arena.toml --json";

const NEW_EXAMPLES: &str = "\
Examples:
  heapcast new                               asks, and writes job.toml
  heapcast new arena.toml --volume \"44 yd3\" --bucket \"17.5 ft3\" --distance \"25 yd\" --rakers 1
  heapcast new beds.toml --units metric --volume \"30 m3\" --bucket \"0.5 m3\" --gate \"1.8 m\"
  heapcast new mine.toml --from NAME         a copy of a shipped scenario

A file that is there already is never overwritten.";

/// How long will moving the pile take? A range you can promise, what holds it up, and what would help.
#[derive(Debug, Parser)]
#[command(name = "heapcast", version, after_long_help = EXAMPLES, max_term_width = 100)]
pub struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What heapcast can do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Tell when the job will be done, as a range, what holds it up, and what would help
    #[command(after_long_help = FORECAST_EXAMPLES)]
    Forecast(ForecastArgs),
    /// Show one run of the job step by step
    #[command(after_long_help = REPLAY_EXAMPLES)]
    Replay(ReplayArgs),
    /// Check a scenario file and list cautions and assumptions, without a run
    #[command(after_long_help = CHECK_EXAMPLES)]
    Check(CheckArgs),
    /// Write a commented scenario file to start from
    #[command(after_long_help = NEW_EXAMPLES)]
    New(NewArgs),
}

/// The job wanted.
#[derive(Args, Clone, Debug)]
pub struct JobArgs {
    /// Scenario file (TOML)
    pub file: PathBuf,
    /// The alternative of this name in the file instead of the job as it stands
    #[arg(long, value_name = "NAME")]
    pub alternative: Option<String>,
    /// Units to show [default: the file's own]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub units: Option<System>,
}

/// How the luck is drawn.
#[derive(Args, Clone, Debug)]
pub struct LuckArgs {
    /// Seed of all luck; the same seed and file give the same answer on any number of threads
    #[arg(long, default_value_t = DEFAULT_SEED, value_name = "NUMBER")]
    pub seed: u64,
    /// Runs to make
    #[arg(long, default_value_t = DEFAULT_RUNS, value_name = "NUMBER",
          value_parser = clap::value_parser!(u32).range(1..=i64::from(MOST_RUNS)))]
    pub runs: u32,
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=1024))]
    pub threads: Option<u16>,
}

/// What is said on the terminal.
#[derive(Args, Clone, Copy, Debug)]
pub struct SayArgs {
    /// Say one line and no more; no progress bar
    #[arg(long, short)]
    pub quiet: bool,
    /// Print everything as JSON instead of text
    #[arg(long, conflicts_with = "quiet")]
    pub json: bool,
}

/// `heapcast forecast`.
#[derive(Args, Debug)]
pub struct ForecastArgs {
    /// The job.
    #[command(flatten)]
    pub job: JobArgs,
    /// The luck.
    #[command(flatten)]
    pub luck: LuckArgs,
    /// Make as many runs as it takes to know the P80 to within this, such as "3 min" (at most a million)
    #[arg(long, value_name = "TIME", value_parser = minutes_s, conflicts_with = "runs")]
    pub within: Option<f64>,
    /// Percentiles to tell, in per cent
    #[arg(long, default_value = "10,50,80,90,95", value_name = "LIST")]
    pub percentiles: Percentiles,
    /// Tell the chance of being done by this time of the clock: "15:00", "2:30 pm", "day 2 10:00"
    #[arg(long, value_name = "CLOCK", value_parser = clock_s)]
    pub by: Option<f64>,
    /// Folder for the results
    #[arg(long, default_value = "forecast", value_name = "FOLDER")]
    pub out: PathBuf,
    /// What to say.
    #[command(flatten)]
    pub say: SayArgs,
}

/// `heapcast replay`.
#[derive(Args, Debug)]
pub struct ReplayArgs {
    /// The job.
    #[command(flatten)]
    pub job: JobArgs,
    /// The luck.
    #[command(flatten)]
    pub luck: LuckArgs,
    /// Number of the run, counted from 0 as in runs.csv [default: the run nearest the median]
    #[arg(long, value_name = "NUMBER")]
    pub run: Option<u32>,
    /// Folder for the results
    #[arg(long, default_value = "replay", value_name = "FOLDER")]
    pub out: PathBuf,
    /// What to say.
    #[command(flatten)]
    pub say: SayArgs,
}

/// `heapcast check`.
#[derive(Args, Debug)]
pub struct CheckArgs {
    /// The job.
    #[command(flatten)]
    pub job: JobArgs,
    /// What to say.
    #[command(flatten)]
    pub say: SayArgs,
}

/// `heapcast new`.
#[derive(Args, Debug)]
pub struct NewArgs {
    /// File to write; must not be there yet
    #[arg(default_value = "job.toml")]
    pub file: PathBuf,
    /// Copy this shipped scenario instead
    #[arg(long, value_name = "NAME", conflicts_with = "answers")]
    pub from: Option<String>,
    /// The answers.
    #[command(flatten)]
    pub answers: AnswerArgs,
}

/// Answers to the questions that `heapcast new` asks.
#[derive(Args, Clone, Debug, Default)]
#[group(id = "answers", multiple = true)]
pub struct AnswerArgs {
    /// What the job is called
    #[arg(long, value_name = "TEXT")]
    pub title: Option<String>,
    /// Units the file is written in [default: us]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub units: Option<System>,
    /// Material, by its name in the built-in table
    #[arg(long, value_name = "NAME")]
    pub material: Option<String>,
    /// Loose volume to move, such as "44 yd3" or "34 m3"
    #[arg(long, value_name = "VOLUME")]
    pub volume: Option<String>,
    /// Heaped capacity of the bucket, such as "17.5 ft3" or "0.5 m3"
    #[arg(long, value_name = "VOLUME")]
    pub bucket: Option<String>,
    /// Distance from the pile to the middle of the ground, such as "25 yd" or "23 m"
    #[arg(long, value_name = "LENGTH")]
    pub distance: Option<String>,
    /// People who rake
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u32).range(0..=64))]
    pub rakers: Option<u32>,
    /// Clear width of a gate on the way, such as "6 ft" or "1.8 m", if there is one
    #[arg(long, value_name = "LENGTH")]
    pub gate: Option<String>,
    /// Start of the day, such as "08:00"
    #[arg(long, value_name = "CLOCK")]
    pub start: Option<String>,
}

impl AnswerArgs {
    /// Whether nothing was answered by a flag.
    pub fn is_empty(&self) -> bool {
        let Self { title, units, material, volume, bucket, distance, rakers, gate, start } = self;
        units.is_none()
            && rakers.is_none()
            && [title, material, volume, bucket, distance, gate, start].iter().all(|answer| answer.is_none())
    }
}

fn system() -> impl TypedValueParser<Value = System> {
    PossibleValuesParser::new(["us", "metric"])
        .map(|word| if word == "us" { System::Us } else { System::Metric })
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_put_together_without_contradictions() {
        Cli::command().debug_assert();
    }

    #[test]
    fn every_command_shows_examples_in_its_long_help() {
        for command in Cli::command().get_subcommands_mut() {
            let help = command.render_long_help().to_string();
            assert!(help.contains("Examples:"), "{help}");
        }
    }
}
