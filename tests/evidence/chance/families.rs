//! Every family of law, from seed to completion: Kolmogorov-Smirnov, moments, extremes, outermost percentiles.

use super::super::comparison::{Comparison, Status};
use super::laws::{Law, cut_normal_mean, laws};
use super::*;

/// A million draws of each family: four seeds with as many runs each.
const SEEDS: [u64; 4] = [1, 2, 3, 4];
const RUNS: u32 = 250_000;

/// A family and its million draws, in rising order.
fn million(law: &Law) -> Vec<f64> {
    let job = one_draw(law.place, &law.law);
    let mut all: Vec<f64> = SEEDS.iter().flat_map(|seed| draws(&job, *seed, RUNS)).collect();
    all.sort_unstable_by(f64::total_cmp);
    all
}

/// Shape, moments and ends of every family.
pub(crate) fn families() -> Vec<Comparison> {
    let (mut shape, mut moments, mut outermost) =
        (shape_comparison(), moments_comparison(), outermost_comparison());
    for law in laws() {
        let sample = million(&law);
        shape.compare(law.name, kolmogorov(&sample, law.up_to), KOLMOGOROV_SD, KOLMOGOROV_MEAN, 0.0);
        add_moments(&mut moments, &law, &sample);
        add_outermost(&mut outermost, &law, &sample);
    }
    vec![shape, moments, outermost]
}

/// Mean and standard deviation of Kolmogorov's law: `sqrt(pi / 2) ln 2` and the root of `pi2 / 12` less its square.
const KOLMOGOROV_MEAN: f64 = 0.868_731_161;
const KOLMOGOROV_SD: f64 = 0.260_332_887;

/// The greatest distance between the sample's steps and the law, times the root of its size.
pub(super) fn kolmogorov(sorted: &[f64], up_to: impl Fn(f64) -> f64) -> f64 {
    let n = sorted.len() as f64;
    let off = sorted.iter().enumerate().map(|(i, x)| {
        let f = up_to(*x);
        (f - i as f64 / n).max((i + 1) as f64 / n - f)
    });
    off.fold(0.0, f64::max) * n.sqrt()
}

fn shape_comparison() -> Comparison {
    // Thirteen laws at 0.001 for all together: sqrt(-ln(0.001 / 13 / 2) / 2) = 2.254, which is 5.32 sds above the mean.
    Comparison::new(
        "Completions of a job of one uncertain step follow the law of that step (Kolmogorov-Smirnov, D root n)",
        "one-sample Kolmogorov-Smirnov test, asymptotic limit; at a million draws it differs from the exact one by less than \
         0.001 (ks_critical.csv). Thirteen laws in closed form, level 0.001 for all together: limit 2.254",
        Status::Computed,
        (2.254 - KOLMOGOROV_MEAN) / KOLMOGOROV_SD,
    )
}

fn moments_comparison() -> Comparison {
    // 39 figures: 4.5 standard errors are 0.0003 for all together.
    Comparison::new(
        "Their mean, standard deviation and skewness are those of the law",
        "closed forms (Johnson, Kotz & Balakrishnan, from memory); a million draws of each law; standard errors from the \
         sample's higher moments",
        Status::Computed,
        4.5,
    )
}

fn outermost_comparison() -> Comparison {
    // 52 figures: 4.5 standard errors are 0.0004 for all together.
    Comparison::new(
        "The smallest and the largest of a million, and the share beyond P0.01 and P99.99, are as the law has them",
        "exact law of the extreme, F(x) to the power of a million, as a standard normal score; binomial counts beyond the exact \
         percentile",
        Status::Computed,
        4.5,
    )
}

fn add_moments(comparison: &mut Comparison, law: &Law, sample: &[f64]) {
    let n = sample.len() as f64;
    let mean = sample.iter().sum::<f64>() / n;
    let power = |k: i32| sample.iter().map(|x| (x - mean).powi(k)).sum::<f64>() / n;
    let [second, third, fourth] = [2, 3, 4].map(power);
    let sd = second.sqrt();
    let true_mean = if matches!(law.law, Distribution::Normal { .. }) { cut_normal_mean() } else { 1.0 };
    comparison.compare(format!("{}: mean", law.name), mean, sd / n.sqrt(), true_mean, 0.0);
    let error = ((fourth - second * second) / (4.0 * second * n)).sqrt();
    comparison.compare(format!("{}: sd", law.name), sd, error, law.sd, 0.0);
    // The variance of the third central moment, and of its share in the skewness (Kendall & Stuart 10.9, from memory), by
    // the influence of one value: z3 - 3 z - 1.5 s (z2 - 1) - s.
    let skewness = third / sd.powi(3);
    let influence = |x: &f64| {
        let z = (x - mean) / sd;
        (z * z * z - 3.0 * z - 1.5 * skewness * (z * z - 1.0) - skewness).powi(2)
    };
    let error = (sample.iter().map(influence).sum::<f64>() / n / n).sqrt();
    comparison.compare(format!("{}: skewness", law.name), skewness, error, law.skewness, 0.0);
}

/// Where a gamma law has most of its weight near zero, its quantile function stops at a billionth of the mean (a microsecond
/// in a quarter of an hour): the smallest of a million is only as small as that.
const STOPS_SHORT: &str = "gamma, cv root 2";

