//! What must hold of whatever is typed: shared by the fuzz targets, which look for a counterexample, and by the test
//! `corpus`, which puts all those found so far to it.

pub(crate) mod bucket_list;
pub(crate) mod change;
pub(crate) mod observed;
pub(crate) mod quantity;
pub(crate) mod reading;
mod runs;

use std::fmt::Write;

/// A text in quotes as TOML has it.
fn quoted(text: &str) -> String {
    let mut all = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => all.extend(['\\', c]),
            // Writing to a string cannot fail.
            c if c.is_control() => drop(write!(all, "\\u{:04x}", c as u32)),
            c => all.push(c),
        }
    }
    all + "\""
}
