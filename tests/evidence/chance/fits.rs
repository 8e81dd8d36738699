//! Low, typical and high: the fitted law has the percentiles that were stated, and the most likely value where it keeps one.

use super::super::comparison::{Comparison, Status};
use super::*;

/// Triples from nearly constant to as wide as is taken, leaning both ways, and what becomes of them.
const PERTS: [[f64; 3]; 14] = [
    [20.0, 20.0 + 1e-6, 20.0 + 2e-6],
    [20.0, 20.0 + 1e-6, 21.0],
    [19.0, 21.0 - 1e-6, 21.0],
    [99.0, 100.0, 101.0],
    [15.0, 20.0, 30.0],
    [15.0, 19.5, 20.0],
    [5.0, 5.0, 9.0],
    [9.0, 12.0, 12.0],
    [1.0, 1.1, 1.9],
    [1.0, 1.5, 3.0],
    [0.4, 0.8, 1.3],
    [30.0, 31.0, 60.0],
    [0.001, 0.0012, 0.0016],
    [1e5, 1.3e5, 2e5],
];
const FROM_ZERO: [[f64; 3]; 3] = [[8.0, 19.0, 20.0], [1.0, 4.0, 5.0], [0.5, 1.2, 1.7]];
const LOGNORMALS: [[f64; 3]; 4] = [[1.0, 2.0, 50.0], [1.0, 2.0, 20.0], [1.0, 100.0, 200.0], [2.0, 9.0, 17.0]];

fn fit([low, typical, high]: [f64; 3]) -> Distribution {
    LowTypicalHigh { low, typical, high }.fit().unwrap()
}

/// Chance of a value up to `x` by a law that a fit can yield; the beta integral by Simpson's rule after `u = sin2 t`, which
/// takes the corners off it.
fn up_to(law: &Distribution, x: f64) -> f64 {
    match *law {
        Distribution::Pert { least, mode, greatest } => {
            let range = greatest - least;
            let (a, b) = (1.0 + 4.0 * (mode - least) / range, 1.0 + 4.0 * (greatest - mode) / range);
            let end = ((x - least) / range).sqrt().asin();
            let density = |t: f64| 2.0 * t.sin().powf(2.0 * a - 1.0) * t.cos().powf(2.0 * b - 1.0);
            simpson(density, end) * libm::tgamma(6.0) / (libm::tgamma(a) * libm::tgamma(b))
        }
        Distribution::Lognormal { mean, cv } => {
            let sigma2 = libm::log1p(cv * cv);
            libm::erfc(-((x / mean).ln() + sigma2 / 2.0) / (2.0 * sigma2).sqrt()) / 2.0
        }
        _ => panic!("{law:?}"),
    }
}

fn simpson(f: impl Fn(f64) -> f64, end: f64) -> f64 {
    let steps = 20_000;
    let h = end / f64::from(steps);
    let weight = |i| if i == 0 || i == steps { 1.0 } else { f64::from(2 + 2 * (i % 2)) };
    (0..=steps).map(|i| weight(i) * f(h * f64::from(i))).sum::<f64>() * h / 3.0
}

/// The most likely value of a PERT by the shapes of its density: where `(a - 1) / u = (b - 1) / (1 - u)`.
fn most_likely(law: &Distribution) -> Option<f64> {
    let Distribution::Pert { least, mode, greatest } = *law else { return None };
    let (a, b) = (mode - least, greatest - mode);
    Some(least + (greatest - least) * a / (a + b))
}

/// The fit by itself: nothing is drawn.
pub(crate) fn fitted() -> Comparison {
    let mut comparison = Comparison::new(
        "The law fitted to low, typical and high has one in ten below low and one in ten above high",
        "definition; beta integral by Simpson's rule, lognormal by the error function, neither of them heapcast's own",
        Status::Computed,
        0.0,
    );
    for triple in PERTS.iter().chain(&FROM_ZERO).chain(&LOGNORMALS) {
        let [low, typical, high] = *triple;
        let law = fit(*triple);
        comparison.exact(
            format!("{low}, {typical}, {high}: chance of less than low"),
            up_to(&law, low),
            0.1,
            1e-6,
        );
        comparison.exact(
            format!("{low}, {typical}, {high}: chance of less than high"),
            up_to(&law, high),
            0.9,
            1e-6,
        );
        if PERTS.contains(triple) {
            let likely = most_likely(&law).unwrap_or(f64::NAN);
            comparison.exact(
                format!("{low}, {typical}, {high}: most likely"),
                likely,
                typical,
                1e-9 * typical,
            );
        }
    }
    comparison
}

