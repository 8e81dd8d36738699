//! The engine against the model's own words, one rule a file.

mod books;
mod breaks;
mod choose;
mod constant;
mod deliveries;
mod dump_and_stand_clear;
mod face;
mod fatigue;
mod fill_orders;
mod finish_rules;
pub mod jobs;
mod lift_and_fill;
pub mod log;
mod nights;
mod passes;
mod rakers;
mod recursion;
mod room;
mod set_up_and_clean_up;
mod simultaneous;
mod spread_share;
mod together;
mod walking;
