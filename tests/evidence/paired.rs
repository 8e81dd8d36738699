//! Paired differences: what one job saves against another is known exactly, and the intervals hold it as often as they say.
//!
//! Sources: means of exponential loads by arithmetic; `tandem_makespan.csv` and `erlang_job_percentiles.csv`, status computed.

use super::comparison::{Comparison, Status};
use super::theory::*;
use sim::{Distribution, Job, Outcome, Paired, Plan, Runs, Study, paired};

fn finish(o: &Outcome) -> f64 {
    o.finish.working.as_secs_f64() / UNIT_S
}

fn compared(before: &Plan, after: &Plan, seed: u64, runs: u32) -> Paired {
    let study = |plan| Study::new(plan, seed, Runs::Exactly(runs), |_| {}).unwrap();
    paired(&study(before).outcomes, &study(after).outcomes, finish)
}

/// Two jobs, what the second saves on average, and the chance that it is the smaller where that is known.
struct Pair {
    what: &'static str,
    before: Job,
    after: Job,
    saves: f64,
    smaller: Option<f64>,
}

fn hauls(loads: u32, mean: f64) -> Job {
    travel(job(loads, 1), mean, exponential())
}

fn loads(loads: u32, mean: f64) -> Job {
    loading(job(loads, 1), mean, exponential())
}

/// A line of tandem_makespan.csv of ten loads with so much room besides, and its mean.
fn line(b: f64) -> (Job, f64) {
    let table = Table::read("tandem_makespan.csv");
    let is = |row: &&csv::StringRecord| {
        let f = |heading| table.number(row, heading);
        [f("N_loads"), f("c_rakers"), f("mu2_each"), f("b_room")] == [10.0, 1.0, 1.0, b]
    };
    let row = table.rows.iter().find(is).unwrap();
    let mut job = raking(loads(10, 1.0), 1, 1.0);
    job.zones[0].room = Some(b as u32 + 1);
    (job, table.number(row, "mean"))
}

fn pairs() -> Vec<Pair> {
    let (narrow, long) = line(0.0);
    let (wide, short) = line(10.0);
    let constant = loading(job(1, 1), 2.0, Distribution::Constant(1.0));
    vec![
        Pair {
            what: "ten hauls three tenths longer",
            before: hauls(10, 1.3),
            after: hauls(10, 1.0),
            saves: 3.0,
            smaller: Some(1.0),
        },
        Pair {
            what: "ten loads against ten hauls, nothing in common",
            before: loads(10, 1.0),
            after: hauls(10, 0.9),
            saves: 1.0,
            smaller: None,
        },
        Pair {
            what: "one load against one haul",
            before: loads(1, 1.0),
            after: hauls(1, 0.9),
            saves: 0.1,
            // Of two exponential times, the one with rate r is the smaller with chance r over the sum of the rates.
            smaller: Some(1.0 / 1.9),
        },
        Pair {
            what: "a constant load against an exponential one",
            before: constant,
            after: loads(1, 1.7),
            saves: 0.3,
            smaller: Some(1.0 - (-2.0_f64 / 1.7).exp()),
        },
        Pair {
            what: "ten loads, room for eleven heaps against one",
            before: narrow,
            after: wide,
            saves: long - short,
            smaller: None,
        },
    ]
}

/// Runs of each comparison.
const RUNS: u32 = 200;

/// How often the 95 % intervals hold what they are of.
pub(super) fn coverage(repeats: u32) -> Comparison {
    let mut comparison = Comparison::new(
        "The 95 % interval of the mean saved holds the exact saving 95 times in 100",
        format!(
            "exact means of exponential loads and of tandem_makespan.csv; {repeats} comparisons of {RUNS} runs each; the interval \
             of a chance (Clopper and Pearson) holds it at least as often"
        ),
        Status::Computed,
        4.0,
    );
    for pair in pairs() {
        let (before, after) = (Plan::new(&pair.before).unwrap(), Plan::new(&pair.after).unwrap());
        let (mut mean, mut chance) = (0, 0);
        for repeat in 0..repeats {
            let got = compared(&before, &after, 0xc0_0000 + u64::from(repeat), RUNS);
            mean += u32::from(got.mean.low <= pair.saves && pair.saves <= got.mean.high);
            chance += u32::from(pair.smaller.is_some_and(|p| got.smaller.low <= p && p <= got.smaller.high));
        }
        let share = |n: u32| f64::from(n) / f64::from(repeats);
        let error = (0.95 * 0.05 / f64::from(repeats)).sqrt();
        comparison.compare(format!("{}: mean saved", pair.what), share(mean), error, 0.95, 0.0);
        if pair.smaller.is_some() {
            comparison.within(format!("{}: chance of being faster", pair.what), share(chance), 0.95, 1.0);
        }
    }
    comparison
}

/// Percentiles of what shorter hauls save: the difference is the Erlang law of the hauls on a smaller scale.
pub(super) fn percentiles_saved() -> Comparison {
    let mut comparison = Comparison::new(
        "What shorter hauls save has the percentiles of the Erlang law",
        "erlang_job_percentiles.csv, scaled by the difference of the hauls; 100,000 runs with common random numbers",
        Status::Computed,
        4.0,
    );
    let table = Table::read("erlang_job_percentiles.csv");
    for row in &table.rows {
        let n = table.number(row, "N_cycles_mean_1");
        let plan = |mean| Plan::new(&hauls(n as u32, mean)).unwrap();
        let saved = compared(&plan(1.3), &plan(1.0), 20_260_418, 100_000).saved;
        for (heading, share) in [("P10", 0.1), ("P50", 0.5), ("P90", 0.9)] {
            let got = saved.percentile(share);
            let error = (got.high.unwrap() - got.low.unwrap()) / (2.0 * 1.96);
            let truth = 0.3 * table.number(row, heading);
            comparison.compare(
                format!("{n} hauls: {heading}"),
                got.value,
                error,
                truth,
                1e-6 * (1.0 + truth),
            );
        }
    }
    comparison
}

#[test]
fn intervals_of_what_is_saved_hold_the_exact_saving_as_often_as_they_say() {
    coverage(1_000).judge(8);
}

#[test]
fn what_shorter_hauls_save_has_the_percentiles_of_the_erlang_law() {
    percentiles_saved().judge(21);
}
