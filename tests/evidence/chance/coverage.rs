//! Intervals hold the truth as often as they say: studies of jobs whose exact percentiles, means, chances and savings are
//! known, made again and again under other seeds.

use super::super::comparison::{Comparison, Status};
use super::*;
use statrs::distribution::{ContinuousCDF, Discrete, DiscreteCDF};

/// Studies of each job and size.
pub(crate) const STUDIES: u64 = 1_000;

/// Studies of a job under as many seeds, each with its sample of completions. Seeds of different jobs may be the same: their
/// figures are judged one by one.
fn make(studies: u64, job: &Job, runs: Runs, mut each: impl FnMut(&Sorted)) {
    let plan = Plan::new(job).unwrap();
    for seed in 10_000..10_000 + studies {
        each(&Study::new(&plan, seed, runs, |_| {}).unwrap().sorted(completion));
    }
}

/// Adds the share of studies that held the truth beside the share that should.
fn add(comparison: &mut Comparison, what: String, held: u32, studies: u64, coverage: f64) {
    let n = studies as f64;
    let error = (coverage * (1.0 - coverage) / n).sqrt();
    comparison.compare(what, f64::from(held) / n, error, coverage, 0.0);
}

fn holds(p: &Percentile, truth: f64) -> bool {
    p.low.is_none_or(|low| low <= truth) && p.high.is_none_or(|high| truth <= high)
}

/// Exactly how often an interval between two order statistics holds the percentile: the sum of binomial chances that at least
/// `low` and fewer than `high` of `n` lie below it, ranks taken from the definition (each tail at most a fortieth).
fn coverage_of_ranks(n: u64, share: f64) -> f64 {
    let below = statrs::distribution::Binomial::new(share, n).unwrap();
    let (mut first, mut sum) = (None, 0.0);
    let mut covered = 0.0;
    for k in 0..=n {
        let before = sum;
        sum += below.pmf(k);
        // Fewer than k below: one tail. More than k below: the other.
        if sum > 0.025 && first.is_none() {
            first = Some(k);
        }
        if first.is_some() && before < 0.975 {
            covered += below.pmf(k);
        }
    }
    covered
}

/// How often Clopper & Pearson's interval holds a chance: the chance of all counts that neither tail test of it refuses.
fn coverage_of_chance(n: u64, chance: f64) -> f64 {
    let hits = statrs::distribution::Binomial::new(chance, n).unwrap();
    let not_refused = |k: &u64| {
        let at_least = if *k == 0 { 1.0 } else { 1.0 - hits.cdf(k - 1) };
        at_least > 0.025 && hits.cdf(*k) > 0.025
    };
    (0..=n).filter(not_refused).map(|k| hits.pmf(k)).sum()
}

/// One loader going round so often, every round exponential with mean 1.
fn rounds(loads: u32) -> Job {
    loading(job(loads, 1), 1.0, exponential())
}

fn erlang(loads: u32) -> statrs::distribution::Gamma {
    statrs::distribution::Gamma::new(f64::from(loads), 1.0).unwrap()
}

/// Percentiles, means and chances of jobs of a fixed number of runs.
pub(crate) fn fixed_runs(studies: u64) -> Comparison {
    let mut comparison = Comparison::new(
        "Over many studies the 95 % intervals hold the exact value as often as they should",
        "order statistics: exact binomial coverage (David & Nagaraja, 7.1; the same as in quantile_ci_ranks.csv); Clopper & \
         Pearson: exact coverage by the tail tests; Student's t: 95 %. Jobs of 1 and 5 exponential rounds (Erlang laws)",
        Status::Computed,
        4.0,
    );
    for (loads, runs) in [(1, 500_u32), (5, 500), (1, 2_000)] {
        let law = erlang(loads);
        let shares = [0.1, 0.5, 0.8, 0.9, 0.95];
        let truths = shares.map(|share| law.inverse_cdf(share));
        let (limit, mut held) = (truths[2], [0; 5]);
        let (mut mean_held, mut chance_held) = (0, 0);
        make(studies, &rounds(loads), Runs::Exactly(runs), |sample| {
            for ((held, share), truth) in held.iter_mut().zip(shares).zip(truths) {
                *held += u32::from(holds(&sample.percentile(share), truth));
            }
            let (mean, chance) = (sample.mean(), sample.share_up_to(limit));
            mean_held += u32::from(mean.low <= f64::from(loads) && f64::from(loads) <= mean.high);
            chance_held += u32::from(chance.low <= 0.8 && 0.8 <= chance.high);
        });
        let what = |figure: String| format!("{loads} rounds, {runs} runs: {figure}");
        for (held, share) in held.into_iter().zip(shares) {
            let coverage = coverage_of_ranks(u64::from(runs), share);
            add(&mut comparison, what(format!("P{:.0}", 100.0 * share)), held, studies, coverage);
        }
        add(&mut comparison, what("mean".into()), mean_held, studies, 0.95);
        let coverage = coverage_of_chance(u64::from(runs), 0.8);
        add(&mut comparison, what("chance of being done by the P80".into()), chance_held, studies, coverage);
    }
    comparison
}

