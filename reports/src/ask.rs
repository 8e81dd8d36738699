//! Questions that can be asked about a job, each described as data: its options, what is read for it, and how it is answered.
//!
//! Whoever lets people ask, a terminal or a page in a browser, goes through [`QUESTIONS`](crate::QUESTIONS): it shows what the options
//! say of themselves, checks what is typed with [`AnyOpt::check`], and gives all of it to [`Question::prepare`] as [`Asked`]. What comes
//! back knows how much there is to do and does it.
//!
//! ```
//! use reports::ask::{Asked, Reader};
//! use scenarios::{BucketList, JobFile, Refusal, Texts};
//! use std::path::Path;
//!
//! struct Shipped;
//! impl Reader for Shipped {
//!     fn job(&self, file: &Path) -> Result<JobFile, Refusal> {
//!         let (_, text) = scenarios::shipped()[6];
//!         JobFile::of_text(text, &file.display().to_string(), Texts::shipped())
//!     }
//!     fn buckets(&self, file: &Path) -> Result<BucketList, Refusal> {
//!         scenarios::buckets_text("name, heaped\nsmall, 8.5 ft3\n", &file.display().to_string())
//!     }
//! }
//!
//! let sweep = reports::QUESTIONS.iter().copied().find(|question| question.name == "sweep").unwrap();
//! let typed = [("vary", "rakers 1..2"), ("runs", "100")];
//! let asked = Asked::new(sweep, ["job.toml"], typed).unwrap();
//! let answer = sweep.prepare(&asked, &Shipped)?.run(&|_| ())?;
//! assert!(answer.headline().contains("raker"));
//!
//! let faults = Asked::new(sweep, ["job.toml"], [("vary", "rakers"), ("runs", "ten")]).unwrap_err();
//! assert_eq!(faults[1].to_string(), "runs: write a whole number from 1 to 1000000 in digits");
//! # Ok::<(), reports::failure::Failure>(())
//! ```

mod asked;
mod opt;
mod shared;

pub use asked::{Asked, Fault};
pub use opt::{About, AnyOpt, Opt};
pub use shared::{
    ALTERNATIVE, CHANGE, JOB, JOB_FILE, MOST_RUNS, RUNS, SEED, UNITS, compiled, percent, seed, whole,
};

use crate::answer::Answer;
use crate::failure::Failure;
use scenarios::{BucketList, JobFile, Refusal};
use sim::{Plan, Study};
use std::path::{Path, PathBuf};

/// A question ready to be answered, or why it cannot be.
pub type Ready = Result<Box<dyn Prepared>, Failure>;
/// The answer, or why there is none.
pub type Answered = Result<Box<dyn Answer + Send>, Failure>;

/// A question that can be asked about a job.
pub struct Question {
    /// Its name, as typed.
    pub name: &'static str,
    /// What it answers, in a line.
    pub about: &'static str,
    /// How it is typed, and what comes of it.
    pub examples: &'static str,
    /// The files it is about, in the order in which they are typed.
    pub files: &'static [FileWanted],
    /// What else can be said, in groups.
    pub options: &'static [&'static [&'static dyn AnyOpt]],
    /// The folder of its answer; `None` for an answer without files.
    pub folder: Option<Folder>,
    /// Whether its runs may be made in parts, by several processes.
    pub in_parts: bool,
    /// Reads what is needed and checks all that was asked: see [`Question::prepare`].
    pub prepared: fn(&Asked, &dyn Reader) -> Ready,
}

/// A file, or several, that a question is about.
#[derive(Clone, Copy, Debug)]
pub struct FileWanted {
    /// Its name among what is typed.
    pub name: &'static str,
    /// How its place is shown, such as `FILE`.
    pub value: &'static str,
    /// What it is.
    pub help: &'static str,
    /// Whether several may be named.
    pub is_repeated: bool,
    /// Whether it is a list of buckets, not a scenario.
    pub is_list: bool,
}

/// The folder of an answer.
#[derive(Clone, Copy, Debug)]
pub struct Folder {
    /// What it is called when nothing else is asked for.
    pub name: &'static str,
    /// The files that may come to stand in it.
    pub files: &'static [&'static str],
    /// Whether one of them has a row for each run, so that it can be said how many.
    pub has_run_rows: bool,
}

/// Whoever has files.
pub trait Reader: Sync {
    /// A scenario file, as typed.
    ///
    /// # Errors
    /// Everything that is wrong with it.
    fn job(&self, file: &Path) -> Result<JobFile, Refusal>;

    /// A list of buckets, as typed.
    ///
    /// # Errors
    /// Everything that is wrong with it.
    fn buckets(&self, file: &Path) -> Result<BucketList, Refusal>;
}

/// A question whose files are read, whose options are checked and whose jobs are compiled.
pub trait Prepared: Send {
    /// Files that were read besides those typed.
    fn further_files(&self) -> Vec<PathBuf>;

    /// What there is to do; `None` where it is nothing to speak of.
    fn load(&self) -> Option<Load<'_>> {
        None
    }

    /// Makes the runs and works out what they tell. `made` is told of runs as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run can make no progress, or the model has no meaning for what is tried.
    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered;

    /// The runs that may be made elsewhere, where the question is one that is asked [in parts](Question::in_parts).
    fn in_parts(self: Box<Self>) -> Option<Box<dyn InParts>> {
        None
    }
}

/// A question whose runs may be made in parts.
pub trait InParts: Send {
    /// The job, the seed and the number of runs of all parts together.
    fn study(&self) -> (&Plan, u64, u32);

    /// The answer from runs that are made already.
    ///
    /// # Errors
    /// As [`Prepared::run`].
    fn merged(self: Box<Self>, study: Study, made: &(dyn Fn(u32) + Sync)) -> Answered;
}

/// What there is to do for an answer, in runs of jobs.
#[derive(Clone, Debug)]
pub struct Load<'a> {
    /// Some of the jobs: their mean tells how long a run takes.
    pub plans: Vec<&'a Plan>,
    /// Seed of the runs.
    pub seed: u64,
    /// Runs of all jobs that are surely made.
    pub least: f64,
    /// Runs of all jobs that may be made.
    pub most: f64,
    /// How many it will be, where that is known to the last one: for whoever shows progress.
    pub in_all: Option<u64>,
    /// Bytes kept of each.
    pub kept: f64,
    /// Runs whose every step is kept.
    pub replayed: f64,
    /// Jobs with rows in the table of runs, and runs of each of them.
    pub rows: (f64, u32),
    /// The option that makes it smaller, and its value.
    pub option: (&'static str, u32),
}

impl<'a> Load<'a> {
    /// So many runs in all of such jobs, of which nothing is kept.
    pub fn of(plans: Vec<&'a Plan>, seed: u64, runs: u64) -> Self {
        Self {
            plans,
            seed,
            least: runs as f64,
            most: runs as f64,
            in_all: Some(runs),
            kept: 0.0,
            replayed: 0.0,
            rows: (0.0, 0),
            option: ("--runs", 0),
        }
    }
}

impl Question {
    /// All its options, in the order in which they are shown.
    pub fn options(&self) -> impl Iterator<Item = &'static dyn AnyOpt> {
        self.options.iter().copied().flatten().copied()
    }

    /// Reads what is needed, checks what was asked against it and compiles the jobs; no run is made yet.
    ///
    /// # Errors
    /// Everything that is wrong with a file, or what in the options does not go with it.
    pub fn prepare(&self, asked: &Asked, reader: &dyn Reader) -> Ready {
        (self.prepared)(asked, reader)
    }
}
