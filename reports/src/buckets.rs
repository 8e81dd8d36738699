//! Would another bucket pay?

mod figures;
mod files;
pub mod findings;
mod json;
mod page;
mod question;
mod run;
mod screen;
mod tables;

pub(crate) use files::{BUCKETS, of_buckets, summary};
pub(crate) use json::buckets_json;
pub use question::QUESTION;
pub use run::{Buckets, ByHand, FUTURES, Jobs, Tried, Usage, Wanted};
pub(crate) use tables::buckets_csv;

use crate::answer::{Answer, Document, RunRows};
use crate::card::Card;
use crate::failure::Failure;
use crate::findings::Warning;
use crate::render::screen::first;
use std::path::Path;

impl Answer for (Buckets, findings::BucketsFindings) {
    fn headline(&self) -> String {
        self.1.verdict.answer.clone()
    }

    fn card(&self) -> Card {
        screen::card(&self.0, &self.1)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        first(&self.card(), folder, "", columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::buckets(&self.0, &self.1, columns) + &screen::buckets_files(&self.0, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        summary(&self.0, &self.1)
    }

    fn doubtful(&self) -> Vec<Warning> {
        self.1.warnings.doubtful.clone()
    }

    fn files(&self, _: RunRows) -> Result<Vec<Document>, Failure> {
        of_buckets(&self.0, &self.1)
    }
}
