//! One loader, no waiting: the completion is a sum of exponential cycles.
//!
//! Source: `erlang_job_percentiles.csv`, status computed (Erlang quantiles).

use super::theory::*;
use sim::SECOND;

#[test]
fn a_job_of_exponential_cycles_has_the_percentiles_of_the_erlang_law() {
    let table = Table::read("erlang_job_percentiles.csv");
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let loads = table.number(row, "N_cycles_mean_1") as u32;
        let job = loading(job(loads, 1), 1.0, exponential());
        let sample = study(&job, 100_000).sorted(|o| o.completion.working as f64 / SECOND as f64 / UNIT_S);
        for (heading, share) in
            [("P5", 0.05), ("P10", 0.1), ("P50", 0.5), ("P80", 0.8), ("P90", 0.9), ("P95", 0.95)]
        {
            let percentile = sample.percentile(share);
            let error = (percentile.high.unwrap() - percentile.low.unwrap()) / (2.0 * 1.96);
            let what = format!("{loads} cycles, {heading}");
            verdict.compare(&what, percentile.value, error, table.number(row, heading), 1e-6, 4.0);
        }
    }
    verdict.give(42);
}
