use super::ChanceError as E;
use super::Distribution as D;

fn pert(least: f64, mode: f64, greatest: f64) -> D {
    D::Pert { least, mode, greatest }
}

fn triangular(least: f64, mode: f64, greatest: f64) -> D {
    D::Triangular { least, mode, greatest }
}

fn observed(values: &[f64]) -> D {
    D::Observed(values.into())
}

#[test]
fn what_lies_just_inside_the_limits_is_taken() {
    let sound = [
        D::Constant(0.0),
        D::Uniform { least: 0.0, greatest: 3.0 },
        D::Uniform { least: 3.0, greatest: 3.0 },
        triangular(1.0, 1.0, 2.0),
        triangular(1.0, 2.0, 2.0),
        pert(1.0, 1.0, 2.0),
        pert(0.0, 2.0, 2.0),
        D::Normal { mean: 10.0, sd: 3.0 },
        D::Normal { mean: 10.0, sd: 0.0 },
        D::Lognormal { mean: 5.0, cv: 10.0 },
        D::Gamma { mean: 5.0, cv: 0.0 },
        D::Weibull { mean: 5.0, shape: 0.2 },
        D::Weibull { mean: 5.0, shape: 100.0 },
        D::Exponential { mean: 1e-9 },
        observed(&[0.0, 1.0]),
    ];
    for law in sound {
        assert_eq!(law.check(), Ok(()), "{law:?}");
    }
}

#[test]
fn what_lies_just_outside_is_refused_for_its_own_reason() {
    let refused = [
        (D::Constant(f64::NAN), E::NotFinite),
        (D::Exponential { mean: f64::INFINITY }, E::NotFinite),
        (D::Constant(-1e-9), E::Negative),
        (D::Uniform { least: -1.0, greatest: 3.0 }, E::Negative),
        (observed(&[1.0, -1.0]), E::Negative),
        (D::Uniform { least: 3.1, greatest: 3.0 }, E::OutOfOrder),
        (triangular(2.1, 2.0, 3.0), E::OutOfOrder),
        (pert(1.0, 3.1, 3.0), E::OutOfOrder),
        (D::Normal { mean: 10.0, sd: 3.1 }, E::NormalTooWide),
        (D::Normal { mean: 0.1, sd: 0.2 }, E::NormalTooWide),
        (D::Lognormal { mean: 5.0, cv: 10.1 }, E::Spread),
        (D::Lognormal { mean: 0.0, cv: 1.0 }, E::Spread),
        (D::Gamma { mean: 0.0, cv: 1.0 }, E::Spread),
        (D::Weibull { mean: 5.0, shape: 0.19 }, E::Spread),
        (D::Weibull { mean: 5.0, shape: 101.0 }, E::Spread),
        (D::Weibull { mean: 0.0, shape: 2.0 }, E::Spread),
        (D::Exponential { mean: 0.0 }, E::Spread),
        (observed(&[]), E::NothingObserved),
        (observed(&[0.0, 0.0]), E::NothingObserved),
    ];
    for (law, why) in refused {
        assert_eq!(law.check(), Err(why), "{law:?}");
    }
}

/// Every family with figures of no special kind.
fn families() -> [D; 11] {
    [
        D::Constant(4.0),
        D::Uniform { least: 3.0, greatest: 7.5 },
        triangular(2.0, 3.0, 9.0),
        triangular(2.0, 8.0, 9.0),
        pert(2.0, 3.0, 9.0),
        D::Normal { mean: 6.0, sd: 0.9 },
        D::Lognormal { mean: 3.0, cv: 0.7 },
        D::Gamma { mean: 3.0, cv: 0.7 },
        D::Weibull { mean: 3.0, shape: 1.7 },
        D::Exponential { mean: 2.5 },
        observed(&[4.0, 1.0, 9.0, 2.5]),
    ]
}

#[test]
fn mean_and_spread_are_those_of_the_quantile_function() {
    // The integral of the quantile function over 0 to 1 is the mean, that of its square the second moment; the middle rule
    // with 400,000 strips is good to a few parts in ten thousand even in the tail of the lognormal.
    let strips = 400_000;
    for law in families() {
        let at = |i: u32| law.quantile((f64::from(i) + 0.5) / f64::from(strips));
        let (mut sum, mut squares) = (0.0, 0.0);
        for x in (0..strips).map(at) {
            sum += x;
            squares += x * x;
        }
        let mean = sum / f64::from(strips);
        let sd = (squares / f64::from(strips) - mean * mean).max(0.0).sqrt();
        assert!((law.mean() - mean).abs() < 1e-4 * mean, "{law:?}: mean {} or {mean}", law.mean());
        assert!((law.sd() - sd).abs() < 5e-4 * mean, "{law:?}: sd {} or {sd}", law.sd());
    }
}

#[test]
fn a_multiple_has_every_quantile_multiplied_and_a_relative_law_has_mean_1() {
    for law in families() {
        let (doubled, relative) = (law.times(2.5), law.relative());
        assert!((relative.mean() - 1.0).abs() < 1e-12, "{law:?}");
        for p in [0.01, 0.3, 0.5, 0.9, 0.99] {
            let (q, two) = (law.quantile(p), doubled.quantile(p));
            assert!((two - 2.5 * q).abs() < 1e-9 * two, "{law:?} at {p}");
            assert!((relative.quantile(p) - q / law.mean()).abs() < 1e-9 * q, "{law:?} at {p}");
        }
        assert!((doubled.sd() - 2.5 * law.sd()).abs() < 1e-9 * law.mean(), "{law:?}");
    }
}

#[test]
fn quantiles_hold_outside_0_to_1_and_without_spread() {
    let uniform = D::Uniform { least: 1.0, greatest: 3.0 };
    assert_eq!((uniform.quantile(-1.0), uniform.quantile(2.0)), (1.0, 3.0));
    for law in [
        D::Normal { mean: 4.0, sd: 0.0 },
        D::Lognormal { mean: 4.0, cv: 0.0 },
        D::Gamma { mean: 4.0, cv: 0.0 },
        triangular(4.0, 4.0, 4.0),
        pert(4.0, 4.0, 4.0),
    ] {
        for p in [0.0, 0.2, 0.9] {
            assert_eq!(law.quantile(p), 4.0, "{law:?}");
        }
    }
}

#[test]
fn the_normal_law_is_cut_at_zero_and_not_moved() {
    // Drawn again until not negative: P(X <= x) = (F(x) - F(0)) / (1 - F(0)).
    let law = D::Normal { mean: 3.0, sd: 0.9 };
    let z = super::Normal::standard();
    use statrs::distribution::ContinuousCDF;
    let below_zero = z.cdf(-3.0 / 0.9);
    for x in [0.01, 1.0, 3.0, 5.0] {
        let p = (z.cdf((x - 3.0) / 0.9) - below_zero) / (1.0 - below_zero);
        assert!((law.quantile(p) - x).abs() < 1e-6, "{x}: {}", law.quantile(p));
    }
}
