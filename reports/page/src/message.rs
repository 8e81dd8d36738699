//! A message for the client.

use crate::job::Job;
use crate::read::{clock, system};
use crate::refused::Refused;
use scenarios::units::System;
use scenarios::{Clock, Selection, shown_path};
use serde::Deserialize;
use std::path::Path;

/// Those of a forecast, so that the same times are told.
const RUNS: (u64, u32) = (1, 10_000);

#[derive(Debug, Deserialize)]
struct Asked {
    job: Job,
    #[serde(default)]
    units: String,
    /// `am`, `24`, or nothing for that of the units.
    #[serde(default)]
    clock: String,
    /// As typed; empty for none.
    #[serde(default)]
    price: String,
}

/// A message about a job.
pub(crate) fn message(asked: &str) -> Result<String, Refused> {
    let asked: Asked = serde_json::from_str(asked).map_err(|error| Refused::not_understood(&error))?;
    let selection = Selection { units: system(&asked.units)?, ..Selection::default() };
    let scenario = asked.job.file(&shown_path(Path::new(&asked.job.name)))?.scenario(&selection)?;
    let clock = match clock(&asked.clock)? {
        Some(Clock::AmPm) => System::Us,
        Some(Clock::Hours24) => System::Metric,
        None => scenario.units,
    };
    let price = Some(asked.price.trim()).filter(|price| !price.is_empty());
    let message = reports::client_page::message(&scenario, (scenario.units, clock), price, RUNS, |_| ())?;
    serde_json::to_string(&message).map_err(|error| Refused::not_understood(&error))
}
