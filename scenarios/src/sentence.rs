//! The job as one sentence in plain words, of which every figure can be taken and changed.

mod clause;
mod crew;
mod figures;
mod further;
mod ground;
mod hours;
mod machines;
mod piles;
mod prices;
mod steps;
mod teller;
mod words;

pub use clause::{Add, Clause, Clock, Further, Part, Sentence, Value};
pub(crate) use teller::Teller;

#[cfg(test)]
pub(crate) mod tests;
