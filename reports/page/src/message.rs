//! A message for the client.

use crate::read::{ToRead, clock, system};
use crate::refused::Refused;
use reports::ask::{RUNS, SEED};
use reports::forecast;
use scenarios::{Clock, Selection, shown_path};
use std::path::Path;

/// A message about a job.
pub(crate) fn message(asked: &str) -> Result<String, Refused> {
    let asked: ToRead = serde_json::from_str(asked)?;
    let selection = Selection { units: system(&asked.units)?, ..Selection::default() };
    let file = shown_path(Path::new(&asked.job.name));
    let usual = usual(&file)?;
    let scenario = asked.job.file(&file)?.scenario(&selection)?;
    let clock = clock(&asked.clock)?.unwrap_or(Clock::of(scenario.units));
    let price = Some(asked.price.trim()).filter(|price| !price.is_empty());
    let message = reports::client_page::message(&scenario, (scenario.units, clock), price, usual, |_| ())?;
    Ok(serde_json::to_string(&message)?)
}

/// Seed and runs of a forecast for which nothing is said of them: the same times are told.
fn usual(file: &str) -> Result<(u64, u32), Refused> {
    let nothing: [(&str, &str); 0] = [];
    let asked = reports::ask::Asked::new(&forecast::QUESTION, [file], nothing)?;
    Ok((asked.value(&SEED)?, asked.value(&RUNS)?))
}
