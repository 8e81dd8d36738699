//! All files of a forecast.

use super::figures::figures;
use super::run::Forecast;
use super::{page, percentiles_csv, summary_json};
use crate::answer::{Document, RUNS, RUNS_COMPRESSED, RunRows, document, drawing, failed, undrawn};
use crate::chart::Size;
use crate::failure::Failure;
use crate::render::table::runs_csv;
use sim::both;

/// Files of a forecast; a chart that there is nothing to draw in is left out.
pub(crate) const FORECAST: [&str; 10] = [
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

/// `summary.json`.
pub(crate) fn summary(forecast: &Forecast) -> Result<Vec<u8>, Failure> {
    summary_json(forecast).map_err(|error| failed("summary.json", &error))
}

/// All files of a forecast.
pub(crate) fn of_forecast(forecast: &Forecast, runs: RunRows) -> Result<Vec<Document>, Failure> {
    // The two take about as long as each other.
    let (pictures, tables) = both(|| pictures(forecast), || tables(forecast, runs));
    let mut documents = pictures?;
    documents.splice(1..1, tables?);
    Ok(documents)
}

/// The page and its charts.
fn pictures(forecast: &Forecast) -> Result<Vec<Document>, Failure> {
    let drawn = |size| figures(forecast, size).map_err(|error| undrawn("the charts", &error));
    let (wide, narrow) = both(|| drawn(Size::PAGE), || drawn(Size::PHONE));
    let (wide, narrow) = (wide?, narrow?);
    let page = Document { name: "report.html", bytes: page(forecast, &wide, &narrow).into_bytes() };
    let drawings = wide.into_iter().filter_map(|figure| drawing(figure, &FORECAST, &forecast.provenance));
    Ok(std::iter::once(page).chain(drawings).collect())
}

/// What other programs read.
fn tables(forecast: &Forecast, runs: RunRows) -> Result<[Document; 3], Failure> {
    Ok([
        Document { name: "summary.json", bytes: summary(forecast)? },
        document("percentiles.csv", percentiles_csv(forecast))?,
        runs.document(runs_csv(&forecast.scenario.job, &forecast.study, runs.most))?,
    ])
}
