//! The command line: what can be typed, and what it means.

mod buckets;
mod check;
mod compare;
mod forecast;
mod keys;
mod limits;
mod materials;
mod new;
mod quote;
mod replay;
mod sweep;

pub(crate) use buckets::BucketsArgs;
pub(crate) use check::CheckArgs;
pub(crate) use compare::CompareArgs;
pub(crate) use forecast::ForecastArgs;
pub(crate) use keys::KeysArgs;
pub(crate) use limits::{LimitArgs, RowArgs};
pub(crate) use materials::MaterialsArgs;
pub(crate) use new::{AnswerArgs, NewArgs};
pub(crate) use quote::QuoteArgs;
pub(crate) use replay::ReplayArgs;
pub(crate) use sweep::SweepArgs;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand};
use scenarios::Change;
use scenarios::units::System;
use std::path::PathBuf;

/// The seed when none is given: the same file gives the same answer, whoever asks.
pub(crate) const DEFAULT_SEED: u64 = 1;
/// Runs when nothing else is asked for.
pub(crate) const DEFAULT_RUNS: u32 = 10_000;
/// Runs after which `--within` gives up.
pub(crate) const MOST_RUNS: u32 = 1_000_000;

const EXAMPLES: &str = "\
Examples:
  heapcast new arena.toml                    write down a job, asked question by question
  heapcast check arena.toml                  what is wrong, doubtful or assumed, without a run
  heapcast forecast arena.toml               done by when, what holds it up, what would help
  heapcast forecast arena.toml --by 15:00    and the chance of being done by three
  heapcast compare arena.toml                which of its alternatives to take
  heapcast quote arena.toml                  what to ask for it, and a page for the client
  heapcast buckets arena.toml buckets.csv    would another bucket pay
  heapcast sweep arena.toml --vary \"rakers 1..4\"   where it stops paying
  heapcast replay arena.toml                 one run step by step

Units in a scenario file are typed with every figure: \"30 yd3\", \"14 ft3\", \"0.4 m3\", \"58 in\", \"4 mph\", \"20 s\".
Exit codes: 0 fine, 1 could not be carried out, 2 something typed is wrong, 128 and the number of a
signal that ended it (130: Ctrl-C).";

/// How long will moving the pile take? A range you can promise, what holds it up, and what would help.
#[derive(Debug, Parser)]
#[command(name = "heapcast", version, after_long_help = EXAMPLES, max_term_width = 100)]
pub(crate) struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// What heapcast can do.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Tell when the job will be done, as a range, what holds it up, and what would help
    #[command(after_long_help = forecast::EXAMPLES)]
    Forecast(ForecastArgs),
    /// Compare jobs and say which to take
    #[command(after_long_help = compare::EXAMPLES)]
    Compare(CompareArgs),
    /// Tell what to ask for the job: a price and its risk, hours and a rate, and a page for the client
    #[command(after_long_help = quote::EXAMPLES)]
    Quote(QuoteArgs),
    /// Try the buckets of a list: may the loader lift them, do they pass the gates, what do they save, do they pay
    #[command(after_long_help = buckets::EXAMPLES)]
    Buckets(BucketsArgs),
    /// Run the job over a range of one or two things: where it stops paying, and the cheapest that is done in time
    #[command(after_long_help = sweep::EXAMPLES)]
    Sweep(SweepArgs),
    /// Show one run of the job step by step
    #[command(after_long_help = replay::EXAMPLES)]
    Replay(ReplayArgs),
    /// Check a scenario file and list cautions and assumptions, without a run
    #[command(after_long_help = check::EXAMPLES)]
    Check(CheckArgs),
    /// List the materials that are known by name: what they weigh, how full they fill a bucket, how they settle, and sources
    #[command(after_long_help = materials::EXAMPLES)]
    Materials(MaterialsArgs),
    /// List the keys of a scenario file: what each means, what it holds, and what is taken where it is left out
    #[command(after_long_help = keys::EXAMPLES)]
    Keys(KeysArgs),
    /// Write a commented scenario file to start from
    #[command(after_long_help = new::EXAMPLES)]
    New(NewArgs),
}

