//! A zone cut into drop points, one for each expected load, and the order in which they are filled.

mod cut;
mod order;

pub use cut::{DropPoint, spacing};
pub use order::{FillOrder, Filled, fill_order};
