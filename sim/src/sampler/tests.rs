//! The tables held to the exact laws: cumulative distribution functions of statrs, samplers of rand_distr.

use super::*;
use crate::streams::{LoadDraw, Streams};
use rand::SeedableRng;
use rand_distr::Distribution as _;
use rand_xoshiro::Xoshiro256PlusPlus;
use statrs::distribution as exact;
use statrs::distribution::ContinuousCDF;

type Cdf = Box<dyn Fn(f64) -> f64>;

fn families() -> Vec<(&'static str, Distribution, Cdf)> {
    fn of<C: ContinuousCDF<f64, f64> + 'static>(law: C) -> Cdf {
        Box::new(move |x| law.cdf(x))
    }
    let sigma = |cv: f64| (1.0 + cv * cv).ln().sqrt();
    let lognormal = |mean: f64, cv: f64| {
        of(exact::LogNormal::new(mean.ln() - sigma(cv).powi(2) / 2.0, sigma(cv)).unwrap())
    };
    let (pert_beta, wide_beta) = (exact::Beta::new(2.0, 4.0).unwrap(), exact::Beta::new(1.0, 5.0).unwrap());
    let normal = exact::Normal::new(10.0, 3.0).unwrap();
    let cut = normal.cdf(0.0);
    let weibull_scale = 5.0 / libm::tgamma(1.0 + 1.0 / 1.8);
    vec![
        (
            "uniform",
            Distribution::Uniform { least: 2.0, greatest: 5.0 },
            of(exact::Uniform::new(2.0, 5.0).unwrap()),
        ),
        (
            "triangular",
            Distribution::Triangular { least: 1.0, mode: 2.0, greatest: 6.0 },
            of(exact::Triangular::new(1.0, 6.0, 2.0).unwrap()),
        ),
        (
            "pert",
            Distribution::Pert { least: 10.0, mode: 15.0, greatest: 30.0 },
            Box::new(move |x| pert_beta.cdf((x - 10.0) / 20.0)),
        ),
        (
            "pert with its mode at the least",
            Distribution::Pert { least: 3.0, mode: 3.0, greatest: 9.0 },
            Box::new(move |x| wide_beta.cdf((x - 3.0) / 6.0)),
        ),
        (
            "normal, cut at zero",
            Distribution::Normal { mean: 10.0, sd: 3.0 },
            Box::new(move |x| (normal.cdf(x) - cut) / (1.0 - cut)),
        ),
        ("lognormal, narrow", Distribution::Lognormal { mean: 20.0, cv: 0.15 }, lognormal(20.0, 0.15)),
        ("lognormal, wide", Distribution::Lognormal { mean: 1.0, cv: 1.0 }, lognormal(1.0, 1.0)),
        ("gamma", Distribution::Gamma { mean: 4.0, cv: 0.5 }, of(exact::Gamma::new(4.0, 1.0).unwrap())),
        (
            "weibull",
            Distribution::Weibull { mean: 5.0, shape: 1.8 },
            of(exact::Weibull::new(1.8, weibull_scale).unwrap()),
        ),
        ("exponential", Distribution::Exponential { mean: 3.0 }, of(exact::Exp::new(1.0 / 3.0).unwrap())),
    ]
}

fn draws(law: &Distribution, n: u32) -> Vec<f64> {
    let (table, streams) = (Sampler::new(law), Streams::new(20_260_418, 3));
    (0..n).map(|load| table.at(streams.load(load).bits(LoadDraw::Haul))).collect()
}

/// The Kolmogorov-Smirnov statistic of a sample against a law, times the root of its size.
fn kolmogorov(mut sample: Vec<f64>, cdf: impl Fn(f64) -> f64) -> f64 {
    sample.sort_unstable_by(f64::total_cmp);
    let n = sample.len() as f64;
    let off = sample.iter().enumerate().map(|(i, x)| {
        let f = cdf(*x);
        (f - i as f64 / n).max((i + 1) as f64 / n - f)
    });
    off.fold(0.0, f64::max) * n.sqrt()
}

#[test]
fn a_million_draws_of_every_family_follow_the_exact_law() {
    // Kolmogorov's limit at level 0.001 is 1.95 (asymptotic, from memory: sqrt(-ln(0.0005) / 2)); ten laws, one seed.
    for (name, law, cdf) in families() {
        let k = kolmogorov(draws(&law, 1_000_000), cdf);
        assert!(k < 1.95, "{name}: {k}");
    }
}

