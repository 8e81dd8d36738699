//! What can be typed after `heapcast buckets`.

use super::{DEFAULT_SEED, JobArgs, LimitArgs, MOST_RUNS, SayArgs, seed, whole};
use clap::Args;
use reports::asked_money::{Money, hourly};
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast buckets arena.toml buckets.csv
  heapcast buckets arena.toml buckets.csv --today \"today's bucket\"
  heapcast buckets arena.toml buckets.csv --jobs-per-year 20..35 --hour-worth '$60/h'
  heapcast buckets yard.toml buckets.csv --loader \"compact tractor\" --barrows 3

The list is a CSV file with a heading line, each figure with its unit; only name and heaped are needed:
  name,          struck,   heaped,    width,  mass,    price
  chip bucket,   16 ft3,   20 ft3,    66 in,  230 lb,  $890

Each bucket of the list is tried on the loader on the same days and loads as today's: whether a full one may be lifted, whether it
passes the gates, how many minutes it saves, and with --jobs-per-year and --hour-worth whether it pays. An hour is what the
crew and its machine are worth to you; prices in the file are not counted besides. The folder then holds report.html,
summary.json, buckets.csv and the charts as SVG.";

/// Runs of each bucket when nothing else is asked for.
const RUNS: u32 = 2_000;
/// Fewer do not know the range of what is saved.
const LEAST_RUNS: i64 = 100;
/// Most jobs that a year may have.
const MOST_JOBS: f64 = 5_000.0;
/// Highest interest that is taken for one.
const MOST_INTEREST: f64 = 1.0;

/// `heapcast buckets`.
#[derive(Args, Debug)]
pub(crate) struct BucketsArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// List of buckets (CSV): name, struck, heaped, width, mass, price
    #[arg(value_name = "LIST.csv")]
    pub(crate) list: PathBuf,
    /// The loader that the buckets are for [default: the only one]
    #[arg(long, value_name = "NAME")]
    pub(crate) loader: Option<String>,
    /// The bucket of the list that is on the loader today [default: the one in the file]
    #[arg(long, value_name = "NAME")]
    pub(crate) today: Option<String>,
    /// Jobs like this one in a year: a number, or fewest and most
    #[arg(long, value_name = "FROM..TO", value_parser = jobs, requires = "hour_worth", allow_hyphen_values = true)]
    pub(crate) jobs_per_year: Option<(u32, u32)>,
    /// What an hour saved on a job is worth, the crew with its machine, such as '$60/h'
    #[arg(long, value_name = "SUM", value_parser = hourly, requires = "jobs_per_year", allow_hyphen_values = true)]
    pub(crate) hour_worth: Option<Money>,
    /// Years that the bucket will be used
    #[arg(long, default_value_t = 8, value_name = "NUMBER", value_parser = whole::<u32>(1, 50))]
    pub(crate) years: u32,
    /// Yearly interest on the money
    #[arg(long, default_value = "6 %", value_name = "SHARE", value_parser = interest, allow_hyphen_values = true)]
    pub(crate) interest: f64,
    /// Hand barrows to try in place of the loader; 0 for none
    #[arg(long, default_value_t = 1, value_name = "NUMBER", value_parser = whole::<u32>(0, 20))]
    pub(crate) barrows: u32,
    /// Runs of each bucket
    #[arg(long, default_value_t = RUNS, value_name = "NUMBER",
          value_parser = whole::<u32>(LEAST_RUNS, i64::from(MOST_RUNS)))]
    pub(crate) runs: u32,
    /// Seed of the random draws; the same seed and files give the same answer on any number of threads
    #[arg(long, default_value_t = DEFAULT_SEED, value_name = "NUMBER", value_parser = seed)]
    pub(crate) seed: u64,
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = whole::<u16>(1, 1024))]
    pub(crate) threads: Option<u16>,
    /// Folder for the results
    #[arg(long, default_value = "buckets", value_name = "FOLDER")]
    pub(crate) out: PathBuf,
    /// What it may cost.
    #[command(flatten)]
    pub(crate) limits: LimitArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}

/// Whole numbers of jobs in a year.
fn jobs(text: &str) -> Result<(u32, u32), String> {
    let [few, many] = scenarios::typed::range(text)?;
    let whole = few.fract() == 0.0 && many.fract() == 0.0;
    if whole && (1.0..=MOST_JOBS).contains(&many) {
        Ok((few as u32, many as u32))
    } else {
        Err(format!("write whole numbers of jobs, at most {MOST_JOBS}, such as 25 or 20..35"))
    }
}

/// A yearly interest as a share.
fn interest(text: &str) -> Result<f64, String> {
    let right = "write a yearly interest from 0 % to 100 %, such as \"6 %\"";
    let share = scenarios::typed::percent(text).map_err(|why| format!("{why}; {right}"))?;
    if (0.0..=MOST_INTEREST).contains(&share) { Ok(share) } else { Err(right.into()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn jobs_are_whole_and_rise() {
        assert_eq!(jobs("20..35"), Ok((20, 35)));
        assert_eq!(jobs("25"), Ok((25, 25)));
        for wrong in ["5..2", "0", "2.5", "-3", "many", "", "10000"] {
            assert!(jobs(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn an_interest_is_a_share_of_nothing_to_all() {
        assert_eq!(interest("6 %"), Ok(0.06));
        assert_eq!(interest("0 %"), Ok(0.0));
        for wrong in ["-200 %", "-1 %", "101 %", "6", "much", ""] {
            assert!(interest(wrong).is_err(), "{wrong}");
        }
    }
}