/// The P80 of a job with a raker, whose exact percentiles are those of a Markov chain.
pub(crate) fn loader_and_raker(studies: u64) -> Comparison {
    let mut comparison = Comparison::new(
        "The same for the P80 of a loader and its raker with little room",
        "tandem_makespan.csv (Markov chain, transient solution); exact binomial coverage; 500 runs a study",
        Status::Computed,
        4.0,
    );
    let table = Table::read("tandem_makespan.csv");
    for (loads, b) in [("2", "0"), ("10", "1")] {
        let text = |row, heading| table.text(row, heading);
        let row = (table.rows.iter())
            .find(|row| {
                (text(row, "N_loads"), text(row, "b_room")) == (loads, b)
                    && (text(row, "mu1"), text(row, "mu2_each"), text(row, "c_rakers")) == ("1", "1", "1")
            })
            .unwrap();
        let mut job = raking(rounds(loads.parse().unwrap()), 1, 1.0);
        job.zones[0].room = Some(b.parse::<u32>().unwrap() + 1);
        let (truth, mut held) = (table.number(row, "P80"), 0);
        make(studies, &job, Runs::Exactly(500), |sample| {
            held += u32::from(holds(&sample.percentile(0.8), truth))
        });
        add(
            &mut comparison,
            format!("{loads} loads, room {b} besides: P80"),
            held,
            studies,
            coverage_of_ranks(500, 0.8),
        );
    }
    comparison
}

/// Runs until the P80 is within a half-width.
pub(crate) fn until_precise(studies: u64) -> Comparison {
    let mut comparison = Comparison::new(
        "Runs until the P80 is precise enough: its interval then holds the exact value nearly as often, half a per cent less",
        "the same stopping rule on exponential numbers in a program of its own (NumPy, 40,000 repetitions, standard error \
         0.0011); a rule that looks at its own precision costs a little coverage, less the narrower it asks (Chow & Robbins, \
         Annals of Mathematical Statistics 36, 1965, from memory)",
        Status::Computed,
        4.0,
    );
    for (half_width, coverage) in [(0.1, COVERAGE_WITHIN_0_1), (0.07, COVERAGE_WITHIN_0_07)] {
        let runs = Runs::UntilP80Within { half_width_s: half_width * UNIT_S, most: 20_000 };
        let (truth, mut held, mut wide) = (erlang(1).inverse_cdf(0.8), 0, 0);
        make(studies, &rounds(1), runs, |sample| {
            let p80 = sample.percentile(0.8);
            held += u32::from(holds(&p80, truth));
            let farther = (p80.high.unwrap() - p80.value).max(p80.value - p80.low.unwrap());
            wide += u32::from(farther > half_width);
        });
        let share = f64::from(held) / studies as f64;
        let error = (coverage * (1.0 - coverage) / studies as f64 + ERROR_OF_THE_PROGRAM.powi(2)).sqrt();
        comparison.compare(format!("within {half_width} of a mean round: P80"), share, error, coverage, 0.0);
        comparison.exact(format!("studies left wider than {half_width}"), f64::from(wide), 0.0, 0.0);
    }
    comparison
}

/// How often the interval holds the P80 when runs stop once it is within these of it, by the program of its own.
const COVERAGE_WITHIN_0_1: f64 = 0.9459;
const COVERAGE_WITHIN_0_07: f64 = 0.9478;
const ERROR_OF_THE_PROGRAM: f64 = 0.0011;