#[test]
fn draws_of_every_family_follow_the_exact_samplers() {
    // Two samples of 200,000 at level 0.001: D sqrt(n / 2) < 1.95.
    let n = 200_000;
    let mut stream = Xoshiro256PlusPlus::seed_from_u64(5);
    let mut sample = |law: &dyn Fn(&mut Xoshiro256PlusPlus) -> f64| -> Vec<f64> {
        let mut all: Vec<f64> = (0..n).map(|_| law(&mut stream)).collect();
        all.sort_unstable_by(f64::total_cmp);
        all
    };
    let lognormal = rand_distr::LogNormal::from_mean_cv(20.0, 0.3).unwrap();
    let pert = rand_distr::Pert::new(10.0, 30.0).with_mode(15.0).unwrap();
    let gamma = rand_distr::Gamma::new(4.0, 1.0).unwrap();
    let triangular = rand_distr::Triangular::new(1.0, 6.0, 2.0).unwrap();
    let cases = [
        (Distribution::Lognormal { mean: 20.0, cv: 0.3 }, sample(&|r| lognormal.sample(r))),
        (Distribution::Pert { least: 10.0, mode: 15.0, greatest: 30.0 }, sample(&|r| pert.sample(r))),
        (Distribution::Gamma { mean: 4.0, cv: 0.5 }, sample(&|r| gamma.sample(r))),
        (
            Distribution::Triangular { least: 1.0, mode: 2.0, greatest: 6.0 },
            sample(&|r| triangular.sample(r)),
        ),
    ];
    for (law, exact) in cases {
        let below = |x: f64| exact.partition_point(|v| *v <= x) as f64 / n as f64;
        let k = kolmogorov(draws(&law, n), below) / 2.0_f64.sqrt();
        assert!(k < 1.95, "{law:?}: {k}");
    }
}

#[test]
fn tables_keep_mean_and_spread_to_one_in_ten_thousand() {
    for (name, law, _) in families() {
        let table = Sampler::new(&law);
        // Every 2^-22 of chance once, and the outer 2^-14 at each end 2^12 times finer.
        let (mut sum, mut squares) = (0.0, 0.0);
        let mut add = |first: u64, step_bits: u32, n: u64| {
            for i in 0..n {
                let x = table.at(first + (i << step_bits) + (1 << (step_bits - 1)));
                let weight = libm::exp2(f64::from(step_bits) - 64.0);
                sum += weight * x;
                squares += weight * x * x;
            }
        };
        let (coarse, fine, outer) = (42, 30, 1_u64 << 8);
        add(0, fine, outer << 12);
        add(outer << coarse, coarse, (1 << 22) - 2 * outer);
        add((((1_u64 << 22) - outer) << (coarse - 1)) * 2, fine, outer << 12);
        let sd = (squares - sum * sum).sqrt();
        // The normal law's stated moments are those before the cut; the cut moves them by less than this.
        let slack = if matches!(law, Distribution::Normal { .. }) { 2e-3 } else { 1e-4 };
        assert!((sum / law.mean() - 1.0).abs() < slack, "{name}: mean {sum}");
        assert!(
            (sd / sum / (law.sd() / law.mean()) - 1.0).abs() < slack.max(1e-4) * 2.0,
            "{name}: cv {}",
            sd / sum
        );
    }
}

#[test]
fn draws_rise_with_the_number_and_never_leave_the_law() {
    for (name, law, _) in families() {
        let table = Sampler::new(&law);
        let mut last = 0.0;
        for i in 0..100_000_u64 {
            // From the smallest number to the greatest, dense at both ends.
            let middle = i << 47;
            let x = table.at(if i < 50 {
                i
            } else if i >= 99_950 {
                u64::MAX - (99_999 - i)
            } else {
                middle.max(50)
            });
            assert!(x.is_finite() && x >= last - 1e-6 * x.abs(), "{name}: {x} after {last}");
            last = x;
        }
    }
}

#[test]
fn what_comes_once_in_hundreds_of_millions_is_the_exact_quantile() {
    // 2^30 of 2^64 numbers lie below this one, and as many above its mirror image.
    let chance = (1_073_741_824.5) / 18_446_744_073_709_551_616.0;
    for law in [Distribution::Lognormal { mean: 20.0, cv: 0.3 }, Distribution::Exponential { mean: 5.0 }] {
        let table = Sampler::new(&law);
        for (bits, exact) in [(1 << 30, law.quantile(chance)), (!(1 << 30), law.quantile(1.0 - chance))] {
            let drawn = table.at(bits);
            assert!((drawn / exact - 1.0).abs() < 1e-6, "{law:?}: {drawn} and not {exact}");
        }
    }
}

#[test]
fn observed_values_are_equally_likely() {
    let law = Distribution::Observed(vec![3.0, 1.0, 2.0].into());
    let mut counts = [0; 3];
    draws(&law, 90_000).iter().for_each(|x| counts[*x as usize - 1] += 1);
    // 30,000 each; one standard error is 141.
    assert!(counts.iter().all(|n: &i32| (n - 30_000).abs() < 4 * 141), "{counts:?}");
}
