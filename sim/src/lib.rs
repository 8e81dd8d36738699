//! The ground of heapcast: what a job with loose material, small loaders and rakers takes, as a distribution.
//!
//! # What this crate promises
//!
//! A [`Job`] is plain data in SI. [`Plan::new`] refuses what the model cannot mean and compiles the rest. A [`Study`] is
//! many runs of a plan: every [`Outcome`] depends on the seed and its run's number and on nothing else, so it is the
//! same to the last bit on any number of threads, and a [`Replay`] makes any one of them again with its full event log.
//! Time is counted in whole microseconds, so every resource's books close exactly. Figures come with intervals
//! ([`Percentile`], [`Mean`], [`Share`]). [`relief`] asks what would help, under the same luck; [`Handbook`] is the
//! single guess to hold the range against.
//!
//! # What it does not
//!
//! No files, no units, no printing, no clock, no thread of its own making (it uses the current `rayon` pool). It does
//! not say whether a machine may be used for a job: that is for its manual and for those who know.
//!
//! # Example
//!
//! Ten loads of one cubic metre with one loader and one raker, raking uncertain from load to load:
//!
//! ```
//! use sim::*;
//! let mut chance = Chance::none();
//! chance.loads.raking = Distribution::Lognormal { mean: 1.0, cv: 0.3 };
//! let job = Job {
//!     material: Material { name: "bark".into(), density_kg_per_m3: 250.0, fill_factor: 1.0 },
//!     zones: vec![Zone {
//!         name: "orchard row".into(),
//!         need_m3: 10.0,
//!         room: Some(2),
//!         ways: vec![Way { stockpile: 0, distance_m: 30.0, passes: vec![] }],
//!         walks_m: vec![0.0],
//!     }],
//!     stockpiles: vec![Stockpile { name: "pile".into(), on_hand_m3: 12.0, deliveries: vec![], face: 1 }],
//!     passes: vec![],
//!     loaders: vec![Loader {
//!         name: "loader".into(), heaped_m3: 1.0, struck_m3: None, lift_kg: None, width_m: 1.2,
//!         loaded_m_per_s: 1.5, empty_m_per_s: 2.0, load_s: 20.0, dump_s: 10.0, start_stop_s: 4.0, spread_s_per_m3: 0.0,
//!         machine_cost_per_h: 0.0, operator_cost_per_h: 40.0, fuel_working_l_per_h: 4.0, fuel_idling_l_per_h: 1.0,
//!         stoppages: None,
//!     }],
//!     rakers: vec![Raker {
//!         name: "raker".into(), rate_m3_per_h: 22.0, start_zone: 0, walking_m_per_s: 1.3, cost_per_h: 25.0,
//!     }],
//!     raking: Raking { together: None, fatigue: None, spread_share: 0.0, stand_clear: true },
//!     fill_order: FillOrder::AsListed,
//!     finish: FinishRule::AreaCovered,
//!     shift: Shift {
//!         start_s: 8.0 * 3600.0, end_s: None, breaks: vec![],
//!         set_up_s: Distribution::Constant(600.0), clean_up_s: Distribution::Constant(300.0),
//!     },
//!     chance,
//!     prices: Prices { fuel_per_l: 1.5, material: 0.0 },
//! };
//! let study = Study::new(&Plan::new(&job)?, 42, Runs::Exactly(1_000), |_| {})?;
//! let minutes = study.sorted(|o| o.finish.working.as_mins_f64());
//! let p80 = minutes.percentile(0.8);
//! assert!(p80.value > 40.0 && p80.value < 60.0);
//! assert!(p80.low < Some(p80.value) && p80.high > Some(p80.value));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod activity;
mod always_valid;
mod calendar;
mod chance;
mod cost;
mod defaults;
mod duration;
mod error;
mod fit;
mod handbook;
mod job;
mod luck;
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
mod study;

pub use activity::{LoaderActivity, LoaderTimes, RakerActivity, RakerTimes};
pub use chance::{ChanceError, Distribution};
pub use cost::CostParts;
pub use duration::Duration;
pub use error::{Deadlock, Figure, JobError, JobPart, PartKind, RunError, RunProblem};
pub use fit::{FitError, LowTypicalHigh};
pub use handbook::Handbook;
pub use job::*;
pub use luck::{Factor, Kind, LoadLuck, RunLuck};
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
pub use select::{Luck, Promise, Selected, select};
pub use study::{Runs, Study};