fn add_outermost(comparison: &mut Comparison, law: &Law, sample: &[f64]) {
    let n = sample.len() as f64;
    let (least, greatest) = (sample[0], sample[sample.len() - 1]);
    // The chance that the smallest of n is above x, and that the largest is below.
    let none_below = (n * libm::log1p(-(law.up_to)(least))).exp();
    let none_above = (n * (law.up_to)(greatest).ln()).exp();
    if law.name == STOPS_SHORT {
        comparison.exact(format!("{}: smallest, against the mean", law.name), least, 0.0, 2e-9);
    } else {
        comparison.compare(format!("{}: smallest, as a score", law.name), -score(none_below), 1.0, 0.0, 0.0);
    }
    comparison.compare(format!("{}: largest, as a score", law.name), score(none_above), 1.0, 0.0, 0.0);
    for (name, share) in [("below P0.01", 1e-4), ("above P99.99", 1.0 - 1e-4)] {
        let limit = percentile(law, share);
        let below = sample.partition_point(|x| *x <= limit) as f64;
        let beyond = if share < 0.5 { below } else { n - below };
        let expected = n * share.min(1.0 - share);
        comparison.compare(
            format!("{}: of a million, {name}", law.name),
            beyond,
            expected.sqrt(),
            expected,
            0.0,
        );
    }
}

/// Where the law reaches a chance, by halving its range.
fn percentile(law: &Law, share: f64) -> f64 {
    use Distribution as D;
    let (mut low, mut high) = match law.law {
        D::Uniform { least, greatest }
        | D::Triangular { least, greatest, .. }
        | D::Pert { least, greatest, .. } => (least, greatest),
        _ => (0.0, 1e3),
    };
    for _ in 0..100 {
        let middle = f64::midpoint(low, high);
        if (law.up_to)(middle) < share { low = middle } else { high = middle }
    }
    high
}

/// Observed values: each as likely as the others.
pub(crate) fn observed() -> Comparison {
    let mut comparison = Comparison::new(
        "Each observed value is drawn as often as the others",
        "chi-square on equally likely values: mean k - 1, sd root of 2 (k - 1); 250,000 draws each",
        Status::Computed,
        4.5,
    );
    for (place, values) in
        [(Place::Loading, 3_u32), (Place::RakerPace, 7), (Place::Haul, 50), (Place::SetUp, 1_000)]
    {
        let value = |i: u32| f64::from(2 * i) / f64::from(values - 1);
        let law = Distribution::Observed((0..values).rev().map(value).collect());
        let mut counts = vec![0.0; values as usize];
        for x in draws(&one_draw(place, &law), 5, RUNS) {
            let i = x * f64::from(values - 1) / 2.0;
            assert!((i - i.round()).abs() < 1e-6, "{x} was not observed");
            counts[i.round() as usize] += 1.0;
        }
        let (square, free) = (chi_square(&counts), f64::from(values - 1));
        comparison.compare(format!("{values} values"), square, (2.0 * free).sqrt(), free, 0.0);
    }
    comparison
}

/// Pearson's statistic of counts that should all be the same.
pub(super) fn chi_square(counts: &[f64]) -> f64 {
    let expected = counts.iter().sum::<f64>() / counts.len() as f64;
    counts.iter().map(|count| (count - expected) * (count - expected) / expected).sum()
}

#[test]
fn a_million_completions_of_every_family_follow_the_exact_law_from_its_middle_to_its_ends() {
    for (comparison, figures) in families().iter().zip([13, 39, 52]) {
        comparison.judge(figures);
    }
}

/// Small studies by the table of exact limits.
pub(crate) fn small_studies() -> Comparison {
    let mut comparison = Comparison::new(
        "Of small studies as many lie farther from the law than the tabled limits as their level says",
        "exact limits of the one-sample Kolmogorov-Smirnov distance (ks_critical.csv); 5,000 studies of each size, each under a \
         seed of its own; standard errors binomial",
        Status::Computed,
        4.0,
    );
    let table = Table::read("ks_critical.csv");
    let law = laws().into_iter().find(|law| law.name == "lognormal, cv 1").unwrap();
    let (plan, studies) = (Plan::new(&one_draw(law.place, &law.law)).unwrap(), 5_000_u32);
    for row in &table.rows {
        let size = table.number(row, "n");
        if ![5.0, 10.0, 20.0, 50.0, 100.0].contains(&size) {
            continue;
        }
        let distance = |seed: u32| {
            let runs = Runs::Exactly(size as u32);
            let study = Study::new(&plan, u64::from(seed), runs, |_| {}).unwrap();
            let sample = study.sorted(|o| o.completion.working.as_micros() as f64 / MEAN_US);
            kolmogorov(sample.values(), law.up_to) / size.sqrt()
        };
        let distances: Vec<f64> = (0..studies).map(distance).collect();
        for level in [0.2, 0.15, 0.1, 0.05, 0.01] {
            let limit = table.number(row, &format!("a={level:.2}"));
            let beyond = distances.iter().filter(|d| **d > limit).count() as f64 / f64::from(studies);
            let error = (level * (1.0 - level) / f64::from(studies)).sqrt();
            comparison.compare(format!("{size} runs, level {level}"), beyond, error, level, 0.0);
        }
    }
    comparison
}

#[test]
fn small_studies_lie_as_far_from_the_law_as_exact_limits_say() {
    small_studies().judge(25);
}

#[test]
fn each_observed_value_is_drawn_as_often_as_the_others() {
    observed().judge(4);
}

#[test]
fn a_constant_is_drawn_to_the_microsecond() {
    for place in [Place::Loading, Place::Haul, Place::Dump, Place::Raking, Place::SetUp] {
        let all = draws(&one_draw(place, &Distribution::Constant(1.0)), 6, 1_000);
        assert!(all.iter().all(|x| *x == 1.0), "{place:?}");
    }
}
