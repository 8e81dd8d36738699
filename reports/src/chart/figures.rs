//! All figures of a forecast in one go.

use super::{ChartError, Size, bucket_worth, completion, progress, relief, rivals, saved, timeline, waiting};
use crate::comparison::Comparison;
use crate::findings::buckets::BucketsSays;
use crate::findings::comparison::ComparisonSays;
use crate::findings::{Calendar, order};
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
    let mut add = |name, title, drawn| add(&mut figures, name, title, drawn);
    let calendar = Calendar::of(&forecast.scenario, units);
    let data = completion::prepare(
        &forecast.study,
        &forecast.handbook,
        &job.shift,
        &order(&forecast.study, &forecast.scenario, units),
        calendar,
    );
    add("completion", data.title.clone(), completion::draw(&data, size))?;
    let data = progress::prepare(&forecast.study, job, calendar);
    add("progress", data.title.clone(), progress::draw(&data, size))?;
    let data = waiting::prepare(crate::findings::who_waits(forecast).title, job, &forecast.study.accounts);
    add("waiting", data.title.clone(), waiting::draw(&data, size))?;
    let data = relief::prepare(&crate::findings::relief(forecast));
    add("relief", data.title.clone(), relief::draw(&data, size))?;
    let data = timeline::prepare(job, &forecast.typical, calendar);
    add("timeline", data.title.clone(), timeline::draw(&data, size))?;
    Ok(figures)
}

/// The figures of a comparison: `completion`, `differences` and, where there are prices, `money`.
///
/// # Errors
/// If the drawing library fails or the size has no room for a figure.
pub fn rival_figures(
    comparison: &Comparison,
    says: &ComparisonSays,
    size: Size,
) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    let data = rivals::prepare(comparison);
    add(&mut figures, "completion", data.title.clone(), rivals::draw(&data, size))?;
    let data = saved::prepare_time(says);
    add(&mut figures, data.figure, data.title.clone(), saved::draw(&data, size))?;
    let data = saved::prepare_money(says);
    add(&mut figures, data.figure, data.title.clone(), saved::draw(&data, size))?;
    Ok(figures)
}

/// The figures of buckets that there is something to draw in: `saved` and, where worth was asked for, `worth`.
///
/// # Errors
/// If the drawing library fails or the size has no room for a figure.
pub fn bucket_figures(says: &BucketsSays, size: Size) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    for data in [bucket_worth::prepare_saved(says), bucket_worth::prepare_worth(says)] {
        add(&mut figures, data.figure, data.title.clone(), saved::draw(&data, size))?;
    }
    Ok(figures)
}

/// Adds a figure there is something to show in.
fn add(
    figures: &mut Vec<Figure>,
    name: &'static str,
    title: String,
    drawn: Result<String, ChartError>,
) -> Result<(), ChartError> {
    match drawn {
        Ok(svg) => figures.push(Figure { name, title, svg }),
        Err(ChartError::Nothing(_)) => {}
        Err(error) => return Err(error),
    }
    Ok(())
}
