//! For those who bill by the hour: hours on the job, what an hour costs, and an estimate with its limit.

use super::costs::Costs;
use super::offer::Asked;
use super::words::{LEAST, about, jobs_in, known, odds};
use crate::findings::{Estimate, about_money, label};
use scenarios::units::money;
use serde::Serialize;
use sim::{Mean, Sorted, mean, share};

/// Percentiles of the hours told, as shares \[0 to 1\].
const SHARES: [f64; 3] = [0.5, 0.8, 0.9];
/// Hours are billed in steps of this \[h\].
const STEP_H: f64 = 0.25;

/// Hours and rate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HoursFindings {
    /// The estimate in a sentence, or the rate that breaks even.
    pub sentence: String,
    /// What the rate or the limit leaves, in a sentence.
    pub leaves: String,
    /// What counts as an hour.
    pub counted: &'static str,
    /// P50, P80 and P90 of the hours on the job.
    pub rows: Vec<HoursRow>,
    /// What an hour on the job costs on average, what is fixed left out \[money/h\].
    pub break_even_per_h: Estimate,
    /// The same in words.
    pub break_even_said: String,
    /// How closely it is known, in words.
    pub break_even_known: String,
    /// Mean of what comes on top of the hours \[money\].
    pub on_top: f64,
    /// The estimate at the rate asked for.
    pub estimate: Option<HourlyEstimate>,
}

/// One percentile of the hours on the job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HoursRow {
    /// Which one, as a share \[0 to 1\].
    pub share: f64,
    /// `P80`.
    pub label: String,
    /// `8 jobs in 10`.
    pub odds: String,
    /// Hours on the job.
    pub hours: Estimate,
    /// The same in words.
    pub said: String,
    /// Their interval, in words.
    pub known: String,
    /// What they come to at the rate asked for, in words.
    pub bill: Option<String>,
}

/// Hours at a rate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HourlyEstimate {
    /// The rate \[money/h\].
    pub rate: f64,
    /// The rate in words.
    pub rate_said: String,
    /// From, to and limit \[h\]: the P50 to the nearest quarter-hour, P80 and P90 rounded up to one.
    pub hours: [f64; 3],
    /// The hours from and to in words.
    pub hours_said: String,
    /// What they come to \[money\].
    pub sums: [f64; 3],
    /// The sums from and to in words.
    pub sums_said: String,
    /// The limit in words.
    pub limit_said: String,
    /// What stays of the hours' bill on average, without a limit \[money\].
    pub stays: Estimate,
    /// Chance that the hours cost more than their bill, without a limit \[0 to 1\].
    pub risk: Estimate,
    /// What stays on average where the limit is kept \[money\].
    pub stays_with_limit: Estimate,
    /// Chance that the hours cost more than their bill where the limit is kept \[0 to 1\].
    pub risk_with_limit: Estimate,
}

/// Hours and rate of jobs of these costs.
pub fn hours(costs: &Costs, asked: &Asked, currency: &str) -> HoursFindings {
    let hours = Sorted::new(costs.0.iter().map(|run| run.hours));
    let break_even = break_even(costs);
    let break_even_said = format!("{}/h", about_money(break_even.value, currency));
    let estimate = asked.rate.map(|rate| estimate(costs, &hours, rate, currency));
    let on_top = mean(&costs.0.iter().map(super::RunCost::fixed).collect::<Vec<_>>()).value;
    let beside = match on_top > 0.0 {
        true => " Material, delivery and the like come on top.",
        false => "",
    };
    let (sentence, leaves) = match &estimate {
        Some(at) => (said(at, beside), leaves(at, &about_money(break_even.value, currency), currency)),
        None => (
            format!(
                "An hour on the job costs you {break_even_said} on average: bill less and you pay to work.{beside}"
            ),
            "Say --rate for an estimate by the hour with a limit.".into(),
        ),
    };
    let row = |share: f64| {
        let at = Estimate::from(hours.percentile(share));
        HoursRow {
            share,
            label: label(share),
            odds: jobs_in(share),
            said: format!("{:.1} h", at.value),
            known: interval(at),
            bill: asked.rate.map(|rate| about_money(rate * at.value, currency)),
            hours: at,
        }
    };
    HoursFindings {
        sentence,
        leaves,
        counted: "Hours run from the start of the day to the end of clean-up, for the whole crew together: set-up, waiting and \
                  breaks are in them, nights are not.",
        rows: SHARES.into_iter().map(row).collect(),
        break_even_per_h: break_even,
        break_even_said,
        break_even_known: known(break_even, currency),
        on_top,
        estimate,
    }
}