/// What an improvement of two exponential loads saves, exactly.
pub(crate) fn relief_of_a_loader(studies: u64) -> Comparison {
    let mut comparison = Comparison::new(
        "Over many studies the 95 % interval of what an improvement saves holds the exact saving",
        "one loader, two loads, loading and both legs exponential with mean 1: sums of exponential times, and the mean of the \
         lesser of two; Student's t: 95 %, 200 runs a study",
        Status::Computed,
        4.0,
    );
    // The second load is a tenth of a bucket: a larger bucket needs one load, and saves a return, a loading and a haul. Ways a
    // tenth shorter save a tenth of three legs. Another loader is loaded second and has its load there at L1 + L2 + H2 while
    // the first is there at L1 + H1: it saves R1 + min(H1, L2 + H2), on average 1 + 1/2 + 1/4.
    let expected = [
        (Improvement::LargerBucket, "a larger bucket", 3.0),
        (Improvement::ShorterWays, "shorter ways", 0.3),
        (Improvement::AnotherLoader, "another loader", 1.75),
    ];
    let mut job = travel(loading(job(1, 1), 1.0, exponential()), 1.0, exponential());
    (job.zones[0].need_m3, job.loaders[0].empty_m_per_s) = (1.1, 1.0);
    job.chance.loads.return_leg = exponential();
    let plan = Plan::new(&job).unwrap();
    let (mut held, mut sums) = ([0; 3], [0.0; 3]);
    for seed in 10_000..10_000 + studies {
        let study = Study::new(&plan, seed, Runs::Exactly(200), |_| {}).unwrap();
        for relief in relief(&job, &plan, &study, 0.0, Tries::exactly(200), |_| {}).unwrap() {
            let Some(i) = expected.iter().position(|(improvement, ..)| *improvement == relief.improvement)
            else {
                continue;
            };
            let (saved, truth) = (relief.saved_s, expected[i].2 * UNIT_S);
            held[i] += u32::from(saved.low <= truth && truth <= saved.high);
            sums[i] += saved.value / UNIT_S;
        }
    }
    let sds = [3.0_f64.sqrt(), 0.03_f64.sqrt(), (1.0 + SPREAD_OF_THE_LESSER).sqrt()];
    for (i, (_, what, truth)) in expected.into_iter().enumerate() {
        let n = studies as f64;
        comparison.compare(format!("{what}: saved"), sums[i] / n, sds[i] / (200.0 * n).sqrt(), truth, 0.0);
        add(&mut comparison, format!("{what}: studies that hold it"), held[i], studies, 0.95);
    }
    comparison
}

/// Variance of the lesser of an exponential time and the sum of two: 2 (1/4 + 1/4) less the square of 3/4.
const SPREAD_OF_THE_LESSER: f64 = 1.0 - 0.5625;

#[test]
fn intervals_of_percentiles_means_and_chances_hold_the_truth_as_often_as_they_say() {
    fixed_runs(STUDIES).judge(21);
}

#[test]
fn the_interval_of_the_p80_of_a_loader_and_its_raker_holds_the_truth_as_often_as_it_says() {
    loader_and_raker(STUDIES).judge(2);
}

#[test]
fn stopping_once_the_p80_is_precise_costs_little_of_its_certainty() {
    until_precise(STUDIES).judge(4);
}

#[test]
fn the_interval_of_what_an_improvement_saves_holds_the_exact_saving() {
    relief_of_a_loader(STUDIES).judge(6);
}

#[test]
#[ignore = "heavy: a minute"]
fn twenty_thousand_studies_say_the_same_four_times_as_sharply() {
    for comparison in
        [fixed_runs, loader_and_raker, until_precise, relief_of_a_loader].map(|comparison| comparison(20_000))
    {
        comparison.judge(2);
    }
}

#[test]
fn the_coverage_expected_is_that_of_the_table() {
    let table = Table::read("quantile_ci_ranks.csv");
    let two_sided = table
        .rows
        .iter()
        .filter(|row| table.text(row, "lower_rank_l") != "none" && table.text(row, "upper_rank_u") != "none");
    let mut compared = 0;
    for row in two_sided {
        let coverage = coverage_of_ranks(table.number(row, "n") as u64, table.number(row, "p"));
        assert!((coverage - table.number(row, "coverage_two_sided")).abs() < 1e-8, "{row:?}");
        compared += 1;
    }
    assert!(compared > 30, "{compared} rows");
}
