//! One run step by step.

mod files;
mod json;
mod question;
mod run;
mod screen;
mod tables;

pub(crate) use files::{REPLAY, of_replay};
pub(crate) use json::replay_json;
pub use question::QUESTION;
pub use run::OneRun;
pub(crate) use tables::{events_csv, loads_csv};

use crate::answer::{Answer, Document, RunRows, failed};
use crate::card::Card;
use crate::failure::Failure;
use std::path::Path;

impl OneRun {
    fn screen(&self, full: bool, folder: &Path, columns: u16) -> String {
        screen::replay(&self.card(), &self.scenario.job, &self.replay, full, columns)
            + &screen::replay_files(&self.provenance, folder, columns)
    }
}

impl Answer for OneRun {
    fn headline(&self) -> String {
        screen::one_run(&self.scenario, self.scenario.units, &self.replay)
    }

    fn card(&self) -> Card {
        screen::card(&self.scenario, self.scenario.units, &self.replay)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        self.screen(false, folder, columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        self.screen(true, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        let json = replay_json(&self.scenario, self.scenario.units, &self.replay, &self.provenance);
        json.map_err(|error| failed("replay.json", &error))
    }

    fn files(&self, _: RunRows) -> Result<Vec<Document>, Failure> {
        of_replay(&self.scenario, &self.replay, &self.provenance)
    }
}
