//! Evidence: the forecast against theory and print. Every table here is a copy of published or independently computed
//! values; each module names its source and status. Nothing is compared with heapcast's own seeded output.

mod answers;
mod chains;
mod chance;
mod common_random_numbers;
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
mod selection;
pub(crate) mod sheet;
mod sum_of_cycles;
mod table;
mod theory;
mod unlimited_room;
mod watched;
