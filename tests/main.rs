//! Tests of the whole program: each module compares heapcast with something outside its own code. The model's own tests
//! are in `sim/tests`, its evidence is a test of its own, `evidence`.
//!
//! - `architecture`: the floors of the house, read from `cargo metadata` and the sources
//! - `bad_input`, `bad_input_lists`, `bad_input_changes`: malformed and impossible scenario files, lists of buckets, changes and
//!   sweeps, each with its exact message
//! - `files_on_disk`: what is read from disk, and what is not (`files` is the terminal's own)
//! - `corpus`: what the fuzzer keeps, checked for what must hold of whatever is typed
//! - `shipped`: every shipped scenario from file to forecast
//! - `common_practice`: the trade check, a job of common practice with the built-in figures
//! - `own_figures`: nothing but the trade check uses the figures of that job
//! - `trade_tables`: coverage, settling, buckets and the built-in figures beside published ones
//! - `quote`: the price, its costs counted again, and what the client may read
//! - `buckets`: buckets before buying: hand arithmetic, lift and gates, worth, what is refused
//! - `changes`: the job changed from the command line
//! - `parts`: a forecast shared by four processes
//! - `questions`: every question asked without the terminal
//! - `sweep`: a job over a range, compared with single runs
//! - `said`: what people read of every shipped scenario, and of a job that runs out of material
//! - `guide`: the screens in the README and the guide are what the program says
//! - `cli`, `clocks`, `compare`, `effort`, `exports`, `one_finding`, `output_folder`: the program as people use it (`program` starts
//!   it in a folder of its own)

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod architecture;
mod bad_input;
mod bad_input_changes;
mod bad_input_lists;
mod buckets;
mod changes;
mod cli;
mod clocks;
mod common_practice;
mod compare;
mod corpus;
mod effort;
mod exports;
#[path = "../reports/terminal/src/files.rs"]
mod files;
mod files_on_disk;
mod guide;
mod one_finding;
mod output_folder;
mod own_figures;
mod parts;
mod program;
mod questions;
mod quote;
mod raw_signs;
mod said;
mod shipped;
mod sweep;
mod trade_tables;
