//! The families in closed form, each with mean 1: chance of a value up to `x`, standard deviation, skewness.
//!
//! Sources: Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, 2nd ed. 1994-95 (from memory), and elementary
//! integrals. PERT and gamma laws are those whose shapes make the beta and gamma integrals elementary.

use super::Place;
use libm::{erf, erfc, exp, log1p, pow, sqrt, tgamma};
use sim::Distribution as D;
use std::f64::consts::{PI, SQRT_2};

/// A law, where the engine is made to draw from it, and what is known of it.
pub(super) struct Law {
    pub(super) name: &'static str,
    pub(super) place: Place,
    pub(super) law: D,
    pub(super) up_to: fn(f64) -> f64,
    pub(super) sd: f64,
    pub(super) skewness: f64,
}

pub(super) fn laws() -> Vec<Law> {
    use Place as P;
    let pert = |least, mode, greatest| D::Pert { least, mode, greatest };
    let beta_sd = |a: f64, b: f64, range: f64| range * sqrt(a * b / 7.0) / 6.0;
    let beta_skewness = |a: f64, b: f64| 2.0 * (b - a) * sqrt(7.0) / (8.0 * sqrt(a * b));
    let (normal_sd, normal_skewness) = cut_normal_moments();
    let weibull = |shape: f64| {
        let moment = |k: f64| tgamma(1.0 + k / shape) / pow(tgamma(1.0 + 1.0 / shape), k);
        let sd = sqrt(moment(2.0) - 1.0);
        (sd, (moment(3.0) - 3.0 * sd * sd - 1.0) / (sd * sd * sd))
    };
    let law = |name, place, law, up_to, sd, skewness| Law { name, place, law, up_to, sd, skewness };
    vec![
        law(
            "uniform",
            P::Loading,
            D::Uniform { least: 0.4, greatest: 1.6 },
            |x| (x - 0.4) / 1.2,
            1.2 / sqrt(12.0),
            0.0,
        ),
        law(
            "triangular",
            P::Haul,
            D::Triangular { least: 0.5, mode: 0.8, greatest: 1.7 },
            |x| if x < 0.8 { (x - 0.5) * (x - 0.5) / 0.36 } else { 1.0 - (1.7 - x) * (1.7 - x) / 1.08 },
            sqrt((0.25 + 0.64 + 2.89 - 0.4 - 0.85 - 1.36) / 18.0),
            // sqrt 2 (a + b - 2c) (2a - b - c) (a - 2b + c) / (5 (a2 + b2 + c2 - ab - ac - bc)^1.5)
            SQRT_2 * 0.6 * -1.5 * -2.1 / (5.0 * pow(1.17, 1.5)),
        ),
        law(
            "PERT, mode at a quarter",
            P::Raking,
            pert(0.5, 0.875, 2.0),
            |x| {
                let u = (x - 0.5) / 1.5;
                1.0 - pow(1.0 - u, 5.0) - 5.0 * u * pow(1.0 - u, 4.0)
            },
            beta_sd(2.0, 4.0, 1.5),
            beta_skewness(2.0, 4.0),
        ),
        law(
            "PERT, mode at the least",
            P::Dump,
            pert(0.7, 0.7, 2.5),
            |x| 1.0 - pow(1.0 - (x - 0.7) / 1.8, 5.0),
            beta_sd(1.0, 5.0, 1.8),
            beta_skewness(1.0, 5.0),
        ),
        law(
            "PERT, mode at the greatest, from zero",
            P::Day,
            pert(0.0, 1.2, 1.2),
            |x| pow(x / 1.2, 5.0),
            beta_sd(5.0, 1.0, 1.2),
            beta_skewness(5.0, 1.0),
        ),
        law(
            "normal, drawn again until not negative",
            P::Loading,
            D::Normal { mean: 1.0, sd: 0.3 },
            |x| {
                let below = |x: f64| erfc((1.0 - x) / (0.3 * SQRT_2)) / 2.0;
                (below(x) - below(0.0)) / (1.0 - below(0.0))
            },
            normal_sd,
            normal_skewness,
        ),
        law(
            "lognormal, cv 0.15",
            P::Day,
            D::Lognormal { mean: 1.0, cv: 0.15 },
            |x| lognormal(x, 0.15),
            0.15,
            0.15 * (3.0 + 0.15 * 0.15),
        ),
        law("lognormal, cv 1", P::Haul, D::Lognormal { mean: 1.0, cv: 1.0 }, |x| lognormal(x, 1.0), 1.0, 4.0),
        law(
            "gamma, cv 0.5",
            P::RakerPace,
            D::Gamma { mean: 1.0, cv: 0.5 },
            |x| {
                let t = 4.0 * x;
                1.0 - exp(-t) * (1.0 + t + t * t / 2.0 + t * t * t / 6.0)
            },
            0.5,
            1.0,
        ),
        law(
            "gamma, cv root 2",
            P::Travel,
            D::Gamma { mean: 1.0, cv: SQRT_2 },
            |x| erf(sqrt(x / 2.0)),
            SQRT_2,
            2.0 * SQRT_2,
        ),
        law(
            "Weibull, shape 1.8",
            P::Dump,
            D::Weibull { mean: 1.0, shape: 1.8 },
            |x| weibull_up_to(x, 1.8),
            weibull(1.8).0,
            weibull(1.8).1,
        ),
        law(
            "Weibull, shape 0.7",
            P::SetUp,
            D::Weibull { mean: 1.0, shape: 0.7 },
            |x| weibull_up_to(x, 0.7),
            weibull(0.7).0,
            weibull(0.7).1,
        ),
        law("exponential", P::LoaderPace, D::Exponential { mean: 1.0 }, |x| 1.0 - exp(-x), 1.0, 2.0),
    ]
}

fn lognormal(x: f64, cv: f64) -> f64 {
    let sigma2 = log1p(cv * cv);
    erfc(-(libm::log(x) + sigma2 / 2.0) / sqrt(2.0 * sigma2)) / 2.0
}

fn weibull_up_to(x: f64, shape: f64) -> f64 {
    -libm::expm1(-pow(x * tgamma(1.0 + 1.0 / shape), shape))
}

/// The mean of the normal law of mean 1 and sd 0.3 after the cut at zero: the inverse Mills ratio times 0.3 above 1.
pub(super) fn cut_normal_mean() -> f64 {
    1.0 + 0.3 * mills()
}

fn mills() -> f64 {
    let cut = -1.0_f64 / 0.3;
    exp(-cut * cut / 2.0) / sqrt(2.0 * PI) / (1.0 - erfc(-cut / SQRT_2) / 2.0)
}

/// Standard deviation and skewness after the cut: with `a` the cut in sds and `m` the inverse Mills ratio the first three
/// moments of the cut standard normal are `m`, `1 + a m` and `(a2 + 2) m`.
fn cut_normal_moments() -> (f64, f64) {
    let (a, m) = (-1.0_f64 / 0.3, mills());
    let (second, third) = (1.0 + a * m, (a * a + 2.0) * m);
    let variance = second - m * m;
    (0.3 * sqrt(variance), (third - 3.0 * m * second + 2.0 * m * m * m) / pow(variance, 1.5))
}
