//! Cautions and assumptions, without a run.

mod json;
mod question;
mod screen;

pub use screen::check;

pub(crate) use json::check_json;
pub use question::QUESTION;

use crate::answer::{Answer, Document, RunRows, failed};
use crate::card::Card;
use crate::failure::Failure;
use scenarios::Scenario;
use std::path::Path;

/// A job that could be run, as it was read.
pub struct Checked(pub Scenario);

impl Answer for Checked {
    fn headline(&self) -> String {
        screen::verdict(&self.0)
    }

    fn card(&self) -> Card {
        screen::card(&self.0)
    }

    fn first(&self, _: &Path, columns: u16) -> String {
        screen::check_first(&self.0, columns)
    }

    fn full(&self, _: &Path, columns: u16) -> String {
        screen::check(&self.0, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        check_json(&self.0, self.0.units).map_err(|error| failed("the JSON", &error))
    }

    fn files(&self, _: RunRows) -> Result<Vec<Document>, Failure> {
        Ok(Vec::new())
    }
}
