//! Done by when, what holds it up, and what would help.

pub mod figures;
mod files;
mod json;
pub(crate) mod page;
mod percentiles_csv;
mod run;
mod screen;

pub use files::{FORECAST, of_forecast, summary};
pub use json::summary_json;
pub use page::page;
pub use percentiles_csv::percentiles_csv;
pub use run::*;
pub use screen::{files, forecast_first, summary as screen};

use crate::answer::{Answer, Document, RunRows};
use crate::failure::Failure;
use crate::findings::{Warning, done_by, warnings};
use std::path::Path;

impl Answer for Forecast {
    fn headline(&self) -> String {
        done_by(self).plan_on
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        screen::forecast_first(self, folder, columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::summary(self, columns) + &screen::files(self, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        summary(self)
    }

    fn doubtful(&self) -> Vec<Warning> {
        warnings(&self.scenario.cautions).doubtful
    }

    fn files(&self, rows: RunRows) -> Result<Vec<Document>, Failure> {
        of_forecast(self, rows)
    }

    fn runs(&self) -> u32 {
        self.study.runs()
    }
}