/// Mean cost of the hours over mean hours: at this rate nothing stays and nothing is missing on average. The interval is that
/// of a ratio estimator (Cochran, Sampling Techniques, 3rd ed., 1977, ch. 6, from memory): the mean of cost less ratio x
/// hours, over the mean hours.
fn break_even(costs: &Costs) -> Estimate {
    let sum = |of: &dyn Fn(&super::RunCost) -> f64| costs.0.iter().map(of).sum::<f64>();
    let (cost, hours) = (sum(&|run| run.total - run.fixed()), sum(&|run| run.hours));
    let ratio = cost / hours;
    let off: Vec<f64> = costs.0.iter().map(|run| run.total - run.fixed() - ratio * run.hours).collect();
    let Mean { value, high, .. } = mean(&off);
    let half = (high - value) / (hours / costs.0.len() as f64);
    let bound = |end: f64| Some(end).filter(|end| end.is_finite());
    Estimate { value: ratio, low: bound(ratio - half), high: bound(ratio + half) }
}

fn estimate(costs: &Costs, hours: &Sorted, rate: f64, currency: &str) -> HourlyEstimate {
    let [middle, most, limit] = SHARES.map(|share| hours.percentile(share).value);
    let nearest = ((middle / STEP_H).round() * STEP_H).max(STEP_H);
    let billed = [nearest, quarters_up(most), quarters_up(limit)];
    let sums = billed.map(|h| h * rate);
    let limit = sums[2];
    let left = |limit: f64| -> (Estimate, Estimate) {
        let each: Vec<f64> =
            costs.0.iter().map(|run| (run.hours * rate).min(limit) - (run.total - run.fixed())).collect();
        let lost = costs.0.iter().zip(&each).filter(|(run, left)| **left < -run.total * LEAST).count();
        (mean(&each).into(), share(lost, each.len()).into())
    };
    let (stays, risk) = left(f64::INFINITY);
    let (stays_with_limit, risk_with_limit) = left(limit);
    HourlyEstimate {
        rate,
        rate_said: format!("{}/h", money(rate, currency)),
        hours_said: span(&hours_words(billed[0]), &hours_words(billed[1])),
        sums_said: span(&money(sums[0], currency), &money(sums[1], currency)),
        limit_said: money(limit, currency),
        hours: billed,
        sums,
        stays,
        risk,
        stays_with_limit,
        risk_with_limit,
    }
}

fn said(at: &HourlyEstimate, beside: &str) -> String {
    format!(
        "{} hours at {}: {}, not to exceed {} ({}).{beside}",
        at.hours_said,
        at.rate_said,
        at.sums_said,
        at.limit_said,
        jobs_in(SHARES[2])
    )
}

fn leaves(at: &HourlyEstimate, break_even: &str, currency: &str) -> String {
    let (stays, kept) = (at.stays_with_limit.value, about(at.stays.value, at.sums[2], currency));
    let left = if stays < 0.0 {
        format!("{} of it is missing on average", about(-stays, at.sums[2], currency))
    } else {
        format!("you keep {} of it on average", about(stays, at.sums[2], currency))
    };
    let risk = at.risk_with_limit.value;
    format!(
        "An hour costs you {break_even}. With the limit {left} ({kept} without), and you lose money {}.",
        odds(risk)
    )
}

/// `5.4 to 5.5 h`.
fn interval(hours: Estimate) -> String {
    match (hours.low, hours.high) {
        (Some(low), Some(high)) if low >= high => "exactly".into(),
        (Some(low), Some(high)) => format!("{low:.2} to {high:.2} h"),
        (Some(low), None) => format!("over {low:.2} h"),
        _ => "too few runs".into(),
    }
}

