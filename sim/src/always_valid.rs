//! A 95 % interval of a mean that may be looked at after every observation and stopped at any time.
//!
//! An ordinary interval is wrong more often than it says if one looks again and again and stops when one likes what one
//! sees. This one holds at all times together: Lai, "On confidence sequences", Annals of Statistics 4(2), 1976, for normal
//! observations of unknown spread (formula from memory, as restated by Wang & Ramdas, "Anytime-valid t-tests and confidence
//! sequences for Gaussian means with unknown variance", 2023; held by repetition in the tests).

use crate::beta;

/// Half the width of the interval, for any number of observations from a first one on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct AlwaysValid {
    first: f64,
    log_b: f64,
}

impl AlwaysValid {
    /// An interval that holds at all numbers of observations from `first` (at least 2) on, but for a chance of `risk`
    /// \[0 to 1\].
    pub(crate) fn new(first: usize, risk: f64) -> Self {
        let m = first.max(2) as f64;
        let a = edge(m - 1.0, risk);
        Self { first: m, log_b: m * libm::log1p(a * a / (m - 1.0)) - libm::log(m) }
    }

    /// Half the width after `n` observations, in standard deviations of the sample (divisor n); infinite before the first.
    pub(crate) fn half_width(&self, n: usize) -> f64 {
        let n = n as f64;
        if n < self.first {
            return f64::INFINITY;
        }
        libm::sqrt(libm::expm1((self.log_b + libm::log(n)) / n).max(0.0))
    }
}

/// The `a` at which `2 (1 - F(a)) + 2 a f(a)` is the risk, for Student's law.
fn edge(freedom: f64, risk: f64) -> f64 {
    let crossed = |a: f64| crossed(freedom, a);
    // The risk falls all the way from 1 at 0.
    let (mut low, mut high) = (0.0, 1.0);
    while crossed(high) > risk && high < 1e12 {
        (low, high) = (high, 2.0 * high);
    }
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if crossed(middle) > risk { low = middle } else { high = middle }
    }
    high
}

/// `2 (1 - F(a)) + 2 a f(a)`, by the beta law of `x = v / (v + a^2)`: what is beyond `a` on both sides is what that law has below `x`,
/// and `a f(a)` is `x^(v/2) (1 - x)^(1/2) / B(v/2, 1/2)`.
fn crossed(freedom: f64, a: f64) -> f64 {
    let x = freedom / (freedom + a * a);
    beta::below(x, freedom / 2.0, 0.5) + 2.0 * beta::front(x, freedom / 2.0, 0.5)
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::SeedableRng;
    use rand_distr::{Distribution, StandardNormal};
    use rand_xoshiro::Xoshiro256PlusPlus;
    use statrs::distribution::{Continuous, ContinuousCDF, StudentsT};

    #[test]
    fn the_mean_leaves_the_interval_at_any_time_no_more_often_than_said() {
        // 2,000 sequences of up to 3,000 normal observations, looked at after every one from the 20th on.
        let (first, risk, sequences) = (20, 0.1, 2_000);
        let interval = AlwaysValid::new(first, risk);
        let widths: Vec<f64> = (0..=3_000).map(|n| interval.half_width(n)).collect();
        let mut random = Xoshiro256PlusPlus::seed_from_u64(1976);
        let mut crossed = 0;
        for _ in 0..sequences {
            let (mut sum, mut squares) = (0.0, 0.0);
            crossed += u32::from((1..=3_000usize).any(|n| {
                let x: f64 = StandardNormal.sample(&mut random);
                sum += x;
                squares += x * x;
                let mean = sum / n as f64;
                let sd = (squares / n as f64 - mean * mean).max(0.0).sqrt();
                mean.abs() > sd * widths[n]
            }));
        }
        let rate = f64::from(crossed) / f64::from(sequences);
        let error = (risk * (1.0 - risk) / f64::from(sequences)).sqrt();
        // No more than said, and, as the bound is nearly reached, hardly less: a wider one would waste runs.
        assert!(rate <= risk + 2.0 * error, "{rate}");
        assert!(rate >= 0.6 * risk, "{rate}");
    }

    #[test]
    fn the_risk_is_that_of_students_law_as_another_library_knows_it() {
        for freedom in [1.0, 2.0, 19.0, 99.0, 9_999.0] {
            let law = StudentsT::new(0.0, 1.0, freedom).unwrap();
            for a in [1e-3, 0.1, 0.7, 1.0, 2.0, 2.844, 5.0, 30.0] {
                let (own, other) = (crossed(freedom, a), 2.0 * law.sf(a) + 2.0 * a * law.pdf(a));
                assert!((own / other - 1.0).abs() < 1e-8, "{freedom} at {a}: {own} {other}");
            }
        }
        // By hand: of one degree of freedom and at 1 it is a half and 1/pi.
        assert!((crossed(1.0, 1.0) - 0.5 - std::f64::consts::FRAC_1_PI).abs() < 1e-12);
    }

    #[test]
    fn at_the_first_look_it_is_a_few_standard_errors_and_it_narrows() {
        let interval = AlwaysValid::new(100, 0.05);
        let errors = |n: usize| interval.half_width(n) * ((n - 1) as f64).sqrt();
        // 2.844 by an independent computation of the same formula.
        assert!((errors(100) - 2.844).abs() < 1e-3, "{}", errors(100));
        assert!(interval.half_width(99).is_infinite());
        assert!(interval.half_width(400) < interval.half_width(100) / 1.8);
    }
}
