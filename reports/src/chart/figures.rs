//! All figures of a forecast in one go.

use super::{ChartError, Size, completion, progress, relief, timeline, waiting};
use crate::forecast::Forecast;

/// A drawn figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Its name: `completion`, `progress`, `waiting`, `relief`, `timeline`.
    pub name: &'static str,
    /// Its title, which states the finding.
    pub title: String,
    /// The figure as SVG.
    pub svg: String,
}

/// Every figure there is something to show in, in the order a person asks.
///
/// # Errors
/// If the drawing library fails or the size has no room for a figure.
pub fn figures(forecast: &Forecast, size: Size) -> Result<Vec<Figure>, ChartError> {
    let (job, units) = (&forecast.scenario.job, forecast.units);
    let mut figures = Vec::new();
    let mut add = |name, title: String, drawn: Result<String, ChartError>| match drawn {
        Ok(svg) => {
            figures.push(Figure { name, title, svg });
            Ok(())
        }
        Err(ChartError::Nothing(_)) => Ok(()),
        Err(error) => Err(error),
    };
    let data = completion::prepare(&forecast.study, &forecast.handbook, &job.shift, units);
    add("completion", data.title.clone(), completion::draw(&data, size))?;
    let data = progress::prepare(&forecast.study, job, units);
    add("progress", data.title.clone(), progress::draw(&data, size))?;
    let data = waiting::prepare(job, &forecast.study.books);
    add("waiting", data.title.clone(), waiting::draw(&data, size))?;
    let data = relief::prepare(&forecast.relief, forecast.relief_runs);
    add("relief", data.title.clone(), relief::draw(&data, size))?;
    let data = timeline::prepare(job, &forecast.typical, units);
    add("timeline", data.title.clone(), timeline::draw(&data, size))?;
    Ok(figures)
}
