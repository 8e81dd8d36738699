//! The answers of heapcast: what the runs of a job say, and how that is shown on the screen, in files, in charts and on a page.
//!
//! **It promises** that the screen, the files, the charts and the page say the same thing, because all of them say what
//! stands in [`findings`]; that no figure comes without its interval, and none that is unknown as 0; and that the same file,
//! seed and number of runs give the same bytes.
//!
//! **It does not** decide anything about the job, and it knows no terminal, files, clock, signals or environment: text comes in, text
//! and bytes go out. Whoever has those calls it: the program `heapcast`, or a page in a browser.
//!
//! Each question has a module of its own: [`forecast`], [`compare`], [`sweep`], [`buckets`], [`quote`], [`replay`], [`check`]. The way of
//! the data: a checked [`scenarios::Scenario`] is run and becomes, say, a [`forecast::Forecast`]; [`findings`] says what it means in
//! words and numbers; [`render`] and `chart` lay that out as a screen, a page, tables and figures; an [`answer::Answer`] gathers it
//! all.
//!
//! ```
//! use reports::{findings, forecast::{Forecast, Wanted}};
//! use scenarios::{Answers, Selection, Texts, read_text, starter};
//!
//! let file = starter(&Answers::default());
//! let scenario = read_text(&file, "job.toml", Texts::default(), &Selection::default())?;
//! let wanted = Wanted { seed: 1, runs: sim::Runs::Exactly(200), percentiles: vec![0.1, 0.5, 0.8], by_s: None };
//! let plan = sim::Plan::new(&scenario.job)?;
//! let forecast = Forecast::new(scenario, &plan, &wanted, |runs| format!("heapcast forecast job.toml --runs {runs}"), |_| ())?;
//!
//! let done = findings::done_by(&forecast);
//! assert!(done.plan_on.starts_with("Plan on "));
//! assert!(done.rows[0].finish_working_s.value < done.rows[2].finish_working_s.value);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod answer;
pub mod ask;
pub mod asked;
pub mod asked_money;
pub mod card;
mod chart;
pub mod failure;
pub mod findings;
pub mod keys;
pub mod materials;
pub mod provenance;
pub mod render;

pub mod buckets;
pub mod check;
pub mod compare;
pub mod forecast;
pub mod quote;
pub mod replay;
pub mod sweep;

pub mod client_page;
mod crew_sheet;

/// All questions, in the order in which they are shown.
pub static QUESTIONS: &[&ask::Question] = &[
    &forecast::QUESTION,
    &compare::QUESTION,
    &quote::QUESTION,
    &buckets::QUESTION,
    &sweep::QUESTION,
    &replay::QUESTION,
    &check::QUESTION,
];

#[cfg(test)]
mod example;
