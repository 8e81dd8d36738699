//! What can be typed after `heapcast keys`.

use clap::Args;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast keys                  the tables of a scenario file and their keys
  heapcast keys loader           all keys of a loader
  heapcast keys loader.heaped    one of them
  heapcast keys fuel             those that have to do with fuel";

/// `heapcast keys`.
#[derive(Args, Debug)]
pub(crate) struct KeysArgs {
    /// Words to look for, such as loader [default: the names of all]
    #[arg(value_name = "WORD")]
    pub(crate) words: Vec<String>,
}
