//! The inspectors: each module holds heapcast against something outside its own code.
//!
//! - `architecture`: the floors of the house, read from `cargo metadata` and the sources
//! - `model`: the engine against the model's own words: hand arithmetic, exact event logs, the recursion, determinism
//! - `evidence`: the forecast against queueing theory and printed tables, each with its source
//! - `second_opinion`: the engine against the same model written a second time by somebody who had not seen it
//! - `bad_input`: malformed and impossible scenario files, each with its exact message
//! - `shipped`: every shipped scenario from file to forecast, and the trade check
//! - `cli`, `exports`, `output_folder`: the program as people use it (`program` starts it in a folder of its own)

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod architecture;
mod bad_input;
mod cli;
mod evidence;
mod exports;
mod model;
mod output_folder;
mod program;
mod second_opinion;
mod shipped;
