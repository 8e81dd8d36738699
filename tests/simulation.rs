//! Tests of the simulation, built as a test of `sim` alone:
//!
//! - `model`: the engine against the model's own words: hand arithmetic, exact event logs, the recursion, determinism
//! - `evidence`: the forecast against queueing theory and printed tables, each with its source
//! - `second_opinion`: the engine against the same model written a second time by somebody who had not seen it

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod evidence;
mod model;
mod second_opinion;
