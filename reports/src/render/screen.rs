//! Results laid out for a screen of a given width. Text comes out with bold headings; whoever prints it takes the
//! styling away where it is not wanted.

mod job;
mod layout;
mod problems;

pub(crate) use job::{assumed_line, cares, files, first, titled, warning_lines};
pub use layout::plain;
pub(crate) use layout::{Layout, lines};
pub use problems::{Snippets, problems};

/// Width where there is no terminal to measure \[columns\].
pub const USUAL_WIDTH: u16 = 100;
