//! What a price carries: the risk of losing money, what stays on average, and what is lost when it goes wrong.

use super::words::{LEAST, about, known, odds, risk_words};
use crate::findings::{Estimate, percent};
use scenarios::units::money;
use serde::Serialize;
use sim::{Mean, Sorted, mean, share};

/// Where a price comes from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PriceOf {
    /// A percentile of the cost: the price that loses money with this chance \[0 to 1\].
    Risk(f64),
    /// The mean cost with this margin, a share of the price \[0 to 1\].
    Margin(f64),
    /// The price that heapcast says to quote, rounded up.
    Quote,
    /// The price the person asked about.
    Asked,
}

/// A price and what it carries.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Price {
    /// Where it comes from.
    pub of: PriceOf,
    /// The same in words.
    pub what: String,
    /// The price, with its interval where it is estimated \[money\].
    pub price: Estimate,
    /// The price in words.
    pub said: String,
    /// How closely it is known, in words; `None` for a price somebody set.
    pub known: Option<String>,
    /// Chance of costing more than this \[0 to 1\].
    pub risk: Estimate,
    /// The same as people say it: `1 job in 10`.
    pub odds: String,
    /// The same in per cent, with its interval for a price somebody set.
    pub risk_said: String,
    /// What stays on average, price less cost \[money\].
    pub stays: Estimate,
    /// The same in words with its share of the price: `$240 (10 %)`.
    pub stays_said: String,
    /// What stays in a bad job (P10) and in a good one (P90) \[money\].
    pub stays_range: [f64; 2],
    /// The same in words: `-$20 to $90`.
    pub stays_range_said: String,
    /// What is lost on average when money is lost \[money\]; `None` if it never is.
    pub loss: Option<Estimate>,
    /// The same in words.
    pub loss_said: Option<String>,
}

/// The price that loses money with this chance: the percentile of the cost at one less it.
pub(super) fn at_risk(costs: &Sorted, risk: f64, currency: &str) -> Price {
    let price = Estimate::from(costs.percentile(1.0 - risk));
    carried(costs, PriceOf::Risk(risk), format!("risk {}", percent(risk)), price, currency)
}

/// The mean cost with a margin that is a share of the price: `mean / (1 - margin)`.
pub(super) fn with_margin(costs: &Sorted, margin: f64, currency: &str) -> Price {
    let mean = Estimate::from(costs.mean());
    let over = |sum: f64| sum / (1.0 - margin);
    let price = Estimate { value: over(mean.value), low: mean.low.map(over), high: mean.high.map(over) };
    carried(costs, PriceOf::Margin(margin), format!("margin {}", percent(margin)), price, currency)
}

/// A price somebody sets.
pub(super) fn set(costs: &Sorted, of: PriceOf, price: f64, currency: &str) -> Price {
    let what = if of == PriceOf::Quote { "the quote" } else { "your price" };
    carried(costs, of, what.into(), Estimate { value: price, low: Some(price), high: Some(price) }, currency)
}

/// The chance of costing more than a price.
pub(super) fn risk_at(costs: &Sorted, price: f64) -> Estimate {
    let all = costs.values();
    let kept = all.partition_point(|cost| *cost <= price + price.abs() * LEAST);
    Estimate::from(share(all.len() - kept, all.len()))
}

/// What is lost in the jobs that cost more than a price.
pub(super) fn losses(costs: &Sorted, price: f64) -> Option<Mean> {
    let lost: Vec<f64> =
        costs.values().iter().filter(|c| **c > price + price.abs() * LEAST).map(|c| c - price).collect();
    (!lost.is_empty()).then(|| mean(&lost))
}

fn carried(costs: &Sorted, of: PriceOf, what: String, price: Estimate, currency: &str) -> Price {
    let (p, cost) = (price.value, Estimate::from(costs.mean()));
    let risk = risk_at(costs, p);
    let is_set = matches!(of, PriceOf::Quote | PriceOf::Asked);
    let stays = Estimate {
        value: tidy(p - cost.value, p),
        low: cost.high.map(|high| tidy(p - high, p)),
        high: cost.low.map(|low| tidy(p - low, p)),
    };
    let stays_range = [0.9, 0.1].map(|share| tidy(p - costs.percentile(share).value, p));
    let loss = losses(costs, p).map(Estimate::from);
    let [bad, good] = stays_range.map(|sum| about(sum, p, currency));
    Price {
        of,
        what,
        said: if is_set { money(p, currency) } else { about(p, p, currency) },
        known: (!is_set).then(|| known(price, currency)),
        odds: odds(risk.value),
        risk_said: if is_set { risk_words(risk) } else { percent(risk.value) },
        stays_said: format!("{} ({})", about(stays.value, p, currency), percent_signed(stays.value / p)),
        stays_range_said: if bad == good { bad } else { format!("{bad} to {good}") },
        loss_said: loss.map(|loss| about(loss.value, p, currency)),
        price,
        risk,
        stays,
        stays_range,
        loss,
    }
}

