//! Options that several questions have.

use super::{AnyOpt, FileWanted, Opt};
use crate::failure::Failure;
pub use scenarios::typed::{seed, whole};
use scenarios::units::System;
use scenarios::{Change, Scenario};
use sim::Plan;

/// Most runs of a job.
pub const MOST_RUNS: u32 = 1_000_000;

/// The file of the job.
pub const JOB_FILE: FileWanted = FileWanted {
    name: "file",
    value: "FILE",
    help: "Scenario file (TOML)",
    is_repeated: false,
    is_list: false,
};

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
