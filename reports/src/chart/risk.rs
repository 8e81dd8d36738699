//! Risk against price: the falling chance of losing money as the price rises, with the prices that matter marked.

mod sketch;

pub(crate) use sketch::draw;

use super::completion::Mark;

/// Risk against price, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct RiskData {
    /// The finding.
    pub title: String,
    /// Number of runs.
    pub runs: usize,
    /// Currency of all prices.
    pub currency: String,
    /// From and to of the axis \[money\].
    pub range: (f64, f64),
    /// The falling curve: price \[money\] and chance of costing more \[%\].
    pub curve: Vec<(f64, f64)>,
    /// From the middle of the costs to their P95 \[money\], if they differ.
    pub band: Option<(f64, f64)>,
    /// What is marked, from the lowest price.
    pub marks: Vec<Mark>,
    /// How many runs, and what the band is.
    pub note: String,
}
