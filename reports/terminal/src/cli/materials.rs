//! What can be typed after `heapcast materials`.

use super::system;
use clap::Args;
use scenarios::units::System;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast materials                         all of the built-in table
  heapcast materials gravel                  those that go by the word
  heapcast materials wet sand --units metric";

/// `heapcast materials`.
#[derive(Args, Debug)]
pub(crate) struct MaterialsArgs {
    /// Words to look for, such as gravel [default: all]
    #[arg(value_name = "WORD")]
    pub(crate) words: Vec<String>,
    /// Units to show
    #[arg(long, value_name = "SYSTEM", value_parser = system(), default_value = "us")]
    pub(crate) units: System,
}