/// The job wanted.
#[derive(Args, Clone, Debug)]
pub(crate) struct JobArgs {
    /// Scenario file (TOML)
    pub(crate) file: PathBuf,
    /// The alternative of this name in the file instead of the job as it stands
    #[arg(long, value_name = "NAME")]
    pub(crate) alternative: Option<String>,
    /// Change the job: a key of the file, or rakers, loaders, bucket, haul or room; may be given several times, each after
    /// the one before and after the alternative, such as "rakers = 2" or "loader.compact tractor.heaped = 22 ft3"
    #[arg(long = "change", value_name = "KEY = VALUE")]
    pub(crate) changes: Vec<Change>,
    /// Units to show [default: the file's own]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub(crate) units: Option<System>,
}

/// How many runs, from which seed.
#[derive(Args, Clone, Debug)]
pub(crate) struct RunsArgs {
    /// Seed of the random draws; the same seed and file give the same answer on any number of threads
    #[arg(long, default_value_t = DEFAULT_SEED, value_name = "NUMBER", value_parser = seed)]
    pub(crate) seed: u64,
    /// Runs to make
    #[arg(long, default_value_t = DEFAULT_RUNS, value_name = "NUMBER",
          value_parser = whole::<u32>(1, i64::from(MOST_RUNS)))]
    pub(crate) runs: u32,
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = whole::<u16>(1, 1024))]
    pub(crate) threads: Option<u16>,
}

/// What is said on the terminal.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct SayArgs {
    /// Say one line and no more; no progress bar
    #[arg(long, short)]
    pub(crate) quiet: bool,
    /// Show all tables, not only the answer
    #[arg(long, conflicts_with_all = ["quiet", "json"])]
    pub(crate) full: bool,
    /// Print everything as JSON instead of text
    #[arg(long, conflicts_with = "quiet")]
    pub(crate) json: bool,
}

/// A whole number within limits; commas may stand between its thousands.
fn whole<T: TryFrom<u64> + Clone + Send + Sync + 'static>(
    least: i64,
    most: i64,
) -> impl Fn(&str) -> Result<T, String> + Clone + Send + Sync + 'static {
    move |text| {
        let digits = plain_digits(text);
        let number = digits
            .filter(|number| i64::try_from(*number).is_ok_and(|number| (least..=most).contains(&number)));
        let read = number.and_then(|number| T::try_from(number).ok());
        read.ok_or_else(|| format!("write a whole number from {least} to {most} in digits"))
    }
}

/// A seed: any whole number that fits in 64 bits.
fn seed(text: &str) -> Result<u64, String> {
    plain_digits(text)
        .ok_or_else(|| format!("write a whole number from 0 to {} in digits, such as 1", u64::MAX))
}

fn plain_digits(text: &str) -> Option<u64> {
    let groups: Vec<&str> = text.trim().split(',').collect();
    let thousands =
        groups[1..].iter().all(|group| group.len() == 3) && (groups.len() == 1 || groups[0].len() <= 3);
    let digits = groups.concat();
    let all = !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit());
    if thousands && all { digits.parse().ok() } else { None }
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
    fn a_number_that_is_none_is_refused_with_its_limits() {
        let runs = whole::<u32>(1, 1_000_000);
        assert_eq!(runs("10,000"), Ok(10_000));
        assert_eq!(runs(" 7 "), Ok(7));
        for wrong in ["1e4", "ten", "", "0", "-3", "1000001", "1,00", "99999999999999999999", "1_000", "2.5"]
        {
            let said = runs(wrong).unwrap_err();
            assert_eq!(said, "write a whole number from 1 to 1000000 in digits", "{wrong}");
        }
        assert_eq!(seed("18446744073709551615"), Ok(u64::MAX));
        assert!(seed("18446744073709551616").unwrap_err().contains("from 0 to 18446744073709551615"));
    }

    #[test]
    fn no_option_answers_in_the_words_of_a_library() {
        for command in Cli::command().get_subcommands() {
            for option in command.get_opts().filter_map(|arg| arg.get_long()) {
                let words = ["heapcast", command.get_name(), "x", &format!("--{option}=1e4x")];
                let Err(error) = Cli::try_parse_from(words) else { continue };
                let said = error.to_string();
                for foreign in ["invalid digit", "invalid float", "number too large", "is not in "] {
                    assert!(!said.contains(foreign), "{words:?}: {said}");
                }
            }
        }
    }

    #[test]
    fn every_command_shows_examples_in_its_long_help() {
        for command in Cli::command().get_subcommands_mut() {
            let help = command.render_long_help().to_string();
            assert!(help.contains("Examples:"), "{help}");
        }
    }
}
