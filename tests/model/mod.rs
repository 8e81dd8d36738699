//! The engine against the model's own words, one rule a file.

mod books;
mod choose;
mod constant;
mod dump_and_stand_clear;
mod face;
mod fatigue;
pub mod jobs;
mod lift_and_fill;
pub mod log;
mod passes;
mod rakers;
mod recursion;
mod room;
mod spread_share;
mod together;
mod walking;
