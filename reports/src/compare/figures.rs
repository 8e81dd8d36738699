//! The figures of a comparison.

use super::Comparison;
use super::findings::ComparisonSays;
use crate::chart::{ChartError, Figure, Size, add, rivals, saved};

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
