//! Units of the trade: what people type and what they are shown.

pub(crate) mod amount;
pub(crate) mod amount_error;
pub(crate) mod dimension;
pub(crate) mod exact;
pub(crate) mod kind;
mod numeral;
mod show;
mod system;
mod words;

pub use show::*;
pub use system::System;

/// A function that shows a quantity in a system of units.
pub type Show = fn(f64, System) -> String;
