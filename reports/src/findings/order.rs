//! Whether the material ordered is enough, and how much more to order. Whatever promises an end says this first where it
//! is not; this is the one place that decides it.

use super::{Estimate, about_volume, share_of_runs};
use scenarios::Scenario;
use scenarios::units::System;
use serde::Serialize;
use sim::{Study, share};

/// Up to this share of the runs may end short before it has to be said first (our own choice).
const MAY_BE_SHORT: f64 = 0.1;

/// Whether the material is enough.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OrderFindings {
    /// Whether no more than one run in ten ends short of material.
    pub enough: bool,
    /// Chance that the crew stops with ground left bare \[0 to 1\]: such a run is not done.
    pub chance_short: Estimate,
    /// All there is at the piles and to come \[m3\].
    pub ordered_m3: f64,
    /// Mean volume missing in the runs that end short \[m3\].
    pub missing_m3: f64,
    /// Truckloads that would cover nine in ten of the runs that end short.
    pub truckloads_more: Option<u32>,
    /// A truckload \[m3\].
    pub truckload_m3: f64,
    /// What is missing and what to order, in a sentence; where it is enough, that it is.
    pub sentence: String,
    /// What to order, in a few words: `1 more truckload (10 yd3)`.
    pub more: String,
}

impl OrderFindings {
    /// What has to be said before any end is promised; `None` where the material is enough.
    pub fn first(&self) -> Option<&str> {
        (!self.enough).then_some(self.sentence.as_str())
    }

    /// Words that promise an end, with what is missing before them where the material is not enough.
    pub fn before(&self, words: &str) -> String {
        match self.first() {
            Some(first) => format!("{first} {words}"),
            None => words.to_owned(),
        }
    }
}

/// Whether the material of a job is enough for these runs of it.
pub fn order(study: &Study, scenario: &Scenario, units: System) -> OrderFindings {
    let runs = study.outcomes.iter().map(|o| o.ends_short.then_some(o.short_m3));
    order_of(runs, scenario, units)
}

/// The same from the volume missing in each run that ends short \[m3\], and `None` for each that is done.
pub fn order_of(
    runs: impl Iterator<Item = Option<f64>>,
    scenario: &Scenario,
    units: System,
) -> OrderFindings {
    let runs: Vec<Option<f64>> = runs.collect();
    let short: Vec<f64> = runs.iter().filter_map(|missing| *missing).collect();
    let chance = share(short.len(), runs.len());
    let missing_m3 = if short.is_empty() { 0.0 } else { short.iter().sum::<f64>() / short.len() as f64 };
    let truckload_m3 = scenario.stated.truckload_m3;
    let most_m3 = sim::Sorted::new(short.iter().copied()).percentile(0.9).value;
    let truckloads_more =
        (!short.is_empty() && truckload_m3 > 0.0).then(|| (most_m3 / truckload_m3).ceil().max(1.0) as u32);
    let volume = |m3: f64| about_volume(m3, units);
    let more = match truckloads_more {
        Some(1) => format!("1 more truckload ({})", volume(truckload_m3)),
        Some(n) => format!("{n} more truckloads ({} each)", volume(truckload_m3)),
        None => format!("{} more", volume(most_m3)),
    };
    let enough = chance.value.is_nan() || chance.value <= MAY_BE_SHORT;
    let ordered = volume(scenario.ordered_m3);
    let sentence = match chance.value {
        s if !enough && s >= 1.0 => {
            format!("Order {more}: {} is missing, and without it the job is never done.", volume(missing_m3))
        }
        s if !enough => format!(
            "Order {more}: otherwise the job is not done in {}, {} short on average.",
            share_of_runs(s),
            volume(missing_m3)
        ),
        s if s > 0.0 => {
            format!("{ordered} ordered: enough, but for {}.", share_of_runs(s))
        }
        _ => format!("{ordered} ordered: enough in every run."),
    };
    OrderFindings {
        enough,
        chance_short: chance.into(),
        ordered_m3: scenario.ordered_m3,
        missing_m3,
        truckloads_more,
        truckload_m3,
        sentence,
        more,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn findings(short: usize, runs: usize) -> OrderFindings {
        let each = (0..runs).map(|run| (run < short).then_some(2.0 + run as f64));
        order_of(each, &example::scenario(), System::Metric)
    }

    #[test]
    fn more_than_one_run_in_ten_short_is_said_first_with_what_to_order() {
        // Missing are 2, 3, ... 12 m3: 7 on average, and 11 in nine of ten; a truckload is 10.
        let short = findings(11, 100);
        assert!(!short.enough && short.truckloads_more == Some(2));
        assert_eq!(
            short.first(),
            Some(
                "Order 2 more truckloads (10 m3 each): otherwise the job is not done in 11 % of the runs, 7 m3 short on average."
            )
        );
        assert_eq!(
            findings(1, 1).sentence,
            "Order 1 more truckload (10 m3): 2 m3 is missing, and without it the job is never done."
        );
    }

    #[test]
    fn one_in_ten_may_end_short() {
        let findings = findings(10, 100);
        assert_eq!((findings.enough, findings.first()), (true, None));
        assert_eq!(findings.before("Done."), "Done.");
        assert!(findings.sentence.contains("10 % of the runs"), "{}", findings.sentence);
    }
}
