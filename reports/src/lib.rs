//! The face of heapcast: what a forecast says, and how it is shown on the screen, in files, in charts and on a page.
//!
//! **It promises** that the screen, the files, the charts and the page say the same thing, because all of them say what
//! stands in [`findings`]; that no figure comes without its interval, and none that is unknown as 0; that the same file,
//! seed and number of runs give the same bytes; and that a folder of results is replaced only when all of it is complete.
//!
//! **It does not** decide anything about the job, and it keeps nothing between two commands.
//!
//! The way of the data: a checked [`scenarios::Scenario`] is run and becomes a [`forecast::Forecast`]; [`findings`] says
//! what it means in words and numbers; [`text`] lays that out for the screen, [`export`] for files, [`mod@chart`] as
//! figures, [`page`] as a report. All of these are pure: they return text or bytes. Only [`command`], [`say`] and
//! [`output_folder`] touch the world.
//!
//! ```
//! use reports::{findings, forecast::{Forecast, Wanted}};
//! use scenarios::{Answers, Selection, read_text, starter};
//!
//! let file = starter(&Answers::default());
//! let scenario = read_text(&file, "job.toml", std::path::Path::new("."), &Selection::default())?;
//! let wanted = Wanted { seed: 1, runs: sim::Runs::Exactly(200), percentiles: vec![0.1, 0.5, 0.8], by_s: None };
//! let plan = sim::Plan::new(&scenario.job)?;
//! let forecast = Forecast::new(scenario, &plan, &wanted, |runs| format!("heapcast forecast job.toml --runs {runs}"), |_| ())?;
//!
//! let done = findings::done_by(&forecast);
//! assert!(done.plan_on.starts_with("Plan on "));
//! assert!(done.rows[0].finish_working_s.value < done.rows[2].finish_working_s.value);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod asked;
pub mod asked_money;
pub mod buckets;
pub mod chart;
pub mod cli;
pub mod command;
pub mod comparison;
pub mod documents;
pub mod export;
pub mod failure;
pub mod findings;
pub mod forecast;
pub mod interrupt;
pub mod load_story;
pub mod output_folder;
pub mod page;
pub mod progress;
pub mod provenance;
pub mod quote;
pub mod say;
pub mod sweep;
pub mod text;

#[cfg(test)]
mod example;