fn quarters_up(hours: f64) -> f64 {
    (hours / STEP_H * (1.0 - LEAST)).ceil() * STEP_H
}

/// `5`, `5.5`, `5.25`.
fn hours_words(hours: f64) -> String {
    format!("{hours}")
}

fn span(from: &str, to: &str) -> String {
    if from == to { from.to_owned() } else { format!("{from} to {to}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quote::findings::costs::RunCost;

    const AT_90: Asked = Asked { risk: 0.1, margin: None, price: None, rate: Some(90.0) };

    /// A hundred and one jobs of 4.00 to 5.00 hours at $60 each hour, and $100 of material.
    fn costs() -> Costs {
        let run = |i: u32| {
            let hours = 4.0 + f64::from(i) / 100.0;
            let labour = 60.0 * hours;
            RunCost {
                run: i,
                parts: [labour, 0.0, 0.0, 0.0, 100.0, 0.0, 0.0],
                total: labour + 100.0,
                hours,
                short_m3: 0.0,
                left_over_m3: 0.0,
            }
        };
        Costs((0..=100).map(run).collect())
    }

    #[test]
    fn an_estimate_runs_from_the_middle_to_the_p80_and_is_limited_by_the_p90() {
        // P50 4.5 h, P80 4.8 h (billed 5), P90 4.9 h (billed 5): 405, 450 and 450 at 90.
        let findings = hours(&costs(), &AT_90, "$");
        assert_eq!(
            findings.sentence,
            "4.5 to 5 hours at $90/h: $405 to $450, not to exceed $450 (9 jobs in 10). Material, delivery and the like come \
             on top."
        );
        assert_eq!(
            findings.rows.iter().map(|r| r.said.as_str()).collect::<Vec<_>>(),
            ["4.5 h", "4.8 h", "4.9 h"]
        );
        let at = findings.estimate.unwrap();
        // 30 an hour stay of 4.5 h on average, in every job.
        assert!((at.stays.value - 135.0).abs() < 1e-9);
        assert_eq!((at.risk.value, at.hours), (0.0, [4.5, 5.0, 5.0]));
        assert!((at.stays_with_limit.value - 135.0).abs() < 1e-9, "no job takes more than the limit");
    }

    #[test]
    fn the_limit_costs_what_is_worked_beyond_it() {
        // Nineteen jobs of 4 h and one of 8 h at $60 an hour; at $70 the limit is the P90, 4 h or $280. The long one costs
        // $480 and is billed $560 without the limit, $280 with it.
        let mut costs = Costs(vec![costs().0.remove(0); 20]);
        costs.0[7].hours = 8.0;
        costs.0[7].parts[0] = 480.0;
        costs.0[7].total = 580.0;
        let at = hours(&costs, &Asked { rate: Some(70.0), ..AT_90 }, "$").estimate.unwrap();
        assert_eq!(at.sums, [280.0; 3]);
        assert!((at.stays.value - (19.0 * 40.0 + 80.0) / 20.0).abs() < 1e-9);
        assert!((at.stays_with_limit.value - (19.0 * 40.0 - 200.0) / 20.0).abs() < 1e-9);
        assert_eq!((at.risk.value, at.risk_with_limit.value), (0.0, 0.05));
    }

    #[test]
    fn the_rate_that_breaks_even_leaves_material_out() {
        let findings = hours(&costs(), &Asked { rate: None, ..AT_90 }, "$");
        assert!((findings.break_even_per_h.value - 60.0).abs() < 1e-9);
        assert!((findings.break_even_per_h.high.unwrap() - 60.0).abs() < 1e-9, "every hour costs the same");
        assert!(
            findings.sentence.starts_with("An hour on the job costs you $60/h on average"),
            "{}",
            findings.sentence
        );
        let below = hours(&costs(), &Asked { rate: Some(50.0), ..AT_90 }, "$").estimate.unwrap();
        assert_eq!(below.risk.value, 1.0);
        assert!((below.stays.value + 45.0).abs() < 1e-9);
    }
}