/// Nothing where it is only the last digits of a sum.
fn tidy(difference: f64, of: f64) -> f64 {
    if difference.abs() <= of.abs() * LEAST { 0.0 } else { difference }
}

/// A share that may be below nothing.
fn percent_signed(share: f64) -> String {
    match share {
        s if s >= 0.0 => percent(s),
        s if s > -0.000_5 => "0 %".into(),
        s => format!("-{}", percent(-s)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One job at every cost from 1 to 100.
    fn hundred() -> Sorted {
        Sorted::new((1..=100).map(f64::from))
    }

    #[test]
    fn the_price_at_a_tenth_of_risk_is_the_type_7_p90_of_the_cost() {
        // h = 99 x 0.9 = 89.1: a tenth of the way from the 90th to the 91st value. Ten of a hundred cost more.
        let price = at_risk(&hundred(), 0.1, "$");
        assert!((price.price.value - 90.1).abs() < 1e-9, "{price:?}");
        assert!((price.risk.value - 0.1).abs() < 1e-12, "{price:?}");
        assert_eq!(price.odds, "1 job in 10");
        // Mean cost 50.5, so 39.6 stays; the P10 and P90 of the cost are 10.9 and 90.1.
        assert!((price.stays.value - 39.6).abs() < 1e-9, "{price:?}");
        assert!((price.stays_range[0]).abs() < 1e-9 && (price.stays_range[1] - 79.2).abs() < 1e-9);
        // What costs 91 to 100 loses 0.9 to 9.9: 5.4 on average.
        assert!((price.loss.unwrap().value - 5.4).abs() < 1e-9, "{price:?}");
    }

    #[test]
    fn the_risk_at_a_price_counts_the_jobs_that_cost_more() {
        let price = set(&hundred(), PriceOf::Asked, 80.0, "$");
        assert_eq!(price.risk.value, 0.2, "a cost of just the price is no loss");
        // Clopper and Pearson for 20 of 100: 12.67 % to 29.18 % (computed from the beta distribution).
        assert!((price.risk.low.unwrap() - 0.1267).abs() < 5e-5, "{price:?}");
        assert!((price.risk.high.unwrap() - 0.2918).abs() < 5e-5, "{price:?}");
        assert_eq!(price.odds, "1 job in 5");
        assert_eq!(price.stays_said, "$29.50 (37 %)");
        assert_eq!(price.loss.unwrap().value, 10.5);
        assert_eq!(set(&hundred(), PriceOf::Asked, 100.0, "$").loss, None);
        assert_eq!(set(&hundred(), PriceOf::Asked, 0.5, "$").risk.value, 1.0);
    }

    #[test]
    fn a_margin_is_a_share_of_the_price() {
        // 50.5 / (1 - 0.2) = 63.125, of which a fifth is 12.625.
        let price = with_margin(&hundred(), 0.2, "$");
        assert!((price.price.value - 63.125).abs() < 1e-9, "{price:?}");
        assert!((price.stays.value - 12.625).abs() < 1e-9, "{price:?}");
        assert!(price.stays_said.ends_with("(20 %)"), "{price:?}");
        assert!((price.risk.value - 0.37).abs() < 1e-12, "64 to 100 cost more");
    }

    #[test]
    fn a_price_below_every_cost_loses_on_average() {
        let price = set(&hundred(), PriceOf::Asked, 0.5, "$");
        assert_eq!(price.stays.value, -50.0);
        assert_eq!(price.stays_said, "-$50 (-10000 %)");
        assert_eq!(price.odds, "in every run");
    }

    #[test]
    fn the_last_digits_of_a_sum_are_no_loss() {
        let same = Sorted::new([6.300_000_000_000_001; 5]);
        let price = set(&same, PriceOf::Quote, 6.3, "$");
        assert_eq!((price.risk.value, price.stays.value, price.loss), (0.0, 0.0, None));
    }
}
