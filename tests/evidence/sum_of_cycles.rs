//! One loader, no waiting: the completion is a sum of exponential cycles.
//!
//! Source: `erlang_job_percentiles.csv`, status computed (Erlang quantiles).

use super::comparison::{Comparison, Status};
use super::theory::*;

pub(super) fn exponential_cycles() -> Comparison {
    let mut comparison = Comparison::new(
        "A job of one loader that never waits has the percentiles of the Erlang law",
        "Erlang quantiles (erlang_job_percentiles.csv); 100,000 runs a job",
        Status::Computed,
        4.0,
    );
    let table = Table::read("erlang_job_percentiles.csv");
    for row in &table.rows {
        let loads = table.number(row, "N_cycles_mean_1") as u32;
        let sample = study(&loading(job(loads, 1), 1.0, exponential()), 100_000).sorted(completion);
        for (heading, share) in
            [("P5", 0.05), ("P10", 0.1), ("P50", 0.5), ("P80", 0.8), ("P90", 0.9), ("P95", 0.95)]
        {
            let percentile = sample.percentile(share);
            let error = (percentile.high.unwrap() - percentile.low.unwrap()) / (2.0 * 1.96);
            let what = format!("{loads} cycles: {heading}");
            comparison.compare(what, percentile.value, error, table.number(row, heading), 1e-6);
        }
        let (sd, error) = spread(&sample);
        comparison.compare(format!("{loads} cycles: sd"), sd, error, table.number(row, "sd"), 1e-6);
    }
    comparison
}

#[test]
fn a_job_of_exponential_cycles_has_the_percentiles_of_the_erlang_law() {
    exponential_cycles().judge(49);
}
