//! One thing changed and the same random numbers: what the paired differences must be, to the last digit of theory.
//!
//! Source: the difference of two jobs is a sum of the parts that differ, since all other draws are the same (common random
//! numbers); its percentiles are those of the Erlang law (`erlang_job_percentiles.csv`), status computed.

use super::*;

const LOADS: u32 = 10;

/// One loader that loads for one unit and drives for two, and nobody to rake.
fn driven_only() -> Job {
    travel(loading(job(LOADS, 1), 1.0, exponential()), 2.0, exponential())
}

/// Heaps all dumped at once, then raked.
fn raked_only() -> Job {
    raking(job(LOADS, 1), 1, 1.0)
}

fn differences(before: &Job, after: &Job) -> Paired {
    let (before, after) = (study(before, RUNS), study(after, RUNS));
    paired(&before.outcomes, &after.outcomes, completion)
}

/// The comparison of paired differences.
pub(crate) fn same_random_numbers() -> Comparison {
    let mut comparison = Comparison::new(
        "Between two plans only what differs between them differs: the rest of every run's streams is the same",
        "sum of the parts changed: Erlang's law and arithmetic (erlang_job_percentiles.csv)",
        Status::Computed,
        MOST,
    );
    let table = Table::read("erlang_job_percentiles.csv");
    let row = table.rows.iter().find(|row| table.number(row, "N_cycles_mean_1") == f64::from(LOADS)).unwrap();
    // So many times the sum of ten exponential loads; each step is rounded to whole microseconds.
    let mut scaled = |what: &str, times: f64, difference: &Paired| {
        let truth = |heading: &str| match heading {
            "mean" => f64::from(LOADS) * times,
            _ => table.number(row, heading) * times,
        };
        percentiles(&mut comparison, what, &difference.saved, truth, ROUNDING);
    };
    let faster = Improvement::FasterRaking.of(&raked_only(), 0.0).unwrap();
    scaled("raking a tenth faster", 1.0 - 1.0 / 1.1, &differences(&raked_only(), &faster));
    let shorter = Improvement::ShorterWays.of(&driven_only(), 0.0).unwrap();
    scaled("ways a tenth shorter", 0.2, &differences(&driven_only(), &shorter));
    // A loading time without chance disturbs no other draw: what is left is the ten loading times and their mean.
    let mut steady = driven_only();
    steady.chance.loads.loading = Distribution::Constant(1.0);
    let difference = differences(&driven_only(), &steady);
    let longer = Sorted::new(difference.saved.values().iter().map(|saved| saved + f64::from(LOADS)));
    scaled("loading without chance", 1.0, &Paired { saved: longer, ..difference });

    let mut later = driven_only();
    later.shift.set_up_s = Distribution::Constant(0.7 * UNIT_S);
    let saved = differences(&driven_only(), &later).saved;
    comparison.exact("set-up of 0.7: least difference", -saved.percentile(0.0).value, 0.7, ROUNDING);
    comparison.exact("set-up of 0.7: greatest difference", -saved.percentile(1.0).value, 0.7, ROUNDING);
    comparison
}

#[test]
fn between_two_plans_only_what_differs_between_them_differs() {
    same_random_numbers().judge(23);
}
