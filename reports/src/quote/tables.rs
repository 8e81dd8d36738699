//! `cost.csv`, `risk.csv` and `runs.csv` of a quote.

use crate::findings::{Estimate, label};
use crate::quote::Quote;
use crate::quote::findings::{CostLine, CostPart, RiskPoint, RunCost};
use crate::render::ExportError;
use crate::render::table::{Table, Unit};

/// The mean and the percentiles of each part of the cost and of all of it, with their 95 % intervals (type 7, order
/// statistics; Student's t). Parts that cost nothing are left out.
pub(crate) fn cost_csv(quote: &Quote) -> Result<Vec<u8>, ExportError> {
    type Row = (&'static str, String, Estimate);
    let cost = &quote.findings.cost;
    let rows = |line: &CostLine| {
        let shares = cost.shares.iter().map(|share| label(*share));
        let key = line.key;
        let figures = shares.zip(line.percentiles).map(move |(share, at)| (key, share, at));
        std::iter::once((key, "mean".to_owned(), line.mean)).chain(figures).collect::<Vec<Row>>()
    };
    let rows: Vec<Row> = cost.parts.iter().chain([&cost.total]).flat_map(rows).collect();
    Table::new()
        .plain("part", |(part, ..): &Row| *part)
        .plain("currency", |_| quote.scenario.currency.as_str())
        .plain("figure", |(_, figure, _)| figure.clone())
        .interval(|(.., at)| Some(*at))
        .csv(&rows)
}

/// Risk and what stays at round prices and at those told. Shares, not per cent.
pub(crate) fn risk_csv(quote: &Quote) -> Result<Vec<u8>, ExportError> {
    Table::new()
        .figure("price", Unit::Money, |point: &RiskPoint| point.price)
        .plain("currency", |_| quote.scenario.currency.as_str())
        .estimate("risk", Unit::None, |point| point.risk)
        .estimate("stays_mean", Unit::Money, |point| point.stays)
        .plain("stays_share_of_price", |point| point.stays.value / point.price)
        .estimate("loss_mean", Unit::Money, |point| point.loss)
        .plain("called", |point| point.called.clone())
        .csv(&quote.findings.risk_curve)
}

/// What the runs cost, in its parts, the first `most` of them.
pub(crate) fn run_costs_csv(quote: &Quote, most: usize) -> Result<Vec<u8>, ExportError> {
    let parts = CostPart::ALL.into_iter().fold(Table::new(), |table, part| {
        table.figure(part.key(), Unit::Money, move |run: &RunCost| run.parts[part as usize])
    });
    Table::new()
        .plain("run", |run: &RunCost| run.run)
        .plain("currency", |_| quote.scenario.currency.as_str())
        .figure("cost", Unit::Money, |run| run.total)
        .chain(parts)
        .plain("hours_on_the_job", |run| run.hours)
        .volume("left_over", |run| run.left_over_m3)
        .volume("short", |run| run.short_m3)
        .csv(quote.costs.0.iter().take(most))
}
