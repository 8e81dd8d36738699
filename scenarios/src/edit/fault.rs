//! Why a text cannot be changed as asked.

use std::fmt;

/// Why a text cannot be changed as asked.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fault {
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub right: String,
}

impl Fault {
    pub(crate) fn new(what: impl Into<String>, right: impl Into<String>) -> Self {
        Self { what: what.into(), right: right.into() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.right.is_empty() {
            true => f.write_str(&self.what),
            false => write!(f, "{}; {}", self.what, self.right),
        }
    }
}

impl std::error::Error for Fault {}

/// What only a person can change.
pub(super) fn by_hand() -> Fault {
    Fault::new(
        "this file is written in a way that cannot be changed here",
        "change it in the text, with [material], [[zone]], [[stockpile]] and [[loader]] on lines of their own",
    )
}
