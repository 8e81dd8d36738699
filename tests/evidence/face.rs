//! Several loaders at one face, and at one face and one dump: the finite-source queue and the closed network.
//!
//! Sources: `finite_source.csv` and `closed_network.csv`, status computed (closed forms and exact mean value analysis);
//! `finite_queue_published.csv`, printed values SEEN: Peck & Hazelwood's table as printed in Tompkins et al., Facilities
//! Planning, table 10.37, and a table of the same kind in lecture slides.

use super::comparison::{Comparison, Status};
use super::theory::*;
use super::watched::*;
use sim::{Distribution, LoaderActivity, Outcome};

/// Runs of each case and loads in each: the way in and out is under 0.1 %.
const RUNS: u32 = 16;
const LOADS: u32 = 8_000;
const WAY_IN: f64 = 1e-3;
/// Loads in each run held to the printed table.
const PRINTED_LOADS: u32 = 2_500;

/// Time the crew spent on these, over the length of the run: how many of them did it at a time.
fn at_a_time(o: &Outcome, activities: &[LoaderActivity]) -> f64 {
    let spent: sim::Duration = activities.iter().map(|a| o.loaders.time(*a)).sum();
    spent / o.finish.working
}

/// One face, three loading laws, two travel laws, one or two at once.
pub(super) fn one_face() -> Comparison {
    let mut comparison = Comparison::new(
        "Several loaders at one face move what the finite-source queue says, whatever the travel times' shape",
        "machine interference: closed form (exponential), phases (Erlang), Ashcroft numbers (constant), two at once \
         (finite_source.csv; its idle share and waits follow from the throughput); 16 runs of 8,000 loads",
        Status::Computed,
        5.5,
    );
    let table = Table::read("finite_source.csv");
    let erlang = |k: f64| Distribution::Gamma { mean: 1.0, cv: 1.0 / k.sqrt() };
    let constant = || Distribution::Constant(1.0);
    // With exponential loading the shape of the travel times does not matter: two shapes.
    let cases = [
        ("X_MM1N_(S=1)", "exponential", exponential(), "exponential", exponential(), 1),
        ("X_MM1N_(S=1)", "exponential", exponential(), "constant", constant(), 1),
        ("X_ME2_1N", "Erlang 2", erlang(2.0), "exponential", exponential(), 1),
        ("X_ME4_1N", "Erlang 4", erlang(4.0), "exponential", exponential(), 1),
        ("X_MD1N", "constant", constant(), "exponential", exponential(), 1),
        ("X_MM2N_two_faces", "exponential", exponential(), "exponential", exponential(), 2),
        ("X_all_deterministic", "constant", constant(), "constant", constant(), 1),
    ];
    for row in &table.rows {
        let (rho, loaders) = (table.number(row, "rho_S_over_Z"), table.number(row, "N_machines") as usize);
        for (heading, load_words, load_law, travel_words, travel_law, face) in &cases {
            let mut job =
                travel(loading(job(LOADS, loaders), 1.0, load_law.clone()), 1.0 / rho, travel_law.clone());
            job.stockpiles[0].face = *face;
            let truth = table.number(row, heading);
            let (got, error) = mean_of(&study(&job, RUNS), throughput);
            let what = format!(
                "loading over travel {rho}, {loaders} loaders, {face} at once, {load_words} loading, {travel_words} travel: throughput"
            );
            comparison.compare(what, got, error, truth, WAY_IN * truth);
        }
    }
    comparison
}

