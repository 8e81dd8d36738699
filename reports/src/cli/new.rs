//! What can be typed after `heapcast new`.

use super::{system, whole};
use clap::Args;
use scenarios::units::System;
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast new                               asks, and writes job.toml
  heapcast new arena.toml --volume \"30 yd3\" --bucket \"14 ft3\" --distance \"25 yd\" --rakers 1
  heapcast new beds.toml --units metric --volume \"30 m3\" --bucket \"0.5 m3\" --gate \"1.8 m\"
  heapcast new mine.toml --from NAME         a copy of a shipped scenario

A file that is there already is never overwritten.";

/// `heapcast new`.
#[derive(Args, Debug)]
pub struct NewArgs {
    /// File to write; must not be there yet
    #[arg(default_value = "job.toml")]
    pub file: PathBuf,
    /// Copy this shipped scenario instead
    #[arg(long, value_name = "NAME", conflicts_with = "answers")]
    pub from: Option<String>,
    /// The answers.
    #[command(flatten)]
    pub answers: AnswerArgs,
}

/// Answers to the questions that `heapcast new` asks.
#[derive(Args, Clone, Debug, Default)]
#[group(id = "answers", multiple = true)]
pub struct AnswerArgs {
    /// What the job is called
    #[arg(long, value_name = "TEXT")]
    pub title: Option<String>,
    /// Units the file is written in [default: us]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub units: Option<System>,
    /// Material, by its name in the built-in table
    #[arg(long, value_name = "NAME")]
    pub material: Option<String>,
    /// Loose volume to move, or area and depth as in "110 m2 at 10 cm"; such as "30 yd3" or "24 m3"
    #[arg(long, value_name = "VOLUME")]
    pub volume: Option<String>,
    /// What a truck brings at a time, such as "20 yd3" or "15 m3"
    #[arg(long, value_name = "VOLUME")]
    pub truckload: Option<String>,
    /// Heaped capacity of the bucket, such as "14 ft3" or "0.4 m3"
    #[arg(long, value_name = "VOLUME")]
    pub bucket: Option<String>,
    /// Distance from the pile to the middle of the ground, such as "25 yd" or "23 m"
    #[arg(long, value_name = "LENGTH")]
    pub distance: Option<String>,
    /// People who rake
    #[arg(long, value_name = "NUMBER", value_parser = whole::<u32>(0, 64))]
    pub rakers: Option<u32>,
    /// Clear width of a gate on the way, such as "6 ft" or "1.8 m", if there is one
    #[arg(long, value_name = "LENGTH")]
    pub gate: Option<String>,
    /// Start of the day, such as "08:00"
    #[arg(long, value_name = "CLOCK")]
    pub start: Option<String>,
}

impl AnswerArgs {
    /// Whether nothing was answered by a flag.
    pub fn is_empty(&self) -> bool {
        let Self { title, units, material, volume, truckload, bucket, distance, rakers, gate, start } = self;
        units.is_none()
            && rakers.is_none()
            && [title, material, volume, truckload, bucket, distance, gate, start]
                .iter()
                .all(|answer| answer.is_none())
    }
}
