//! The loader-and-raker line with limited room, everything exponential.
//!
//! Sources: `tandem_makespan.csv` (exact mean, sd and percentiles of the completion of a finite job) and `tandem_line.csv`
//! (long-run throughput and shares), status computed: small Markov chains, checked by a second method. In the tables `b`
//! leaves out the heaps being raked; in the model a heap being raked holds its place, so room is `b + c`.

use super::comparison::{Comparison, Status};
use super::theory::*;
use sim::{LoaderActivity, Outcome, RakerActivity};

fn line(loads: u32, loader_rate: f64, raker_rate: f64, rakers: usize, b: f64) -> sim::Job {
    let mut job = raking(loading(job(loads, 1), 1.0 / loader_rate, exponential()), rakers, raker_rate);
    job.zones[0].room = Some(b as u32 + rakers as u32);
    job
}

/// The finite job, percentile by percentile.
pub(super) fn finite_job() -> Comparison {
    let mut comparison = Comparison::new(
        "Every percentile of a finite job of one loader and its rakers is the exact one",
        "small Markov chain of the loader, the room and the rakers, transient solution (tandem_makespan.csv); 100,000 runs a job",
        Status::Computed,
        4.5,
    );
    let table = Table::read("tandem_makespan.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        assert_eq!(table.text(row, "blocking_rule"), "BAS");
        let (loads, rakers) = (f("N_loads") as u32, f("c_rakers") as usize);
        let job = line(loads, f("mu1"), f("mu2_each"), rakers, f("b_room"));
        let sample = study(&job, 100_000).sorted(completion);
        let what = format!("{loads} loads, {rakers} rakers, room {} besides", f("b_room"));
        let truth = |heading: &str| table.number(row, heading);
        percentiles(&mut comparison, &what, &sample, truth, 1e-6);
    }
    comparison
}

/// The long job: throughput and shares of time.
pub(super) fn long_job() -> Comparison {
    let mut comparison = Comparison::new(
        "One loader and its rakers move, wait and rake in the long run as the chain says",
        "stationary solution of the same Markov chain (tandem_line.csv); 16 runs of 8,000 loads, whose way in and out is under 0.1 %",
        Status::Computed,
        5.5,
    );
    let table = Table::read("tandem_line.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        if table.text(row, "blocking_rule") != "BAS" {
            continue;
        }
        let (mu1, mu2, c, b) =
            (f("mu1_loader_per_unit_time"), f("mu2_each_raker"), f("c_rakers") as usize, f("b_waiting_room"));
        let study = study(&line(8_000, mu1, mu2, c, b), 16);
        let what = |figure| format!("rates {mu1} and {mu2}, {c} rakers, room {b} besides: {figure}");
        let share = |o: &Outcome, spent: sim::Duration, of: usize| spent / (o.finish.working * of as i64);
        let blocked = |o: &Outcome| share(o, o.loaders.time(LoaderActivity::WaitingForRoom), 1);
        let busy = |o: &Outcome| share(o, o.rakers.time(RakerActivity::Raking), c);
        let (got, error) = mean_of(&study, throughput);
        comparison.compare(what("throughput"), got, error, f("throughput"), 1e-3 * f("throughput"));
        let (got, error) = mean_of(&study, blocked);
        comparison.compare(what("waiting for room"), got, error, f("P_loader_blocked"), 1e-3);
        let (got, error) = mean_of(&study, busy);
        comparison.compare(what("raking"), got, error, f("raker_utilisation_each"), 1e-3);
    }
    comparison
}

#[test]
fn every_percentile_of_a_finite_job_is_the_exact_one() {
    finite_job().judge(84);
}

#[test]
fn throughput_and_waiting_of_a_long_job_are_the_exact_ones() {
    long_job().judge(180);
}
