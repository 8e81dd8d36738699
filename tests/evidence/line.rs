//! The loader-and-raker line with limited room, everything exponential.
//!
//! Sources: `tandem_makespan.csv` (exact mean, sd and percentiles of the completion of a finite job) and `tandem_line.csv`
//! (long-run throughput and shares), status computed: small Markov chains, checked by a second method. In the tables `b`
//! leaves out the heaps being raked; in the model a heap being raked holds its place, so room is `b + c`.

use super::theory::*;
use sim::{LoaderActivity, Outcome, RakerActivity, SECOND};

fn line(loads: u32, loader_rate: f64, raker_rate: f64, rakers: usize, b: f64) -> sim::Job {
    let mut job = raking(loading(job(loads, 1), 1.0 / loader_rate, exponential()), rakers, raker_rate);
    job.zones[0].room = Some(b as u32 + rakers as u32);
    job
}

#[test]
fn every_percentile_of_a_finite_job_is_the_exact_one() {
    // 100,000 runs; at most 4.5 standard errors for any of 84 figures. The error of a percentile is read off its interval.
    let table = Table::read("tandem_makespan.csv");
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        assert_eq!(table.text(row, "blocking_rule"), "BAS");
        let (loads, rakers) = (f("N_loads") as u32, f("c_rakers") as usize);
        let job = line(loads, f("mu1"), f("mu2_each"), rakers, f("b_room"));
        let sample = study(&job, 100_000).sorted(|o| o.completion.working as f64 / SECOND as f64 / UNIT_S);
        let what = |figure| format!("{loads} loads, {rakers} rakers, room {}, {figure}", f("b_room"));
        let mean = sample.mean();
        let root = (mean.n as f64).sqrt();
        verdict.compare(&what("mean"), mean.value, mean.sd / root, f("mean"), 1e-6, 4.5);
        // The error of a spread of a law with a tail like these: kurtosis at most that of one exponential, 9.
        verdict.compare(&what("sd"), mean.sd, mean.sd * 2.0_f64.sqrt() / root, f("sd"), 1e-6, 4.5);
        for (heading, share) in [("P10", 0.1), ("P50", 0.5), ("P80", 0.8), ("P90", 0.9), ("P95", 0.95)] {
            let percentile = sample.percentile(share);
            let error = (percentile.high.unwrap() - percentile.low.unwrap()) / (2.0 * 1.96);
            verdict.compare(&what(heading), percentile.value, error, f(heading), 1e-6, 4.5);
        }
    }
    verdict.give(84);
}

#[test]
fn throughput_and_waiting_of_a_long_job_are_the_exact_ones() {
    // 16 runs of 8,000 loads; the way in and out is a few loads, under 0.1 %. At most 5.5 standard errors of 15 degrees of
    // freedom for any of some 200 figures.
    let table = Table::read("tandem_line.csv");
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        if table.text(row, "blocking_rule") != "BAS" {
            continue;
        }
        let (mu1, mu2, c, b) =
            (f("mu1_loader_per_unit_time"), f("mu2_each_raker"), f("c_rakers") as usize, f("b_waiting_room"));
        let study = study(&line(8_000, mu1, mu2, c, b), 16);
        let what = |figure| format!("rates {mu1} and {mu2}, {c} rakers, b {b}, {figure}");
        let share = |o: &Outcome, spent: i64, of: usize| spent as f64 / (o.finish.working * of as i64) as f64;
        let blocked = |o: &Outcome| share(o, o.loaders[LoaderActivity::WaitingForRoom as usize], 1);
        let busy = |o: &Outcome| share(o, o.rakers[RakerActivity::Raking as usize], c);
        let way_in = 1e-3 * f("throughput");
        let (got, error) = mean_of(&study, throughput);
        verdict.compare(&what("throughput"), got, error, f("throughput"), way_in, 5.5);
        let (got, error) = mean_of(&study, blocked);
        verdict.compare(&what("blocked"), got, error, f("P_loader_blocked"), 1e-3, 5.5);
        let (got, error) = mean_of(&study, busy);
        verdict.compare(&what("raking"), got, error, f("raker_utilisation_each"), 1e-3, 5.5);
    }
    verdict.give(180);
}
