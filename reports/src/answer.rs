//! All files of a report, prepared in memory.

pub mod buckets;
mod comparison;
pub mod quote;
pub mod sweep;

pub use comparison::{COMPARISON, comparison_summary, of_comparison};

use crate::chart::{ChartError, Figure, Size, figures, timeline};
use crate::export::{self, ExportError};
use crate::failure::Failure;
use crate::forecast::{Forecast, Provenance};
use crate::page::page;
use flate2::Compression;
use flate2::write::GzEncoder;
use scenarios::Scenario;
use sim::Replay;
use std::io::Write;

/// One file of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// Its name in the folder.
    pub name: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// One row for each run.
pub(crate) const RUNS: &str = "runs.csv";
/// The same, compressed (gzip, RFC 1952).
pub(crate) const RUNS_COMPRESSED: &str = "runs.csv.gz";

/// What is wanted of the table of runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RunRows {
    /// Runs in it at the most: the first ones.
    pub most: usize,
    /// Whether it is compressed.
    pub compress: bool,
}

impl RunRows {
    /// The table as a file.
    pub(crate) fn document(self, bytes: Result<Vec<u8>, ExportError>) -> Result<Document, Failure> {
        let plain = document(RUNS, bytes)?;
        if !self.compress {
            return Ok(plain);
        }
        let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
        let written = encoder.write_all(&plain.bytes).and_then(|()| encoder.finish());
        written
            .map(|bytes| Document { name: RUNS_COMPRESSED, bytes })
            .map_err(|error| Failure::Export { file: RUNS_COMPRESSED, error: error.to_string() })
    }
}

/// Files of a forecast; a chart that there is nothing to draw in is left out.
pub const FORECAST: [&str; 10] = [
    "report.html",
    "summary.json",
    "percentiles.csv",
    RUNS,
    RUNS_COMPRESSED,
    "completion.svg",
    "progress.svg",
    "waiting.svg",
    "relief.svg",
    "timeline.svg",
];

/// Files of a replay.
pub const REPLAY: [&str; 5] = ["replay.json", "run.csv", "loads.csv", "events.csv", "timeline.svg"];

/// A format that will not take the results, as a failure.
pub fn failed(file: &'static str, error: &ExportError) -> Failure {
    Failure::Export { file, error: error.to_string() }
}

pub(crate) fn document(name: &'static str, bytes: Result<Vec<u8>, ExportError>) -> Result<Document, Failure> {
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
pub fn of_forecast(forecast: &Forecast, runs: RunRows) -> Result<Vec<Document>, Failure> {
    let job = &forecast.scenario.job;
    let wide = figures(forecast, Size::PAGE).map_err(|error| undrawn("the charts", &error))?;
    let narrow = figures(forecast, Size::PHONE).map_err(|error| undrawn("the charts", &error))?;
    let mut documents = vec![
        Document { name: "report.html", bytes: page(forecast, &wide, &narrow).into_bytes() },
        Document { name: "summary.json", bytes: summary(forecast)? },
        document("percentiles.csv", export::percentiles_csv(forecast))?,
        runs.document(export::runs_csv(job, &forecast.study, runs.most))?,
    ];
    documents.extend(wide.into_iter().filter_map(|figure| drawing(figure, &FORECAST, &forecast.provenance)));
    Ok(documents)
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
    let mut documents = vec![
        document("replay.json", export::replay_json(scenario, scenario.units, replay, provenance))?,
        document("run.csv", export::run_csv(job, &replay.outcome))?,
        document("loads.csv", export::loads_csv(job, replay))?,
        document("events.csv", export::events_csv(job, replay))?,
    ];
    let data = timeline::prepare(job, replay, crate::findings::Calendar::of(scenario, scenario.units));
    match timeline::draw(&data, Size::WIDE) {
        Ok(svg) => {
            let figure = Figure { name: "timeline", title: data.title, svg };
            documents.extend(drawing(figure, &REPLAY, provenance));
        }
        Err(ChartError::Nothing(_)) => {}
        Err(error) => return Err(undrawn("timeline.svg", &error)),
    }
    Ok(documents)
}

pub(crate) fn undrawn(file: &'static str, error: &ChartError) -> Failure {
    Failure::Export { file, error: error.to_string() }
}

/// A figure as one of these files, which says where it comes from.
pub(crate) fn drawing(figure: Figure, files: &[&'static str], from: &Provenance) -> Option<Document> {
    let name = files.iter().copied().find(|name| name.strip_suffix(".svg") == Some(figure.name))?;
    let bytes = format!("{}<!-- {} -->\n", figure.svg, from.words()).into_bytes();
    Some(Document { name, bytes })
}
