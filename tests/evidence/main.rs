//! Evidence: the forecast against theory and print. Every table here is a copy of published or independently computed
//! values; each module names its source and status. Nothing is compared with heapcast's own seeded output.
//!
//! - the modules beside this file: queueing theory, printed tables, arithmetic
//! - `second_opinion`: the engine against the same model written a second time by somebody who had not seen it
//! - `page`: the page that shows all of it

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on says where and ends")]

mod answers;
mod chains;
mod chance;
mod common_random_numbers;
mod comparison;
mod face;
mod handbook;
#[allow(dead_code, reason = "shared with the tables of the trade, who write what is read here")]
mod kept;
mod laws;
mod line;
mod page;
mod paired;
mod payback;
mod percentiles;
mod place;
#[path = "../second_opinion/mod.rs"]
mod second_opinion;
mod selection;
mod sum_of_cycles;
mod table;
mod theory;
mod unlimited_room;
mod watched;
