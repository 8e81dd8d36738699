//! Loads, volume, fuel, labour and cost as ranges.

use super::{Estimate, about_money, about_volume};
use crate::forecast::run::Forecast;
use scenarios::units as show;
use serde::Serialize;
use sim::{Job, Outcome, Sorted};

/// One figure of the job as a range.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Amount {
    /// Stable name for files, with its unit.
    pub key: &'static str,
    /// What it is, in words.
    pub what: &'static str,
    /// The percentiles asked for, in the unit of the key; empty where the figure is unknown.
    pub percentiles: Vec<Estimate>,
    /// P10, P50, P80 and P90 in words with the unit shown; `None` where the figure is unknown.
    pub said: Option<Said>,
    /// What is needed to know it, where it is unknown.
    pub unknown: Option<String>,
}

/// A range in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Said {
    /// P10.
    pub p10: String,
    /// P50.
    pub p50: String,
    /// P80.
    pub p80: String,
    /// P90.
    pub p90: String,
}

/// Why a cost is unknown.
pub const NO_PRICES: &str = "the job names no prices";

/// Whether the job has any price at all; without one its cost is unknown, not 0.
pub fn is_priced(job: &Job) -> bool {
    job.prices.fuel_per_l > 0.0
        || job.prices.material > 0.0
        || job.loaders.iter().any(|l| l.machine_cost_per_h + l.operator_cost_per_h > 0.0)
        || job.rakers.iter().any(|r| r.cost_per_h > 0.0)
}

/// Whether any loader burns fuel that the file knows of; else the fuel is unknown, not 0.
pub fn is_fuelled(job: &Job) -> bool {
    job.loaders.iter().any(|l| l.fuel_working_l_per_h + l.fuel_idling_l_per_h > 0.0)
}

/// Loads, volume placed, fuel, labour and cost, in this order.
pub fn amounts(forecast: &Forecast) -> Vec<Amount> {
    let units = forecast.units;
    let currency = &forecast.scenario.currency;
    let all = |figure: fn(&Outcome) -> f64| forecast.study.sorted(figure);
    let tell = |key, what, sample: Sorted, words: &dyn Fn(f64) -> String| {
        let at = |share| words(sample.percentile(share).value);
        Amount {
            key,
            what,
            percentiles: forecast.percentiles.iter().map(|p| sample.percentile(*p).into()).collect(),
            said: Some(Said { p10: at(0.1), p50: at(0.5), p80: at(0.8), p90: at(0.9) }),
            unknown: None,
        }
    };
    let missing = |key, what, why: &str| Amount {
        key,
        what,
        percentiles: Vec::new(),
        said: None,
        unknown: Some(why.to_owned()),
    };
    let fuel = if is_fuelled(&forecast.scenario.job) {
        tell("fuel_l", "fuel", all(|o| o.fuel_l), &|l| show::fuel(l, units))
    } else {
        missing("fuel_l", "fuel", "the job names no fuel burn")
    };
    let cost = if is_priced(&forecast.scenario.job) {
        tell("cost", "cost", all(|o| o.cost), &|sum| about_money(sum, currency))
    } else {
        missing("cost", "cost", NO_PRICES)
    };
    vec![
        tell("loads", "loads", all(|o| f64::from(o.loads)), &|n| format!("{n:.0}")),
        tell("placed_m3", "placed", all(|o| o.placed_m3), &|m3| about_volume(m3, units)),
        fuel,
        tell("labour_h", "labour", all(|o| o.labour_h), &|h| format!("{h:.1} h")),
        cost,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn what_the_file_does_not_price_is_unknown_and_not_free() {
        let mut forecast = example::forecast();
        let cost = |forecast: &Forecast| amounts(forecast).into_iter().find(|a| a.key == "cost").unwrap();
        assert_eq!(cost(&forecast).said.unwrap().p50, "$1000");
        let job = &mut forecast.scenario.job;
        job.prices.fuel_per_l = 0.0;
        job.prices.material = 0.0;
        job.loaders[0].machine_cost_per_h = 0.0;
        job.loaders[0].operator_cost_per_h = 0.0;
        job.rakers[0].cost_per_h = 0.0;
        let unknown = cost(&forecast);
        assert_eq!((unknown.said, unknown.percentiles.len()), (None, 0));
        assert_eq!(unknown.unknown.as_deref(), Some("the job names no prices"));
    }

    #[test]
    fn the_percentiles_asked_for_come_in_their_order() {
        let loads = &amounts(&example::forecast())[0];
        assert_eq!(loads.key, "loads");
        assert_eq!(
            loads.percentiles.iter().map(|p| p.value).collect::<Vec<_>>(),
            [66.0, 70.0, 72.0, 73.0, 73.0]
        );
    }
}
