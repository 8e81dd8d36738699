//! `cost.csv`, `risk.csv` and `runs.csv` of a quote.

use crate::findings::Estimate;
use crate::quote::Quote;
use crate::quote::findings::{CostLine, CostPart, RunCost};
use crate::render::csv::{ExportError, number, table, volumes};

const COST: [&str; 6] = ["part", "currency", "figure", "value", "low_95", "high_95"];
const RISK: [&str; 13] = [
    "price",
    "currency",
    "risk",
    "risk_low_95",
    "risk_high_95",
    "stays_mean",
    "stays_mean_low_95",
    "stays_mean_high_95",
    "stays_share_of_price",
    "loss_mean",
    "loss_mean_low_95",
    "loss_mean_high_95",
    "called",
];

/// The mean and the percentiles of each part of the cost and of all of it, with their 95 % intervals (type 7, order
/// statistics; Student's t). Parts that cost nothing are left out.
///
/// # Errors
/// If the table cannot be written.
pub fn cost_csv(quote: &Quote) -> Result<Vec<u8>, ExportError> {
    let says = &quote.says.cost;
    let rows = |line: &CostLine| {
        let mut figures = vec![("mean".to_owned(), line.mean)];
        figures.extend(says.shares.iter().map(|share| crate::findings::label(*share)).zip(line.percentiles));
        let row = |(figure, at): (String, Estimate)| {
            let [value, low, high] = fields(at);
            vec![line.key.to_owned(), quote.scenario.currency.clone(), figure, value, low, high]
        };
        figures.into_iter().map(row).collect::<Vec<_>>()
    };
    table(COST, says.parts.iter().chain([&says.total]).flat_map(rows))
}

/// Risk and what stays at round prices and at those told. Shares, not per cent.
///
/// # Errors
/// If the table cannot be written.
pub fn risk_csv(quote: &Quote) -> Result<Vec<u8>, ExportError> {
    let rows = quote.says.risk_curve.iter().map(|point| {
        let mut row = vec![number(point.price), quote.scenario.currency.clone()];
        row.extend(fields(point.risk));
        row.extend(fields(point.stays));
        row.push(number(point.stays.value / point.price));
        row.extend(point.loss.map_or_else(Default::default, fields));
        row.push(point.called.clone());
        row
    });
    table(RISK, rows)
}

/// What the runs cost, in its parts, the first `most` of them.
///
/// # Errors
/// If the table cannot be written.
pub fn run_costs_csv(quote: &Quote, most: usize) -> Result<Vec<u8>, ExportError> {
    let parts = CostPart::ALL.map(CostPart::key);
    let header = ["run", "currency", "cost"].into_iter().chain(parts).chain([
        "hours_on_the_job",
        "left_over_m3",
        "left_over_yd3",
        "short_m3",
        "short_yd3",
    ]);
    let row = |run: &RunCost| {
        let mut row = vec![run.run.to_string(), quote.scenario.currency.clone(), number(run.total)];
        row.extend(run.parts.map(number));
        row.push(number(run.hours));
        row.extend([run.left_over_m3, run.short_m3].into_iter().flat_map(volumes));
        row
    };
    table(header, quote.costs.0.iter().take(most).map(row))
}

fn fields(at: Estimate) -> [String; 3] {
    [number(at.value), number(at.low), number(at.high)]
}
