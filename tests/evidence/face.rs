//! Several loaders at one face, and at one face and one dump: the finite-source queue and the closed network.
//!
//! Sources: `finite_source.csv` and `closed_network.csv`, status computed (closed forms and exact mean value analysis);
//! `finite_queue_published.csv`, printed values SEEN: Peck & Hazelwood's table as printed in Tompkins et al., Facilities
//! Planning, table 10.37.

use super::theory::*;
use sim::{Distribution, LoaderActivity, Outcome};

/// Runs of each case and loads in each: the way in and out is under 0.1 %.
const RUNS: u32 = 16;
const LOADS: u32 = 8_000;
const WAY_IN: f64 = 1e-3;

#[test]
fn loaders_at_one_face_move_what_the_finite_source_queue_says() {
    let table = Table::read("finite_source.csv");
    let erlang = |k: f64| Distribution::Gamma { mean: 1.0, cv: 1.0 / k.sqrt() };
    let constant = || Distribution::Constant(1.0);
    // With exponential loading the shape of the travel times does not matter: two shapes.
    let cases = [
        ("X_MM1N_(S=1)", exponential(), exponential(), 1),
        ("X_MM1N_(S=1)", exponential(), constant(), 1),
        ("X_ME2_1N", erlang(2.0), exponential(), 1),
        ("X_ME4_1N", erlang(4.0), exponential(), 1),
        ("X_MD1N", constant(), exponential(), 1),
        ("X_MM2N_two_faces", exponential(), exponential(), 2),
        ("X_all_deterministic", constant(), constant(), 1),
    ];
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let (rho, loaders) = (table.number(row, "rho_S_over_Z"), table.number(row, "N_machines") as usize);
        if ![2, 4, 8].contains(&loaders) {
            continue;
        }
        for (heading, load_law, travel_law, face) in &cases {
            let mut job =
                travel(loading(job(LOADS, loaders), 1.0, load_law.clone()), 1.0 / rho, travel_law.clone());
            job.stockpiles[0].face = *face;
            let truth = table.number(row, heading);
            let (got, error) = mean_of(&study(&job, RUNS), throughput);
            let what = format!("rho {rho}, {loaders} loaders, {heading}, travel {travel_law:?}");
            verdict.compare(&what, got, error, truth, WAY_IN * truth, 5.5);
        }
    }
    verdict.give(100);
}

#[test]
fn loaders_wait_at_the_face_as_much_as_the_printed_table_says() {
    // F, the efficiency, is the share of its time in which a machine does not wait; printed to three digits,
    // which agree with exact computation to 0.001.
    let table = Table::read("finite_queue_published.csv");
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let (loaders, factor) = (f("N") as usize, f("X_service_factor"));
        let mut job =
            travel(loading(job(LOADS, loaders), 1.0, exponential()), 1.0 / factor - 1.0, exponential());
        job.stockpiles[0].face = f("c_servers") as u32;
        let waits = |o: &Outcome| {
            let waited = o.loaders[LoaderActivity::WaitingForFace as usize];
            1.0 - waited as f64 / (o.finish.working * loaders as i64) as f64
        };
        let (got, error) = mean_of(&study(&job, RUNS), waits);
        let what = format!("{loaders} loaders, {} at once, service factor {factor}", f("c_servers"));
        verdict.compare(&what, got, error, f("F_printed"), 0.001 + WAY_IN, 5.5);
    }
    verdict.give(38);
}

#[test]
fn loaders_that_queue_twice_move_what_mean_value_analysis_says() {
    let table = Table::read("closed_network.csv");
    let mut verdict = Verdict::default();
    for row in &table.rows {
        let case = table.text(row, "case");
        let loaders = table.number(row, "N_loaders") as usize;
        let times: Vec<f64> =
            table.text(row, "mean_service_times").split('|').map(|t| t.parse().unwrap()).collect();
        let servers: Vec<u32> = table.text(row, "servers").split('|').map(|t| t.parse().unwrap()).collect();
        let z = table.number(row, "Z_mean_travel_total");
        let mut job =
            travel(loading(job(LOADS, loaders), times[0], exponential()), z, Distribution::Constant(1.0));
        job.stockpiles[0].face = servers[0];
        // The second station is the dump: so many at once, each for as long as dumping takes.
        if let (Some(time), Some(at_once)) = (times.get(1), servers.get(1)) {
            job.loaders.iter_mut().for_each(|l| l.dump_s = time * UNIT_S);
            job.chance.loads.dump = exponential();
            job.zones[0].room = Some(*at_once);
        }
        let truth = table.number(row, "throughput_X");
        let (got, error) = mean_of(&study(&job, RUNS), throughput);
        verdict.compare(&format!("{case}, {loaders} loaders"), got, error, truth, WAY_IN * truth, 5.5);
    }
    verdict.give(18);
}