/// The fit at work: one load whose loading was stated as low, typical, high.
pub(crate) fn fitted_and_drawn() -> Comparison {
    let mut comparison = Comparison::new(
        "A job of one load forecasts P10 = low and P90 = high of what was stated for its loading",
        "definition; 100,000 runs each",
        Status::Computed,
        4.0,
    );
    for triple in
        [[15.0, 20.0, 30.0], [15.0, 19.5, 20.0], [5.0, 5.0, 9.0], [8.0, 19.0, 20.0], [1.0, 2.0, 50.0]]
    {
        let [low, typical, high] = triple;
        let law = fit(triple);
        let mut job = one_draw(Place::Loading, &law.relative());
        job.loaders[0].load_s = law.mean() * 60.0;
        let sample = study(&job, 100_000).sorted(|o| o.completion.working.as_mins_f64());
        for (name, share, stated) in [("P10", 0.1, low), ("P90", 0.9, high)] {
            let got = sample.percentile(share);
            let error = (got.high.unwrap() - got.low.unwrap()) / (2.0 * 1.96);
            comparison.compare(
                format!("{low}, {typical}, {high} min: {name}"),
                got.value,
                error,
                stated,
                0.0,
            );
        }
    }
    comparison
}

#[test]
fn a_fitted_law_has_the_percentiles_and_the_most_likely_value_that_were_stated() {
    fitted().judge(56);
    fitted_and_drawn().judge(10);
}

#[test]
fn a_fit_that_would_reach_below_zero_starts_at_zero_or_becomes_lognormal() {
    for triple in PERTS {
        assert!(matches!(fit(triple), Distribution::Pert { least, .. } if least > 0.0), "{triple:?}");
    }
    for triple in FROM_ZERO {
        assert!(matches!(fit(triple), Distribution::Pert { least: 0.0, .. }), "{triple:?}");
    }
    for triple in LOGNORMALS {
        assert!(matches!(fit(triple), Distribution::Lognormal { .. }), "{triple:?}");
    }
}

#[test]
fn low_typical_and_high_that_no_law_has_are_refused() {
    let refused = |low, typical, high| LowTypicalHigh { low, typical, high }.fit().unwrap_err();
    for figures in [[0.0, 1.0, 2.0], [-1.0, 1.0, 2.0], [1.0, 2.0, f64::INFINITY], [f64::NAN, 1.0, 2.0]] {
        let [low, typical, high] = figures;
        assert_eq!(refused(low, typical, high), FitError::NotPositive, "{figures:?}");
    }
    for figures in [[2.0, 1.0, 3.0], [1.0, 3.0, 2.0], [3.0, 2.0, 1.0], [2.0, 2.0, 1.0]] {
        let [low, typical, high] = figures;
        assert_eq!(refused(low, typical, high), FitError::OutOfOrder, "{figures:?}");
    }
    assert_eq!(refused(1.0, 2.0, 200.000_1), FitError::TooWide);
    assert!(LowTypicalHigh { low: 1.0, typical: 2.0, high: 200.0 }.fit().is_ok());
}

#[test]
fn every_fit_over_a_wide_grid_is_a_law_the_engine_takes() {
    let mut laws = [0; 3];
    for low in [1e-3, 1.0, 700.0] {
        for typical in [1.0, 1.0 + 1e-12, 1.001, 1.3, 2.0, 5.0, 30.0, 200.0] {
            for high in [1.0, 1.0 + 1e-12, 1.002, 1.7, 4.0, 30.0, 199.9, 200.0] {
                if typical > high {
                    continue;
                }
                let law = fit([low, low * typical, low * high]);
                law.check().unwrap();
                let (p10, p90) = (law.quantile(0.1), law.quantile(0.9));
                let off = ((p10 / low - 1.0).abs()).max((p90 / (low * high) - 1.0).abs());
                assert!(off < 1e-6, "{low} x 1, {typical}, {high}: {law:?} has P10 {p10}, P90 {p90}");
                laws[match law {
                    Distribution::Constant(_) => 0,
                    Distribution::Pert { .. } => 1,
                    _ => 2,
                }] += 1;
            }
        }
    }
    assert!(laws.iter().all(|count| *count > 2), "{laws:?}");
}
