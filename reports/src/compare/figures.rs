//! The figures of a comparison.

pub(crate) mod rivals;
pub(crate) mod saved;

use super::Comparison;
use super::findings::ComparisonFindings;
use crate::chart::{self, ChartError, Figure, Size, add};

/// The figures of a comparison: `completion`, `differences` and, where there are prices, `money`.
pub(crate) fn rival_figures(
    comparison: &Comparison,
    findings: &ComparisonFindings,
    size: Size,
) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    let data = rivals::prepare(comparison);
    add(&mut figures, "completion", data.title.clone(), chart::rivals::draw(&data, size))?;
    let data = saved::prepare_time(findings);
    add(&mut figures, data.figure, data.title.clone(), chart::saved::draw(&data, size))?;
    let data = saved::prepare_money(findings);
    add(&mut figures, data.figure, data.title.clone(), chart::saved::draw(&data, size))?;
    Ok(figures)
}