/// The printed table: efficiency F and chance of waiting D.
pub(super) fn printed_table() -> Comparison {
    let mut comparison = Comparison::new(
        "Loaders wait at the face as often and as long as the printed finite-queue tables say",
        "Peck & Hazelwood as printed in Tompkins et al., Facilities Planning, table 10.37, and a table for N = 5 in lecture \
         slides (finite_queue_published.csv), three digits; 64 runs of 2,500 loads, their middle seven tenths",
        Status::Seen,
        5.5,
    );
    let table = Table::read("finite_queue_published.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let (loaders, factor) = (f("N") as usize, f("X_service_factor"));
        let mut job = travel(
            loading(job(PRINTED_LOADS, loaders), 1.0, exponential()),
            1.0 / factor - 1.0,
            exponential(),
        );
        job.stockpiles[0].face = f("c_servers") as u32;
        let middle = PRINTED_LOADS / 5..PRINTED_LOADS / 10 * 9;
        let of_runs: Vec<(f64, f64)> = replays(&job, 64)
            .map(|run| {
                // The last loads find the others gone home: look at the middle of the run only.
                let end = run.log.last().unwrap().at;
                let shares =
                    shares_of_time(&run.log, end / 5, end / 10 * 9, loaders_that_wait_at_the_face(loaders));
                (1.0 - mean_count(&shares) / loaders as f64, waited(&run.log, loaders, middle.clone()))
            })
            .collect();
        let (works, delayed): (Vec<f64>, Vec<f64>) = of_runs.into_iter().unzip();
        let what = |figure| {
            format!("{loaders} loaders, {} at once, service factor {factor}: {figure}", f("c_servers"))
        };
        // F, the efficiency, is the share of its time in which a machine does not wait.
        let (got, error) = mean_and_error(&works);
        comparison.compare(what("efficiency F"), got, error, f("F_printed"), 0.0005);
        // D is the chance that a machine has to wait; not given in six rows.
        let printed = table.text(row, "D_printed");
        if let Ok(truth) = printed.parse() {
            let (got, error) = mean_and_error(&delayed);
            comparison.compare(what("chance of waiting D"), got, error, truth, 0.0005);
        } else {
            assert!(printed.is_empty(), "{printed}");
        }
    }
    comparison
}

/// Face and dump, or face and two rakers who hold the loader: throughput and how many are at each.
pub(super) fn closed_network() -> Comparison {
    let mut comparison = Comparison::new(
        "Loaders that queue twice, at the face and at the dump, move and wait as mean value analysis says",
        "exact mean value analysis of closed networks (closed_network.csv); 16 runs of 8,000 loads",
        Status::Computed,
        5.5,
    );
    let table = Table::read("closed_network.csv");
    for row in &table.rows {
        let list = |heading: &str| -> Vec<f64> {
            table.text(row, heading).split('|').map(|t| t.parse().unwrap()).collect()
        };
        let case = table.text(row, "case");
        let loaders = table.number(row, "N_loaders") as usize;
        let (times, servers) = (list("mean_service_times"), list("servers"));
        let z = table.number(row, "Z_mean_travel_total");
        let mut job =
            travel(loading(job(LOADS, loaders), times[0], exponential()), z, Distribution::Constant(1.0));
        job.stockpiles[0].face = servers[0] as u32;
        // The second station is the dump: so many at once, each for as long as dumping takes.
        if let (Some(time), Some(at_once)) = (times.get(1), servers.get(1)) {
            job.loaders.iter_mut().for_each(|l| l.dump_s = time * UNIT_S);
            job.chance.loads.dump = exponential();
            job.zones[0].room = Some(*at_once as u32);
        }
        let study = study(&job, RUNS);
        let mut compare = |figure: &str, of: &dyn Fn(&Outcome) -> f64, truth: f64| {
            let (got, error) = mean_of(&study, of);
            comparison.compare(
                format!("{case}, {loaders} loaders: {figure}"),
                got,
                error,
                truth,
                WAY_IN * truth,
            );
        };
        compare("throughput", &throughput, table.number(row, "throughput_X"));
        let stations = [
            ("face", [LoaderActivity::WaitingForFace, LoaderActivity::Loading]),
            ("dump", [LoaderActivity::WaitingForRoom, LoaderActivity::Dumping]),
        ];
        let (there, busy) = (list("mean_number_at_each_station"), list("utilisation_each"));
        for (i, (station, both)) in stations.iter().enumerate().take(times.len()) {
            compare(&format!("loaders at the {station}"), &|o| at_a_time(o, both), there[i]);
            compare(&format!("{station} in use"), &|o| at_a_time(o, &both[1..]) / servers[i], busy[i]);
        }
    }
    comparison
}

#[test]
fn loaders_at_one_face_move_what_the_finite_source_queue_says() {
    one_face().judge(336);
}

#[test]
fn loaders_wait_at_the_face_as_much_as_the_printed_table_says() {
    printed_table().judge(38 + 32);
}

#[test]
fn loaders_that_queue_twice_move_what_mean_value_analysis_says() {
    closed_network().judge(78);
}
