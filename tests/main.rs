//! The inspectors of the whole house: each module holds heapcast against something outside its own code. Those of the ground
//! floor alone, the model and its statistics, are in `ground.rs`.
//!
//! - `architecture`: the floors of the house, read from `cargo metadata` and the sources
//! - `bad_input`: malformed and impossible scenario files, each with its exact message
//! - `shipped`: every shipped scenario from file to forecast, and the trade check
//! - `changes`: the job changed from the command line
//! - `cli`, `exports`, `output_folder`: the program as people use it (`program` starts it in a folder of its own)

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod architecture;
mod bad_input;
mod changes;
mod cli;
mod exports;
mod output_folder;
mod program;
mod shipped;
