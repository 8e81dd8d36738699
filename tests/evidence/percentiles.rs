//! Percentiles and their intervals.
//!
//! Sources: `quantile_types.csv` (Hyndman & Fan's definitions on three small samples) and `quantile_ci_ranks.csv` (ranks of
//! distribution-free intervals, each tail at most 2.5 %), status computed; the interval of 15 values by Conover, Practical
//! Nonparametric Statistics, 3rd ed., p. 139, SEEN. The table does not list its samples: the twelve resistivities of the
//! NIST/SEMATECH e-Handbook are from memory, the eight values stand in the collection of published check values. That both
//! are the right ones is tested on the other definitions of the same table.

use super::comparison::{Comparison, Status};
use super::theory::Table;
use sim::{Sorted, interval_ranks};

/// The samples of the table, by its names.
fn samples() -> [(&'static str, Vec<f64>); 3] {
    let resistivities = vec![
        95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925, 95.1990,
        95.1682,
    ];
    let eight = vec![2.1, 2.4, 2.4, 3.0, 3.7, 4.5, 6.2, 9.9];
    [("1..10", (1..=10).map(f64::from).collect()), ("8pt", eight), ("NIST12", resistivities)]
}

/// Hyndman & Fan's types 4 to 9, from their paper's `p(k) = (k - a) / (n + 1 - a - b)`.
fn by_definition(kind: usize, sample: &Sorted, p: f64) -> f64 {
    let (a, b) =
        [(0.0, 1.0), (0.5, 0.5), (0.0, 0.0), (1.0, 1.0), (1.0 / 3.0, 1.0 / 3.0), (0.375, 0.375)][kind - 4];
    let x = sample.values();
    let n = x.len() as f64;
    let place = a + p * (n + 1.0 - a - b);
    let at = |k: f64| x[(k.clamp(1.0, n) as usize) - 1];
    let below = (place + 1e-12).floor();
    at(below) + (place - below).clamp(0.0, 1.0) * (at(below + 1.0) - at(below))
}

/// Every figure of the table in the column of a type, for `value` of sample and share.
fn column(comparison: &mut Comparison, kind: usize, value: impl Fn(&Sorted, f64) -> f64) {
    let table = Table::read("quantile_types.csv");
    for (name, values) in samples() {
        let sample = Sorted::new(values);
        for row in table.rows.iter().filter(|r| table.text(r, "dataset") == name) {
            let share = table.number(row, "p");
            let what = format!("{name}, type {kind}: P{:.0}", 100.0 * share);
            comparison.exact(what, value(&sample, share), table.number(row, &format!("type{kind}")), 6e-9);
        }
    }
}

pub(super) fn definition() -> Comparison {
    let mut comparison = Comparison::new(
        "Percentiles are of Hyndman & Fan's type 7",
        "Hyndman & Fan, Sample Quantiles in Statistical Packages, The American Statistician 50(4), 1996, on the numbers 1 \
         to 10, eight values, and twelve resistivities of the NIST/SEMATECH e-Handbook (quantile_types.csv)",
        Status::Computed,
        0.0,
    );
    column(&mut comparison, 7, |sample, share| sample.percentile(share).value);
    comparison
}

pub(super) fn intervals() -> Comparison {
    let mut comparison = Comparison::new(
        "The interval of a percentile has the ranks that keep each tail to a fortieth; rank 0 and n + 1 mean open",
        "binomial tails (quantile_ci_ranks.csv), David & Nagaraja, Order Statistics, 7.1",
        Status::Computed,
        0.0,
    );
    let table = Table::read("quantile_ci_ranks.csv");
    for row in &table.rows {
        let (n, share) = (table.number(row, "n") as usize, table.number(row, "p"));
        let rank = |heading| table.text(row, heading).parse::<usize>().ok();
        let (low, high) = interval_ranks(n, share);
        let what = |end| format!("{n} runs, P{:.0}: {end} rank", 100.0 * share);
        let number = |rank: Option<usize>, open: usize| rank.unwrap_or(open) as f64;
        comparison.exact(what("lower"), number(low, 0), number(rank("lower_rank_l"), 0), 0.0);
        comparison.exact(what("upper"), number(high, n + 1), number(rank("upper_rank_u"), n + 1), 0.0);
    }
    comparison
}

/// The upper quartile of 15 values: 7 or fewer lie below it with probability 0.0173, so rank 8 may bound it and 9 not.
pub(super) fn conover() -> Comparison {
    let mut comparison = Comparison::new(
        "Of 15 values the eighth is the highest that bounds the upper quartile from below",
        "Conover, Practical Nonparametric Statistics, 3rd ed., p. 139: P(Y <= 7) = 0.0173 (worked_examples.csv, S2)",
        Status::Seen,
        0.0,
    );
    comparison.exact("15 values, P75: lower rank", interval_ranks(15, 0.75).0.unwrap_or(0) as f64, 8.0, 0.0);
    comparison
}

#[test]
fn the_samples_behind_the_table_of_percentiles_are_the_right_ones() {
    for kind in [4, 5, 6, 8, 9] {
        let mut comparison = Comparison::new("", "", Status::Computed, 0.0);
        column(&mut comparison, kind, |sample, share| by_definition(kind, sample, share));
        comparison.judge(21);
    }
}

#[test]
fn percentiles_are_of_type_7() {
    definition().judge(21);
}

#[test]
fn intervals_have_the_ranks_that_keep_each_tail_to_a_fortieth() {
    intervals().judge(110);
    conover().judge(1);
}
