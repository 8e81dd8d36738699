//! What a bucket is worth: what it saves in a year, when it is paid back, and what all of it is worth today.

use super::Runs;
use crate::buckets::{Buckets, Tried};
use crate::findings::about_money;
use crate::findings::{Estimate, percent};
use scenarios::units::figure;
use serde::Serialize;
use sim::Sorted;

/// What a bucket is worth. Ranges are P10, P50 and P90 of many futures, as jobs and years differ; `null` stands for never.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorthFindings {
    /// What a job saves on average \[money\].
    pub per_job: Estimate,
    /// What a year saves \[money\].
    pub yearly: [f64; 3],
    /// Years until the price is back; `None` without a price, and its items where that is never.
    pub years: Option<[Option<f64>; 3]>,
    /// Hours on jobs until the price is back.
    pub hours: Option<[Option<f64>; 3]>,
    /// Present value of all savings less the price \[money\]; without a price, the most it may cost to pay.
    pub present_value: [f64; 3],
    /// Mean of the present value with its interval.
    pub present_value_mean: Estimate,
    /// Chance that the present value is above 0; `None` without a price.
    pub pays: Option<Estimate>,
    /// The same in words.
    pub said: WorthSaid,
}

/// What a bucket is worth, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WorthSaid {
    /// `$14`.
    pub per_job: String,
    /// `$310 to $460`.
    pub yearly: String,
    /// `1.5 to 3 years`, `never`, `no price`.
    pub years: String,
    /// `120 to 150 h`.
    pub hours: String,
    /// `$1,200 to $1,900`.
    pub present_value: String,
    /// `97 %`.
    pub pays: String,
}

const SHARES: [f64; 3] = [0.1, 0.5, 0.9];

pub(super) fn findings(all: &Buckets, tried: &Tried, runs: &Runs) -> Option<WorthFindings> {
    let (payback, usage) = (tried.payback.as_ref()?, all.wanted.usage.as_ref()?);
    let currency = usage.currency.as_str();
    let each = |sample: &Sorted| SHARES.map(|share| sample.percentile(share).value);
    let known = |values: [f64; 3]| values.map(|v| Some(v).filter(|v| v.is_finite()));
    let hours_a_job = tried.study.as_ref()?.sorted(|o| o.finish.working.as_secs_f64() / 3_600.0).mean().value;
    let priced = tried.bucket.price.is_some();
    let scale = |of: Estimate, by: f64| Estimate {
        value: of.value * by,
        low: of.low.map(|v| v * by),
        high: of.high.map(|v| v * by),
    };
    let per_job = scale(runs.saved.mean, usage.hour_worth / 3_600.0);
    let (yearly, present_value) = (each(&payback.yearly), each(&payback.present_value));
    let years = priced.then(|| known(each(&payback.years)));
    let hours = priced.then(|| known(each(&payback.jobs).map(|jobs| jobs * hours_a_job)));
    let pays = priced.then(|| Estimate::from(payback.pays));
    let said = WorthSaid {
        per_job: sum(per_job.value, currency),
        yearly: sums(yearly, currency),
        years: years.map_or_else(|| "no price".into(), |years| until(years, ("year", "years"))),
        hours: hours.map_or_else(String::new, |hours| until(hours, ("h", "h"))),
        present_value: if priced {
            sums(present_value, currency)
        } else {
            format!("pays up to {}", sum(present_value[0].max(0.0), currency))
        },
        pays: pays.map_or_else(String::new, |pays| percent(pays.value)),
    };
    let present_value_mean = Estimate::from(payback.present_value.mean());
    Some(WorthFindings { per_job, yearly, years, hours, present_value, present_value_mean, pays, said })
}

/// A sum, without small change where there is something larger.
pub(super) fn sum(value: f64, currency: &str) -> String {
    let value = if value.abs() < 10.0 { (value * 100.0).round() / 100.0 } else { value.round() };
    // No minus before a zero.
    about_money(value + 0.0, currency)
}

/// From the P10 to the P90.
fn sums(values: [f64; 3], currency: &str) -> String {
    let (low, high) = (sum(values[0], currency), sum(values[2], currency));
    if low == high { low } else { format!("{low} to {high}") }
}

/// From the P10 to the P90, `never` where it never comes.
pub(super) fn until(values: [Option<f64>; 3], (one, many): (&str, &str)) -> String {
    let say = |value: f64| {
        if value >= 10.0 { figure(value.round()) } else { figure((value * 10.0).round() / 10.0) }
    };
    match (values[0].map(say), values[2].map(say)) {
        (None, _) => "never".into(),
        (Some(low), None) => format!("{low} {many} to never"),
        (Some(low), Some(high)) if low == high => {
            if low == "1" {
                format!("1 {one}")
            } else {
                format!("{low} {many}")
            }
        }
        (Some(low), Some(high)) => format!("{low} to {high} {many}"),
    }
}

/// What is counted as worth, and what is not.
pub(super) fn counted(all: &Buckets) -> String {
    let Some(usage) = &all.wanted.usage else {
        return "Only minutes are told. With --jobs-per-year and --hour-worth a price is compared with what it saves."
            .into();
    };
    let (few, many) = usage.jobs_per_year;
    let jobs = if few == many { format!("{few}") } else { format!("{few} to {many}") };
    format!(
        "Worth: minutes saved at {}/h, the hour of the crew with its machine as you value it; the prices of the job are not counted \
         besides. {jobs} jobs like this one a year for {} {}, interest {} % a year, each time with other random draws: P10 to P90. Minutes \
         saved are worth that only if the time is used.",
        scenarios::units::money(usage.hour_worth, &usage.currency),
        usage.years,
        if usage.years == 1 { "year" } else { "years" },
        figure(usage.interest * 100.0)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_never_comes_is_said_and_figures_are_short() {
        let years = |values| until(values, ("year", "years"));
        assert_eq!(years([Some(1.52), Some(2.0), Some(3.01)]), "1.5 to 3 years");
        assert_eq!(years([Some(1.0), Some(1.0), Some(1.04)]), "1 year");
        assert_eq!(years([Some(11.6), Some(40.0), None]), "12 years to never");
        assert_eq!(years([None, None, None]), "never");
        assert_eq!(until([Some(103.4); 3], ("h", "h")), "103 h");
    }

    #[test]
    fn sums_lose_their_small_change_where_there_is_something_larger() {
        assert_eq!((sum(3.456, "$").as_str(), sum(1_234.5, "$").as_str()), ("$3.46", "$1240"));
        assert_eq!(sums([310.2, 380.0, 459.9], "$"), "$310 to $460");
        assert_eq!(sums([-0.001, 0.0, 0.001], "$"), sum(0.0, "$"));
    }
}
