//! What to ask for the job.

pub(crate) mod figures;
mod files;
pub mod findings;
mod json;
mod page;
mod question;
mod run;
mod screen;
mod tables;

pub(crate) use files::{QUOTE, of_quote, summary};
pub(crate) use json::quote_json;
pub(crate) use page::quote_page;
pub use question::QUESTION;
pub use run::{Quote, QuoteFindings, is_known};
pub(crate) use tables::{cost_csv, risk_csv, run_costs_csv};

use crate::answer::{Answer, Document, RunRows};
use crate::card::Card;
use crate::failure::Failure;
use crate::findings::{Warning, warnings};
use std::path::Path;

impl Answer for Quote {
    fn headline(&self) -> String {
        let hours = matches!(self.client.terms, crate::client_page::Terms::Hourly { .. });
        if hours { self.findings.hours.sentence.clone() } else { self.findings.offer.verdict.clone() }
    }

    fn card(&self) -> Card {
        screen::card(self)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        screen::first(self, folder, columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::quote(self, columns) + &screen::quote_files(self, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        summary(self)
    }

    fn doubtful(&self) -> Vec<Warning> {
        warnings(&self.scenario.cautions).doubtful
    }

    fn files(&self, rows: RunRows) -> Result<Vec<Document>, Failure> {
        of_quote(self, rows)
    }

    fn runs(&self) -> u32 {
        self.study.runs()
    }
}
