//! A scenario that has been read and checked.

use crate::assumption::Assumption;
use crate::caution::entry::Caution;
use crate::change::{Change, in_one_line};
use crate::lift::StatedLift;
use crate::sentence::Sentence;
use crate::units::System;

/// Which variant of the job in a file is wanted, and in which units it is to be spoken of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Selection {
    /// Name of one of the file's alternatives; `None` = the job as it stands.
    pub alternative: Option<String>,
    /// What else is changed, after the alternative's own changes, in this order.
    pub changes: Vec<Change>,
    /// Units of everything shown; `None` = those the file asks for, or uses most.
    pub units: Option<System>,
}

/// A checked job with all that has to be said about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    /// Title of the job.
    pub title: String,
    /// The job in one sentence, in these units.
    pub sentence: Sentence,
    /// Name of the file as typed.
    pub file: String,
    /// SHA-256 of the file, and of every file of observed values it names, in hexadecimal digits.
    pub hash: String,
    /// Where the files of observed values were found that it was read from besides.
    pub observed_files: Vec<std::path::PathBuf>,
    /// Date of the first day, if given.
    pub date: Option<time::Date>,
    /// System of units to show results in.
    pub units: System,
    /// Currency of all prices as typed, such as `$`; empty if the file has no prices.
    pub currency: String,
    /// Names of all alternatives in the file, in its order.
    pub alternatives: Vec<String>,
    /// The alternative this is, if not the job as it stands.
    pub alternative: Option<String>,
    /// What else was changed, in this order.
    pub changes: Vec<Change>,
    /// The job in SI.
    pub job: sim::Job,
    /// Volume on hand and delivered, as ordered \[m3\].
    pub ordered_m3: f64,
    /// Every default used and every fit made.
    pub assumptions: Vec<Assumption>,
    /// Doubtful numbers and the usual cautions.
    pub cautions: Vec<Caution>,
    /// What was said of the ground that the job itself no longer holds.
    pub stated: Stated,
}

impl Scenario {
    /// A short label for tables and charts: `as it stands`, the name of the alternative, the changes, or both.
    pub fn name(&self) -> String {
        match (&self.alternative, self.changes.as_slice()) {
            (None, []) => "as it stands".into(),
            (Some(name), []) => name.clone(),
            (None, changes) => in_one_line(changes),
            (Some(name), changes) => format!("{name}; {}", in_one_line(changes)),
        }
    }
}

/// What was said of the ground that the job itself no longer holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stated {
    /// One entry for each zone, in the job's order.
    pub zones: Vec<StatedZone>,
    /// The usual load of a truck \[m3\]: the most frequent volume of a delivery, or the built-in one.
    pub truckload_m3: f64,
    /// One entry for each loader, in the job's order.
    pub loaders: Vec<StatedLoader>,
    /// What the fixed costs of the job are made of.
    pub fixed: FixedCosts,
}

/// What was said of a loader that the job itself does not hold.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StatedLoader {
    /// What its bucket weighs today \[kg\], if given.
    pub bucket_mass_kg: Option<f64>,
    /// The figure that decides what it may lift, if one is given: of several the one that allows least.
    pub lift: Option<StatedLift>,
}

/// Costs that do not depend on how the job goes \[money\]; their sum is `job.prices.material`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FixedCosts {
    /// The material itself.
    pub material: f64,
    /// Bringing it.
    pub delivery: f64,
    /// Getting the machine there and back.
    pub mobilisation: f64,
}

impl FixedCosts {
    /// All of them together \[money\].
    pub fn sum(&self) -> f64 {
        self.material + self.delivery + self.mobilisation
    }
}

/// How a zone was measured.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StatedZone {
    /// Area \[m2\], if given.
    pub area_m2: Option<f64>,
    /// Finished depth \[m\], if given.
    pub depth_m: Option<f64>,
    /// Share of the depth lost by settling that was calculated with, if area and depth were given.
    pub settling: Option<f64>,
}
