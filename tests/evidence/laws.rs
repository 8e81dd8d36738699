//! Distributions against printed moments and percentiles.
//!
//! Sources: `lognormal_conversions.csv` and `pert_beta.csv`, status computed.

use super::theory::Table;
use sim::Distribution;

fn close(what: &str, got: f64, truth: f64) {
    assert!((got - truth).abs() <= 1e-7 * truth.abs().max(1.0), "{what}: {got}, expected {truth}");
}

#[test]
fn lognormal_laws_have_the_printed_percentiles() {
    let table = Table::read("lognormal_conversions.csv");
    assert_eq!(table.rows.len(), 7);
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let law = Distribution::Lognormal { mean: f("mean"), cv: f("cv") };
        close("median", law.quantile(0.5), f("median"));
        for (heading, share) in [("P10", 0.1), ("P90", 0.9), ("P95", 0.95)] {
            close(heading, law.quantile(share), f(heading));
        }
    }
}

#[test]
fn pert_and_triangular_laws_have_the_printed_moments_and_percentiles() {
    let table = Table::read("pert_beta.csv");
    assert_eq!(table.rows.len(), 5);
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let (least, mode, greatest) = (f("a"), f("mode"), f("b"));
        let pert = Distribution::Pert { least, mode, greatest };
        close("mean", pert.mean(), f("mean_(a+4m+b)/6"));
        close("variance", pert.sd() * pert.sd(), f("var_betaPERT_(mean-a)(b-mean)/7"));
        for (heading, share) in [("P10", 0.1), ("P50", 0.5), ("P90", 0.9)] {
            close(heading, pert.quantile(share), f(heading));
        }
        let triangular = Distribution::Triangular { least, mode, greatest };
        close("triangular mean", triangular.mean(), f("triangular_mean"));
        close("triangular variance", triangular.sd() * triangular.sd(), f("triangular_var"));
    }
}
