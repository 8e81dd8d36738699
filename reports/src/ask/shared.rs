//! Options that several questions have.

use super::{AnyOpt, FileWanted, Opt};
use crate::failure::Failure;
use scenarios::units::System;
use scenarios::{Change, Scenario};
use sim::Plan;

/// Most runs of a job.
pub const MOST_RUNS: u32 = 1_000_000;

/// The file of the job.
pub const JOB_FILE: FileWanted =
    FileWanted { name: "file", value: "FILE", help: "Scenario file (TOML)", is_repeated: false };

/// One of the file's alternatives.
pub const ALTERNATIVE: Opt<String> = Opt::new(
    "alternative",
    "NAME",
    "The alternative of this name in the file instead of the job as it stands",
    |text| Ok(text.to_owned()),
);

/// Changes of the job.
pub const CHANGE: Opt<Change> = Opt::new(
    "change",
    "KEY = VALUE",
    "Change the job: a key of the file, or rakers, loaders, bucket, haul or room; may be given several times, each after the one \
     before and after the alternative, such as \"rakers = 2\" or \"loader.compact tractor.heaped = 22 ft3\"",
    str::parse,
)
.repeated()
.typed_again(ToString::to_string);

/// Units to show.
pub const UNITS: Opt<System> =
    Opt::new("units", "SYSTEM", "Units to show [default: the file's own]", |word| {
        Ok(if word == "us" { System::Us } else { System::Metric })
    })
    .one_of(&[("us", ""), ("metric", "")]);

/// Which job of the file.
pub const JOB: &[&dyn AnyOpt] = &[&ALTERNATIVE, &CHANGE, &UNITS];

/// Where all random numbers come from. The same file gives the same answer, whoever asks.
pub const SEED: Opt<u64> = Opt::new(
    "seed",
    "NUMBER",
    "Seed of the random draws; the same seed and file give the same answer on any number of threads",
    seed,
)
.usually("1")
.typed_again(ToString::to_string);

/// How many runs.
pub const RUNS: Opt<u32> = Opt::new("runs", "NUMBER", "Runs to make", |text| whole(text, 1, MOST_RUNS))
    .usually("10000")
    .typed_again(ToString::to_string);

/// A whole number within limits; commas may stand between its thousands.
///
/// # Errors
/// If it is not one, in words.
pub fn whole(text: &str, least: u32, most: u32) -> Result<u32, String> {
    let read = plain_digits(text).and_then(|number| u32::try_from(number).ok());
    read.filter(|number| (least..=most).contains(number))
        .ok_or_else(|| format!("write a whole number from {least} to {most} in digits"))
}

/// A seed: any whole number that fits in 64 bits.
///
/// # Errors
/// If it is not one, in words.
pub fn seed(text: &str) -> Result<u64, String> {
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

/// A share as it is typed: `10 %`.
pub fn percent(share: f64) -> String {
    format!("{} %", (share * 1e8).round() / 1e6)
}

/// The job of a file, compiled.
///
/// # Errors
/// If the model has no meaning for it.
pub fn compiled(scenario: &Scenario) -> Result<Plan, Failure> {
    Plan::new(&scenario.job).map_err(|error| Failure::Job { file: scenario.file.clone(), error })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_that_is_none_is_refused_with_its_limits() {
        let runs = |text| whole(text, 1, 1_000_000);
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
}
