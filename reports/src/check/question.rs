//! How a check is asked for.

use super::Checked;
use crate::ask::{Answered, Asked, JOB, JOB_FILE, Prepared, Question, Reader, Ready, compiled};
use std::path::PathBuf;

/// What is wrong with the file, doubtful or assumed?
pub static QUESTION: Question = Question {
    name: "check",
    about: "Check a scenario file and list cautions and assumptions, without a run",
    examples: "\
Examples:
  heapcast check arena.toml
  heapcast check arena.toml --alternative \"a second raker\"
  heapcast check arena.toml --change \"loader.compact tractor.heaped = 22 ft3\"
  heapcast check arena.toml --json",
    files: &[JOB_FILE],
    options: &[JOB],
    folder: None,
    in_parts: false,
    prepared,
};

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let scenario = reader.job(asked.file())?.scenario(&asked.selection())?;
    compiled(&scenario)?;
    Ok(Box::new(Checked(scenario)))
}

impl Prepared for Checked {
    fn further_files(&self) -> Vec<PathBuf> {
        self.0.observed_files.clone()
    }

    fn run(self: Box<Self>, _: &(dyn Fn(u32) + Sync)) -> Answered {
        Ok(self)
    }
}
