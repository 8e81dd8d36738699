//! The ground of heapcast.
#![warn(missing_docs)]

mod activity;
mod calendar;
mod chance;
mod fit;
mod handbook;
mod job;
mod luck;
mod observe;
mod outcome;
mod percentile;
mod plan;
mod relief;
mod replay;
mod run;
mod sampler;
mod study;

pub use activity::{LoaderActivity, LoaderTimes, Micros, RakerActivity, RakerTimes, SECOND};
pub use chance::{ChanceError, Distribution};
pub use fit::{FitError, LowTypicalHigh};
pub use handbook::Handbook;
pub use job::*;
pub use luck::{Factor, Kind, LoadLuck, RunLuck};
pub use observe::{Entry, Event};
pub use outcome::{Books, Moment, Outcome, PROGRESS_PARTS, ZoneTotals};
pub use percentile::{LEVEL, Mean, Percentile, Share, Sorted, interval_ranks, mean, share};
pub use plan::{JobError, MOST_LOADERS, MOST_RAKERS, Plan};
pub use relief::{Improvement, Relief, ReliefError, relief};
pub use replay::Replay;
pub use run::RunError;
pub use sampler::Sampler;
pub use study::{Runs, Study};
