//! The engine against the model's own words.

mod constant;
pub mod jobs;
mod recursion;
