//! What the job costs: each part as percentiles, and the mean split, which adds up.

use super::costs::{CostPart, Costs};
use super::words::{about, jobs_in, known};
use crate::findings::{Estimate, percent};
use serde::Serialize;
use sim::Sorted;

/// The percentiles told of every part, as shares \[0 to 1\].
pub const SHARES: [f64; 5] = [0.1, 0.5, 0.8, 0.9, 0.95];

/// What the job costs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CostFindings {
    /// The range in a sentence.
    pub range: String,
    /// The mean split in a sentence.
    pub split: String,
    /// How to read the table.
    pub by_itself: &'static str,
    /// Percentiles told, as shares \[0 to 1\].
    pub shares: [f64; 5],
    /// One for each part that costs anything, in the order of [`CostPart::ALL`].
    pub parts: Vec<CostLine>,
    /// All parts together.
    pub total: CostLine,
}

/// One part of the cost, or all of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CostLine {
    /// Stable name for files.
    pub key: &'static str,
    /// What people call it.
    pub what: &'static str,
    /// Mean \[money\].
    pub mean: Estimate,
    /// Its share of the mean cost of the job \[0 to 1\].
    pub share_of_mean: f64,
    /// One for each of the shares told \[money\].
    pub percentiles: [Estimate; 5],
    /// The mean in words.
    pub mean_said: String,
    /// The percentiles in words.
    pub said: [String; 5],
    /// How closely each percentile is known, in words.
    pub known: [String; 5],
    /// How closely the mean is known, in words.
    pub mean_known: String,
}

/// What the job costs, in its parts.
pub fn cost(costs: &Costs, currency: &str) -> CostFindings {
    let total = costs.total();
    let mean = total.mean().value;
    let total = line("total", "cost of the job", &total, mean, currency);
    let parts: Vec<CostLine> = CostPart::ALL
        .into_iter()
        .map(|part| line(part.key(), part.words(), &costs.part(part), mean, currency))
        .filter(|line| line.percentiles[4].value > 0.0 || line.mean.value > 0.0)
        .collect();
    CostFindings {
        range: range(&total),
        split: split(&parts),
        by_itself: "Each line by itself: percentiles of parts do not add up, means do.",
        shares: SHARES,
        parts,
        total,
    }
}

fn line(key: &'static str, what: &'static str, sample: &Sorted, whole: f64, currency: &str) -> CostLine {
    let mean = Estimate::from(sample.mean());
    let percentiles = SHARES.map(|share| Estimate::from(sample.percentile(share)));
    CostLine {
        key,
        what,
        share_of_mean: mean.value / whole,
        mean_said: about(mean.value, whole, currency),
        mean_known: known(mean, currency),
        said: percentiles.map(|p| about(p.value, whole, currency)),
        known: percentiles.map(|p| known(p, currency)),
        mean,
        percentiles,
    }
}

fn range(total: &CostLine) -> String {
    let [p10, p50, _, p90, _] = &total.said;
    if p10 == p90 {
        return format!("The job costs you {p50}.");
    }
    format!("{} cost you {p10} to {p90}; the average of all is {}.", jobs_in(0.8), total.mean_said)
}

/// Parts by their size.
fn split(parts: &[CostLine]) -> String {
    let mut order: Vec<&CostLine> = parts.iter().collect();
    order.sort_by(|a, b| b.mean.value.total_cmp(&a.mean.value));
    let words: Vec<String> =
        order.iter().map(|line| format!("{} {}", line.what, percent(line.share_of_mean))).collect();
    format!("On average: {}.", words.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quote::findings::costs::RunCost;

    fn run(run: u32, labour: f64, material: f64) -> RunCost {
        RunCost {
            run,
            parts: [labour, 0.0, 0.0, 0.0, material, 0.0, 0.0],
            total: labour + material,
            hours: 2.0,
            short_m3: 0.0,
            left_over_m3: 0.0,
        }
    }

    #[test]
    fn means_add_up_and_what_costs_nothing_is_no_line() {
        let costs = Costs((0..=100).map(|i| run(i, f64::from(i), 150.0)).collect());
        let findings = cost(&costs, "$");
        assert_eq!(findings.parts.iter().map(|line| line.key).collect::<Vec<_>>(), ["labour", "material"]);
        let sum: f64 = findings.parts.iter().map(|line| line.mean.value).sum();
        assert!((sum - findings.total.mean.value).abs() < 1e-9);
        assert_eq!(findings.split, "On average: material 75 %, labour 25 %.");
        assert_eq!(findings.range, "8 jobs in 10 cost you $160 to $240; the average of all is $200.");
        assert_eq!(findings.parts[0].said, ["$10", "$50", "$80", "$90", "$95"]);
        assert_eq!(findings.parts[1].known[0], "exactly");
    }
}
