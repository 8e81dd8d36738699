//! The engine against the model's own words, one rule a file: hand arithmetic, exact event logs, the recursion, determinism.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod any_job;
mod breaks;
mod chance;
mod choose;
mod constant;
mod crumbs;
mod deadlock;
mod deliveries;
mod determinism;
mod dump_and_stand_clear;
mod examples;
mod face;
mod fatigue;
mod fill_orders;
mod finish_rules;
mod handbook;
mod jobs;
mod lift_and_fill;
mod log;
mod many_jobs;
mod never_later;
mod nights;
mod parts;
mod passes;
mod rakers;
mod recursion;
mod refused;
mod relief;
mod renaming;
mod room;
mod same_random_numbers;
mod set_up_and_clean_up;
mod simultaneous;
mod spread_share;
mod steps_together;
mod stoppages;
mod tally;
mod time_accounts;
mod together;
mod waits;
mod walking;
