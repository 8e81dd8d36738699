//! All files of a forecast.

use super::figures::figures;
use super::run::Forecast;
use super::{page, percentiles_csv, summary_json};
use crate::answer::{Document, RUNS, RUNS_COMPRESSED, RunRows, document, drawing, failed, undrawn};
use crate::chart::Size;
use crate::failure::Failure;
use crate::render::table::runs_csv;

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
    let job = &forecast.scenario.job;
    let wide = figures(forecast, Size::PAGE).map_err(|error| undrawn("the charts", &error))?;
    let narrow = figures(forecast, Size::PHONE).map_err(|error| undrawn("the charts", &error))?;
    let mut documents = vec![
        Document { name: "report.html", bytes: page(forecast, &wide, &narrow).into_bytes() },
        Document { name: "summary.json", bytes: summary(forecast)? },
        document("percentiles.csv", percentiles_csv(forecast))?,
        runs.document(runs_csv(job, &forecast.study, runs.most))?,
    ];
    documents.extend(wide.into_iter().filter_map(|figure| drawing(figure, &FORECAST, &forecast.provenance)));
    Ok(documents)
}
