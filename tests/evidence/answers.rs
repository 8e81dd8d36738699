//! Textbook answers on machines that queue for repair, or users for a computer: loaders that queue for the face.
//!
//! Sources: `worked_examples.csv`, rows Q1 to Q5 SEEN, Q7 from memory. Q6 (three stations and a think time, from memory) does
//! not apply: the legs of our cycle share one draw, so a third station could not have times of its own.

use super::comparison::{Comparison, Status};
use super::theory::*;
use super::watched::*;
use sim::{Distribution, LoaderActivity, Outcome};

/// Loaders that are away for an exponential time of mean 1 / `rate`, and come back to load for one of mean 1.
struct Repair {
    loaders: usize,
    at_once: u32,
    /// Mean service time over mean time away.
    factor: f64,
}

impl Repair {
    /// Share of time with 0, 1, 2 .. loaders at the face in each of 400 runs, of 2,500 loads, of which the middle seven tenths count.
    fn states(&self) -> Vec<Vec<f64>> {
        let away = 1.0 / self.factor;
        let mut job = travel(loading(job(2_500, self.loaders), 1.0, exponential()), away, exponential());
        job.stockpiles[0].face = self.at_once;
        let runs = replays(&job, 400).map(|run| {
            let end = run.log.last().unwrap().at;
            // The last loads find the others gone home: look at the middle of the run only.
            let shares = shares_of_time(&run.log, end / 5, end / 10 * 9, loaders_at_the_face(self.loaders));
            (0..=self.loaders).map(|n| shares.get(n).copied().unwrap_or(0.0)).collect()
        });
        runs.collect()
    }
}

fn compare(
    comparison: &mut Comparison,
    states: &[Vec<f64>],
    what: &str,
    of: impl Fn(&[f64]) -> f64,
    truth: f64,
    r: f64,
) {
    let of_runs: Vec<f64> = states.iter().map(|shares| of(shares)).collect();
    let (got, error) = mean_and_error(&of_runs);
    comparison.compare(what, got, error, truth, r);
}

pub(super) fn machines_in_repair() -> Comparison {
    let mut comparison = Comparison::new(
        "So many loaders are at the face for so much of the time as textbook answers on machine repair say",
        "Tompkins et al., Facilities Planning, answers 10.120b, 10.124 and 10.127; an exercise in Ross's manner \
         (worked_examples.csv, Q1, Q2, Q5); 400 runs of 2,500 loads, their middle seven tenths",
        Status::Seen,
        4.5,
    );
    let six = Repair { loaders: 6, at_once: 1, factor: 0.2 }.states();
    let printed = [0.19184726, 0.23021671, 0.23021671, 0.18417337, 0.11050402, 0.04420161, 0.00884032];
    for (n, share) in printed.iter().enumerate() {
        compare(&mut comparison, &six, &format!("6 loaders: {n} at the face"), |s| s[n], *share, 5e-9);
    }
    let queue = |s: &[f64]| (1..s.len()).map(|n| (n - 1) as f64 * s[n]).sum();
    compare(&mut comparison, &six, "6 loaders: mean number waiting", queue, 1.15108355, 5e-9);
    let three = Repair { loaders: 3, at_once: 1, factor: 1.3333 / 12.0 }.states();
    compare(&mut comparison, &three, "3 loaders: none at the face", |s| s[0], 0.7063953, 5e-8);
    compare(&mut comparison, &three, "3 loaders: 1 at the face", |s| s[1], 0.2354651, 5e-8);
    let two_at_once = Repair { loaders: 3, at_once: 2, factor: 0.8 }.states();
    let both = |s: &[f64]| s[2] + s[3];
    compare(
        &mut comparison,
        &two_at_once,
        "3 loaders, 2 at once: both places taken",
        both,
        336.0 / 761.0,
        0.0,
    );
    compare(
        &mut comparison,
        &two_at_once,
        "3 loaders, 2 at once: mean number there",
        mean_count,
        1068.0 / 761.0,
        0.0,
    );
    comparison
}

pub(super) fn cars_in_repair() -> Comparison {
    let mut comparison = Comparison::new(
        "The same for five cars and two repairers",
        "Winston, Operations Research, machine repair example (worked_examples.csv, Q7); 400 runs of 2,500 loads",
        Status::Memory,
        4.5,
    );
    let five = Repair { loaders: 5, at_once: 2, factor: 0.1 }.states();
    for (n, share) in [0.619, 0.310, 0.062, 0.009].into_iter().enumerate() {
        compare(
            &mut comparison,
            &five,
            &format!("5 loaders, 2 at once: {n} at the face"),
            |s| s[n],
            share,
            0.0005,
        );
    }
    compare(
        &mut comparison,
        &five,
        "5 loaders, 2 at once: mean number away",
        |s| 5.0 - mean_count(s),
        4.535,
        0.0005,
    );
    comparison
}

/// Time at the stations for each load: waiting and being served.
fn at_stations(o: &Outcome) -> f64 {
    use LoaderActivity::*;
    let spent: sim::Duration =
        [WaitingForFace, Loading, WaitingForRoom, Dumping].iter().map(|a| o.loaders.time(*a)).sum();
    spent.as_secs_f64() / UNIT_S / f64::from(o.loads)
}

pub(super) fn interactive_networks() -> Comparison {
    let mut comparison = Comparison::new(
        "Throughput and time at the stations are those of two worked interactive networks",
        "solutions on a study site and in course notes (worked_examples.csv, Q3: think 1, service 0.5; Q4: think 1, \
         services 0.5 and 1); 16 runs of 8,000 loads",
        Status::Seen,
        5.5,
    );
    let network = |loaders, dump: f64| {
        let mut job =
            travel(loading(job(8_000, loaders), 0.5, exponential()), 1.0, Distribution::Constant(1.0));
        job.loaders.iter_mut().for_each(|l| l.dump_s = dump * UNIT_S);
        job.chance.loads.dump = exponential();
        job.zones[0].room = (dump > 0.0).then_some(1);
        study(&job, 16)
    };
    let way_in = |truth: f64| 1e-3 * truth;
    for (loaders, x, r) in [(1, 0.666_667, 0.5), (2, 1.2, 0.666_667), (3, 1.578_947, 0.9)] {
        let study = network(loaders, 0.0);
        let (got, error) = mean_of(&study, throughput);
        comparison.compare(format!("one station, {loaders} loaders: throughput"), got, error, x, way_in(x));
        let (got, error) = mean_of(&study, at_stations);
        comparison.compare(format!("one station, {loaders} loaders: time there"), got, error, r, way_in(r));
    }
    let (got, error) = mean_of(&network(1, 1.0), throughput);
    comparison.compare("two stations, 1 loader: throughput", got, error, 0.4, way_in(0.4));
    let study = network(2, 1.0);
    let (got, error) = mean_of(&study, throughput);
    comparison.compare("two stations, 2 loaders: throughput", got, error, 2.0 / 3.0, way_in(2.0 / 3.0));
    let (got, error) = mean_of(&study, at_stations);
    comparison.compare("two stations, 2 loaders: time there", got, error, 2.0, way_in(2.0));
    comparison
}

#[test]
fn loaders_are_at_the_face_as_often_as_textbook_answers_on_machine_repair_say() {
    machines_in_repair().judge(12);
    cars_in_repair().judge(5);
}

#[test]
fn worked_interactive_networks_come_out() {
    interactive_networks().judge(9);
}
