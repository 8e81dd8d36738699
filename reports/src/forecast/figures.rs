//! The figures of a forecast.

use super::run::Forecast;
use crate::chart::{ChartError, Figure, Size, add, completion, progress, relief, timeline, waiting};
use crate::findings::{Calendar, order};

/// Every figure there is something to show in, in the order a person asks.
pub(crate) fn figures(forecast: &Forecast, size: Size) -> Result<Vec<Figure>, ChartError> {
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
