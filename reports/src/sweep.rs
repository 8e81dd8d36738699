//! The job over a range of one thing or two: where it stops paying.

mod figures;
mod files;
pub mod findings;
mod json;
mod page;
mod question;
mod run;
mod screen;
mod tables;

pub(crate) use files::{FILES, all};
pub(crate) use json::sweep_json;
pub use question::QUESTION;
pub use run::{Deadline, MOST_POINTS, MOST_RUNS_IN_ALL, Point, Points, Run, Sweep, Wanted, count};
pub(crate) use tables::sweep_csv;

use crate::answer::{Answer, Document, RunRows};
use crate::card::Card;
use crate::failure::Failure;
use crate::findings::{Warning, warnings};
use crate::render::screen::first;
use std::path::Path;

impl Answer for (Sweep, findings::SweepFindings) {
    fn headline(&self) -> String {
        self.1.verdict.clone()
    }

    fn card(&self) -> Card {
        screen::card(&self.0, &self.1)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        first(&self.card(), folder, "", columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::sweep(&self.0, &self.1, columns) + &screen::sweep_files(&self.0, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        sweep_json(&self.0, &self.1).map_err(|error| crate::answer::failed("summary.json", &error))
    }

    fn doubtful(&self) -> Vec<Warning> {
        warnings(&self.0.cautions()).doubtful
    }

    fn files(&self, _: RunRows) -> Result<Vec<Document>, Failure> {
        all(&self.0, &self.1)
    }
}
