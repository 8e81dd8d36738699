//! Units of the trade: what people type and what they are shown.

mod exact;
mod show;
mod system;

pub use show::*;
pub use system::System;
