//! `percentiles.csv`: one row for each figure and percentile.

use crate::findings::Estimate;
use crate::forecast::run::Forecast;
use crate::render::ExportError;
use crate::render::table::{Column, Table, Unit, outcome};
use sim::{Outcome, Sorted};

struct Row<'a> {
    figure: &'a str,
    unit: &'a str,
    share: f64,
    at: Option<Estimate>,
}

/// The percentiles of every figure with their 95 % intervals (type 7, order statistics). Fields of unknown figures and of
/// ends that the runs cannot bound are empty.
pub(crate) fn percentiles_csv(forecast: &Forecast) -> Result<Vec<u8>, ExportError> {
    let figures = outcome(&forecast.scenario.job).columns;
    // All but the number of the run.
    let rows: Vec<Row<'_>> = figures.iter().skip(1).flat_map(|figure| rows(forecast, figure)).collect();
    Table::new()
        .plain("figure", |row: &Row<'_>| row.figure)
        .plain("unit", |row| row.unit)
        .plain("percentile", |row| (row.share * 1e8).round() / 1e6)
        .interval(|row| row.at)
        .csv(&rows)
}

fn rows<'a>(forecast: &'a Forecast, figure: &'a Column<'_, Outcome>) -> Vec<Row<'a>> {
    let scenario = &forecast.scenario;
    let values: Option<Vec<f64>> =
        forecast.study.outcomes.iter().map(|outcome| figure.value(outcome).number()).collect();
    let sample = values.map(Sorted::new);
    let unit = if figure.unit == Unit::Money { &scenario.currency } else { figure.unit.symbol() };
    // The clock is read from the start of the first day, and told from midnight.
    let midnight_s = if figure.unit == Unit::Clock { scenario.job.shift.start_s } else { 0.0 };
    let at = |share| Some(Estimate::from(sample.as_ref()?.percentile(share)).plus(midnight_s));
    let row = |&share: &f64| Row { figure: &figure.name, unit, share, at: at(share) };
    forecast.percentiles.iter().map(row).collect()
}
