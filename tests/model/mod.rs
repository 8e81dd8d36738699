//! The engine against the model's own words, one rule a file.
#![expect(clippy::unwrap_used, reason = "a test that cannot go on should stop where it is")]

mod any_job;
mod books;
mod breaks;
mod chance;
mod choose;
mod constant;
mod deliveries;
mod determinism;
mod dump_and_stand_clear;
mod face;
mod fatigue;
mod fill_orders;
mod finish_rules;
mod handbook;
pub(crate) mod jobs;
mod lift_and_fill;
pub(crate) mod log;
mod many_jobs;
mod never_later;
mod nights;
mod passes;
mod rakers;
mod recursion;
mod relief;
mod renaming;
mod room;
mod same_luck;
mod set_up_and_clean_up;
mod simultaneous;
mod spread_share;
mod stoppages;
mod stuck;
mod tally;
mod together;
mod waits;
mod walking;
