//! What can be typed after `heapcast check`.

use super::{JobArgs, SayArgs};
use clap::Args;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast check arena.toml
  heapcast check arena.toml --alternative \"a second raker\"
  heapcast check arena.toml --change \"loader.compact tractor.heaped = 22 ft3\"
  heapcast check arena.toml --json";

/// `heapcast check`.
#[derive(Args, Debug)]
pub(crate) struct CheckArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}
