//! How long does it take to move a pile of loose material with small loaders and rakes? A discrete-event simulator that answers
//! with a distribution, and says what holds the job up and what would help.
//!
//! # Start here
//!
//! One loader and one raker; raking times differ from load to load:
//!
//! ```
//! use sim::*;
//! let mut job = Job {
//!     material: Material { density_kg_per_m3: 250.0, ..Material::default() },
//!     zones: vec![Zone { need_m3: 10.0, ways: vec![Way { distance_m: 30.0, ..Way::default() }], ..Zone::default() }],
//!     stockpiles: vec![Stockpile { on_hand_m3: 12.0, ..Stockpile::default() }],
//!     loaders: vec![Loader {
//!         heaped_m3: 1.0, loaded_m_per_s: 1.5, empty_m_per_s: 2.0, load_s: 20.0, dump_s: 10.0, ..Loader::default()
//!     }],
//!     rakers: vec![Raker { rate_m3_per_h: 22.0, walking_m_per_s: 1.3, ..Raker::default() }],
//!     ..Job::default()
//! };
//! job.chance.loads.raking = Distribution::Lognormal { mean: 1.0, cv: 0.3 };
//!
//! let study = Study::new(&Plan::new(&job)?, 42, Runs::Exactly(1_000), |_| {})?;
//! let p80 = study.sorted(|outcome| outcome.finish.working.as_mins_f64()).percentile(0.8);
//! // The raker needs 27.3 min for ten loads and never begins before the first lies there after 50 s.
//! assert!(p80.value > 28.0 && p80.value < 35.0);
//! assert!(p80.low < Some(p80.value) && p80.high > Some(p80.value));
//! let waiting = study.accounts.loaders[0].time(LoaderActivity::WaitingForRoom);
//! assert_eq!(waiting, Duration::ZERO, "there is no limit of room");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! Three longer programs are in `sim/examples`: one loader and one raker (`one_and_one`), a yard with a gate
//! (`yard_with_a_gate`), and two crews compared under common random numbers (`two_crews`).
//!
//! # The parts
//!
//! | step | types |
//! |---|---|
//! | say what is to be done | [`Job`] and its parts, plain data; figures with a neutral value have it by default |
//! | say what is left to chance | [`Chance`] of [`Distribution`]s, [`LowTypicalHigh`] for how people know things |
//! | make it ready | [`Plan`], which refuses what the model has no meaning for ([`JobError`]) |
//! | run it many times | [`Study`]; shared by several processes as [`StudyPart`]s |
//! | look into one replication | [`Replay`], with the event log |
//! | read the answer | [`Outcome`] and [`Accounts`]: durations by [`LoaderActivity`] and [`RakerActivity`], volumes, cost |
//! | say how sure it is | [`Percentile`], [`Mean`], [`Share`], each with its interval |
//! | compare and choose | [`paired`], [`select`](fn@select), [`relief`](fn@relief), [`Payback`] |
//! | hold a single guess beside it | [`Handbook`] |
//!
//! A *replication* is one simulated performance of the job; to people, and in field names such as [`Outcome::run`], it is a run.
//!
//! # Units
//!
//! SI, said in each name: `_m`, `_m3`, `_kg`, `_s`, `_m_per_s`, with hours for rates of work, fuel and money (`_per_h`). What goes
//! in are real numbers, since a mean is multiplied by random factors. What comes out of a replication is a [`Duration`] in whole
//! microseconds: so the time accounts of each loader and raker add up exactly to the time on the job. Points of time count from
//! the start of the first day, once with nights and once without ([`Moment`]).
//!
//! # Reproducibility
//!
//! Every random number is a pure function of the seed, the replication's number, the load's number and what it is for. An outcome
//! therefore depends on the seed and its number alone: it is the same to the last bit on any number of threads, in parts made by
//! different processes, and when a [`Replay`] makes it again. Two jobs run with one seed have the same days and the same loads
//! (common random numbers), so that small true differences show in few replications.
//!
//! # What it does not do
//!
//! No files, no unit conversion, no printing, no clock, no thread of its own: it uses the current `rayon` pool, and without the feature
//! `threads` the caller's alone. It does not say whether a machine may be used for a job: that is for its manual and for those who
//! know.
//!
//! # Sources of the methods
//!
//! From memory unless a test names its printed table. Random numbers: Steele, Lea & Flood, *Fast Splittable Pseudorandom Number
//! Generators* (2014). Common random numbers and paired comparison: Law, *Simulation Modeling and Analysis*. Intervals of
//! percentiles: David & Nagaraja, *Order Statistics*. Selection of the best: Fan, Hong & Nelson (2016). PERT:
//! Malcolm et al. (1959). Each is cited where it is used.

mod activity;
mod always_valid;
mod beta;
mod calendar;
mod chance;
mod cost;
mod defaults;
mod duration;
mod error;
mod fit;
mod handbook;
mod job;
mod observe;
mod outcome;
mod paired;
mod part;
mod payback;
mod percentile;
mod plan;
mod relief;
mod replay;
mod run;
mod sampler;
mod select;
mod streams;
mod study;
mod threads;

pub use activity::{LoaderActivity, LoaderTimes, RakerActivity, RakerTimes};
pub use chance::{ChanceError, Distribution};
pub use cost::CostParts;
pub use duration::Duration;
pub use error::{Deadlock, Figure, JobError, JobPart, PartKind, RunError, RunProblem};
pub use fit::{FitError, LowTypicalHigh};
pub use handbook::Handbook;
pub use job::*;
pub use observe::{Entry, Event};
pub use outcome::{Accounts, Moment, Outcome, PROGRESS_PARTS, ZoneTotals};
pub use paired::{Paired, paired};
pub use part::{MergeError, StudyPart};
pub use payback::{Payback, Purchase};
pub use percentile::{LEVEL, Mean, Percentile, Share, Sorted, interval_ranks, mean, share};
pub use plan::{MOST_LOADERS, MOST_RAKERS, Plan};
pub use relief::{DoneMore, Improvement, Relief, ReliefError, Tries, relief, truckload_m3};
pub use replay::Replay;
pub use sampler::Sampler;
pub use select::{Promise, RandomNumbers, Selected, select};
pub use streams::{Factor, LoadDraw, LoadStream, Streams};
pub use study::{Runs, Study};
pub use threads::both;
