//! All files of a report, prepared in memory.

use crate::export::{self, ExportError};
use crate::failure::Failure;
use crate::forecast::{Forecast, Provenance};
use crate::output_folder::Document;
use scenarios::Scenario;
use sim::Replay;

/// Files of a forecast.
pub const FORECAST: [&str; 3] = ["summary.json", "percentiles.csv", "runs.csv"];

/// Files of a replay.
pub const REPLAY: [&str; 4] = ["replay.json", "run.csv", "loads.csv", "events.csv"];

/// A format that will not take the results, as a failure.
pub fn failed(file: &'static str, error: &ExportError) -> Failure {
    Failure::Export { file, error: error.to_string() }
}

fn document(name: &'static str, bytes: Result<Vec<u8>, ExportError>) -> Result<Document, Failure> {
    Ok(Document { name, bytes: bytes.map_err(|error| failed(name, &error))? })
}

/// `summary.json`.
///
/// # Errors
/// If it cannot be put together.
pub fn summary(forecast: &Forecast) -> Result<Vec<u8>, Failure> {
    export::summary_json(forecast).map_err(|error| failed("summary.json", &error))
}

/// All files of a forecast.
///
/// # Errors
/// If one of them cannot be put together.
pub fn of_forecast(forecast: &Forecast) -> Result<Vec<Document>, Failure> {
    let job = &forecast.scenario.job;
    Ok(vec![
        document("summary.json", export::summary_json(forecast))?,
        document("percentiles.csv", export::percentiles_csv(forecast))?,
        document("runs.csv", export::runs_csv(job, &forecast.study))?,
    ])
}

/// All files of a replay.
///
/// # Errors
/// If one of them cannot be put together.
pub fn of_replay(
    scenario: &Scenario,
    replay: &Replay,
    provenance: &Provenance,
) -> Result<Vec<Document>, Failure> {
    let job = &scenario.job;
    Ok(vec![
        document("replay.json", export::replay_json(scenario, scenario.units, replay, provenance))?,
        document("run.csv", export::run_csv(job, &replay.outcome))?,
        document("loads.csv", export::loads_csv(job, replay))?,
        document("events.csv", export::events_csv(job, replay))?,
    ])
}
