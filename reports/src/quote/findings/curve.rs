//! Risk against price, at round prices.

use super::price::{Price, losses, risk_at};
use super::words::round_step;
use crate::findings::Estimate;
use serde::Serialize;
use sim::Sorted;

/// About as many points are told.
const POINTS: f64 = 50.0;

/// What one price carries.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RiskPoint {
    /// The price \[money\].
    pub price: f64,
    /// Chance of costing more \[0 to 1\].
    pub risk: Estimate,
    /// What stays on average \[money\].
    pub stays: Estimate,
    /// What is lost on average when money is lost \[money\]; `None` if it never is.
    pub loss: Option<Estimate>,
    /// What the price is called, if it is one of those told; empty for the others.
    pub called: String,
}

/// Risk against price: round prices from where nearly every job loses money to where hardly one does, and those told.
pub fn risk_curve(costs: &Sorted, told: &[Price]) -> Vec<RiskPoint> {
    let mean = Estimate::from(costs.mean());
    let point = |price: f64, called: &str| RiskPoint {
        price,
        risk: risk_at(costs, price),
        stays: Estimate {
            value: price - mean.value,
            low: mean.high.map(|high| price - high),
            high: mean.low.map(|low| price - low),
        },
        loss: losses(costs, price).map(Estimate::from),
        called: called.to_owned(),
    };
    let (low, high) = (costs.percentile(0.001).value, costs.percentile(0.999).value);
    let mut points: Vec<RiskPoint> = told.iter().map(|price| point(price.price.value, &price.what)).collect();
    if high > low {
        let step = round_step((high - low) / POINTS).max(0.01);
        let (first, last) = ((low / step).floor(), (high / step).ceil());
        let steps = (last - first).min(4.0 * POINTS) as u32;
        points.extend((0..=steps).map(|i| point((first + f64::from(i)) * step, "")));
    }
    points.sort_by(|a, b| a.price.total_cmp(&b.price));
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_risk_falls_as_the_price_rises() {
        let costs = Sorted::new((0..=1_000).map(|i| 1_000.0 + f64::from(i)));
        let points = risk_curve(&costs, &[]);
        assert!((40..=220).contains(&points.len()), "{}", points.len());
        assert!(points.is_sorted_by(|a, b| a.price <= b.price && a.risk.value >= b.risk.value));
        let at = points.iter().find(|point| point.price == 1_500.0).unwrap();
        assert!((at.risk.value - 500.0 / 1_001.0).abs() < 1e-12);
        assert!((at.loss.unwrap().value - 250.5).abs() < 1e-9, "501 to 1000 cost 1 to 500 more");
    }

    #[test]
    fn where_nothing_is_left_to_chance_only_the_prices_told_are_points() {
        assert!(risk_curve(&Sorted::new([5.0; 9]), &[]).is_empty());
    }
}
