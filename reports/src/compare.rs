//! Which of several jobs is the best.

mod choices;
pub(crate) mod figures;
mod files;
pub mod findings;
mod json;
mod page;
mod question;
mod run;
mod runs_csv;
mod screen;
mod tables;

#[cfg(test)]
pub(crate) mod fixtures;

pub(crate) use files::{COMPARISON, comparison_summary, of_comparison};
pub(crate) use json::comparison_json;
pub use question::QUESTION;
pub use run::{Choice, Comparison, Judged, MOST_CHOICES, Prefer, Wanted, compiled};
pub(crate) use runs_csv::paired_runs_csv;
pub(crate) use tables::{comparison_csv, differences_csv};

use crate::answer::{Answer, Document, RunRows};
use crate::card::Card;
use crate::failure::Failure;
use crate::findings::Warning;
use crate::render::screen::first;
use std::path::Path;

impl Answer for (Comparison, findings::ComparisonFindings) {
    fn headline(&self) -> String {
        screen::headline(&self.1)
    }

    fn card(&self) -> Card {
        screen::card(&self.0, &self.1)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        first(&self.card(), folder, "", columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::comparison(&self.0, &self.1, columns) + &screen::comparison_files(&self.0, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        comparison_summary(&self.0, &self.1)
    }

    fn doubtful(&self) -> Vec<Warning> {
        self.1.warnings.doubtful.clone()
    }

    fn files(&self, rows: RunRows) -> Result<Vec<Document>, Failure> {
        of_comparison(&self.0, &self.1, rows)
    }

    fn runs(&self) -> u32 {
        self.0.choices.iter().map(|choice| choice.study.runs()).max().unwrap_or(0)
    }
}
