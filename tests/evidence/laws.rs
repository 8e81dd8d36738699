//! Distributions against printed moments and percentiles.
//!
//! Sources: `lognormal_conversions.csv` and `pert_beta.csv`, status computed.

use super::comparison::{Comparison, Status};
use super::theory::Table;
use sim::Distribution;

fn close(comparison: &mut Comparison, what: String, got: f64, truth: f64) {
    comparison.exact(what, got, truth, 1e-7 * truth.abs().max(1.0));
}

pub(super) fn lognormal() -> Comparison {
    let mut comparison = Comparison::new(
        "Lognormal laws of a mean and a coefficient of variation have the right percentiles",
        "sigma^2 = ln(1 + cv^2), mu = ln(mean) - sigma^2 / 2 (lognormal_conversions.csv)",
        Status::Computed,
        0.0,
    );
    let table = Table::read("lognormal_conversions.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let law = Distribution::Lognormal { mean: f("mean"), cv: f("cv") };
        let shares = [("median", 0.5), ("P10", 0.1), ("P90", 0.9), ("P95", 0.95)];
        for (heading, share) in shares {
            let what = format!("mean {}, cv {}: {heading}", f("mean"), f("cv"));
            close(&mut comparison, what, law.quantile(share), f(heading));
        }
    }
    comparison
}

pub(super) fn pert_and_triangular() -> Comparison {
    let mut comparison = Comparison::new(
        "PERT and triangular laws have the right moments and percentiles",
        "beta law with weight 4 on the mode; triangular closed forms (pert_beta.csv)",
        Status::Computed,
        0.0,
    );
    let table = Table::read("pert_beta.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let (least, mode, greatest) = (f("a"), f("mode"), f("b"));
        let what = |law, figure| format!("{law} {least}, {mode}, {greatest}: {figure}");
        let pert = Distribution::Pert { least, mode, greatest };
        let variance = "var_betaPERT_(mean-a)(b-mean)/7";
        close(&mut comparison, what("PERT", "mean"), pert.mean(), f("mean_(a+4m+b)/6"));
        close(&mut comparison, what("PERT", "variance"), pert.sd() * pert.sd(), f(variance));
        for (heading, share) in [("P10", 0.1), ("P50", 0.5), ("P90", 0.9)] {
            close(&mut comparison, what("PERT", heading), pert.quantile(share), f(heading));
        }
        let triangular = Distribution::Triangular { least, mode, greatest };
        close(&mut comparison, what("triangular", "mean"), triangular.mean(), f("triangular_mean"));
        let spread = triangular.sd() * triangular.sd();
        close(&mut comparison, what("triangular", "variance"), spread, f("triangular_var"));
    }
    comparison
}

#[test]
fn lognormal_laws_have_the_printed_percentiles() {
    lognormal().judge(28);
}

#[test]
fn pert_and_triangular_laws_have_the_printed_moments_and_percentiles() {
    pert_and_triangular().judge(35);
}
