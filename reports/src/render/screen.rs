//! Results laid out for a screen of a given width. Text comes out with bold headings; whoever prints it takes the
//! styling away where it is not wanted.

mod buckets;
mod check;
mod comparison;
mod first;
mod keys;
mod layout;
mod materials;
mod problems;
mod quote;
mod replay;
mod summary;
mod sweep;

pub use buckets::{buckets, buckets_files};
pub use check::{check, verdict};
pub use comparison::{comparison, comparison_files};
pub use first::{buckets_first, check_first, comparison_first, forecast_first, quote_first, sweep_first};
pub use keys::{key_names, keys, keys_page};
pub use materials::materials;
pub use problems::{Snippets, problems};
pub use quote::{quote, quote_files};
pub use replay::{one_run, replay, replay_files};
pub use summary::{files, summary};
pub use sweep::{sweep, sweep_files};

/// Width where there is no terminal to measure \[columns\].
pub const USUAL_WIDTH: u16 = 100;
