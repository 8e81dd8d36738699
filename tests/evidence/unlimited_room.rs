//! One loader that only loads, unlimited room: heaps come to the rakers as a Poisson stream, a queue with so many servers.
//!
//! Source: `mmc_published.csv`, printed values SEEN.

use super::comparison::{Comparison, Status};
use super::theory::*;
use super::watched::*;
use sim::{Event, LoaderActivity, RakerActivity, Replay};

/// Runs of each case.
const RUNS: u32 = 80;

/// How heaps wait and rakers stand idle between two times: the mean number waiting, and the share of time nobody rakes.
fn waiting_and_idle(run: &Replay, from: f64, to: f64) -> (f64, f64) {
    let (mut waiting, mut raking) = (0_usize, 0_usize);
    let heaps = shares_of_time(&run.log, units(from), units(to), |event| {
        match event {
            Event::Loader { activity: LoaderActivity::Dumping, .. } => waiting += 1,
            Event::Raker { activity: RakerActivity::Raking, .. } => waiting -= 1,
            _ => {}
        }
        waiting
    });
    let busy = shares_of_time(&run.log, units(from), units(to), |event| {
        match event {
            Event::Raker { activity: RakerActivity::Raking, .. } => raking += 1,
            Event::HeapRakedOut { .. } => raking -= 1,
            _ => {}
        }
        raking
    });
    (mean_count(&heaps), busy[0])
}

pub(super) fn heaps_that_wait() -> Comparison {
    let mut comparison = Comparison::new(
        "With unlimited room, heaps wait for several rakers as the printed table of the queue M/M/c says",
        "textbook table of M/M/c (mmc_published.csv), three digits; 80 runs, each looked at for 20 relaxation times \
         1 / (sqrt(c mu) - sqrt(lambda))^2, or 2,000 mean raking times if that is more, after half as long a way in",
        Status::Seen,
        4.5,
    );
    let table = Table::read("mmc_published.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let (rate, rakers) = (f("lambda_over_mu"), f("M_servers"));
        let relaxation = (rakers.sqrt() - rate.sqrt()).powi(-2);
        let looked_at = (20.0 * relaxation).max(2_000.0);
        let (from, to) = (looked_at / 2.0, 1.5 * looked_at);
        // Enough loads that the loader is still at it when we stop looking.
        let loads = rate * to + 8.0 * (rate * to).sqrt();
        let job = raking(loading(job(loads as u32, 1), 1.0 / rate, exponential()), rakers as usize, 1.0);
        let of_runs: Vec<(f64, f64)> =
            replays(&job, RUNS).map(|run| waiting_and_idle(&run, from, to)).collect();
        let (waiting, idle): (Vec<f64>, Vec<f64>) = of_runs.into_iter().unzip();
        let what = |figure| format!("{rakers} rakers, {rate} heaps in a mean raking time: {figure}");
        let (got, error) = mean_and_error(&waiting);
        comparison.compare(what("heaps waiting"), got, error, f("Lq_printed"), 0.0005);
        let (got, error) = mean_and_error(&idle);
        comparison.compare(what("all rakers idle"), got, error, f("P0_printed"), 0.0005);
    }
    comparison
}

#[test]
fn heaps_wait_for_several_rakers_as_the_printed_table_says() {
    heaps_that_wait().judge(28);
}
