//! Material left over, or short.

use super::{Estimate, about_volume, days_in, share_of_runs};
use crate::forecast::run::Forecast;
use scenarios::Scenario;
use scenarios::units::System;
use serde::Serialize;
use sim::Study;

/// What is left at the pile, what is missing on the ground, and how often.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeftOver {
    /// Both in a sentence.
    pub sentence: String,
    /// Chance that the ground lacks material when the pile is gone \[0 to 1\].
    pub chance_short: Estimate,
    /// Volume left over at each percentile asked for \[m3\].
    pub left_over_m3: Vec<Estimate>,
    /// Volume short at each percentile asked for \[m3\].
    pub short_m3: Vec<Estimate>,
    /// Mean volume short in the runs that are short \[m3\]; `None` if none is.
    pub mean_short_m3: Option<f64>,
    /// Truckloads that would cover nine in ten of the runs that are short; `None` if none is.
    pub truckloads_more: Option<u32>,
}

/// What is left over or short over all runs.
pub fn left_over(forecast: &Forecast) -> LeftOver {
    left_over_in(&forecast.study, &forecast.scenario, forecast.units, &forecast.percentiles)
}

/// The same for any runs of a job, at these percentiles \[0 to 1\].
pub fn left_over_in(study: &Study, scenario: &Scenario, units: System, percentiles: &[f64]) -> LeftOver {
    let (left, short) = (study.sorted(|o| o.left_over_m3), study.sorted(|o| o.short_m3));
    let none_short = short.share_up_to(0.0);
    let chance_short = Estimate {
        value: 1.0 - none_short.value,
        low: Some(1.0 - none_short.high),
        high: Some(1.0 - none_short.low),
    };
    let shorts: Vec<f64> = short.values().iter().copied().filter(|v| *v > 0.0).collect();
    let mean_short_m3 = (!shorts.is_empty()).then(|| shorts.iter().sum::<f64>() / shorts.len() as f64);
    let truck = scenario.stated.truckload_m3;
    let p90_short = sim::Sorted::new(shorts).percentile(0.9).value;
    let truckloads_more = (p90_short > 0.0 && truck > 0.0).then(|| (p90_short / truck).ceil() as u32);
    let show = |sample: &sim::Sorted, share| about_volume(sample.percentile(share).value, units);
    let (least, most) = (show(&left, 0.1), show(&left, 0.9));
    let mut sentence = if left.percentile(0.9).value > 0.0 && least == most {
        format!("Left over: {most}.")
    } else if left.percentile(0.9).value > 0.0 {
        format!("Left over: {least} to {most} on {}.", days_in(0.8))
    } else {
        "Nothing is left over.".to_owned()
    };
    match (mean_short_m3, truckloads_more) {
        (Some(mean), Some(trucks)) => {
            let loads =
                if trucks == 1 { "1 more truckload".into() } else { format!("{trucks} more truckloads") };
            sentence = format!(
                "{sentence} Short in {}, by {} on average; {loads} of {} would cover nine in ten of those.",
                share_of_runs(chance_short.value),
                about_volume(mean, units),
                about_volume(truck, units)
            );
        }
        _ => sentence.push_str(" No run is short of material."),
    }
    let each = |sample: &sim::Sorted| percentiles.iter().map(|p| sample.percentile(*p).into()).collect();
    LeftOver {
        sentence,
        chance_short,
        left_over_m3: each(&left),
        short_m3: each(&short),
        mean_short_m3,
        truckloads_more,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn how_often_and_how_much_is_short_is_told_with_the_remedy() {
        let mut forecast = example::forecast();
        forecast.units = scenarios::units::System::Metric;
        let findings = left_over(&forecast);
        assert_eq!(
            findings.sentence,
            "Left over: 0.4 m3. Short in 10 % of the runs, by 1.5 m3 on average; 1 more \
             truckload of 10 m3 would cover nine in ten of those."
        );
        assert!((findings.chance_short.value - 0.1).abs() < 1e-12);
        assert_eq!((findings.mean_short_m3, findings.truckloads_more), (Some(1.5), Some(1)));
    }

    #[test]
    fn where_no_run_is_short_nothing_is_ordered() {
        let mut forecast = example::forecast();
        forecast.study.outcomes.truncate(90);
        let findings = left_over(&forecast);
        assert_eq!((findings.mean_short_m3, findings.truckloads_more), (None, None));
        assert!(findings.sentence.ends_with("No run is short of material."), "{}", findings.sentence);
    }
}
