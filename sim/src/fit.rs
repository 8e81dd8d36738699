//! From how people really know things - low, typical, high - to a distribution.

use crate::beta::quantile;
use crate::chance::Distribution;

/// Low, typical and high: the 10th percentile, the most likely value and the 90th percentile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LowTypicalHigh {
    /// One in ten is lower.
    pub low: f64,
    /// The most likely value.
    pub typical: f64,
    /// One in ten is higher.
    pub high: f64,
}

/// Why no distribution fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FitError {
    /// A figure is not finite or not above 0.
    #[error("low, typical and high must all be above 0")]
    NotPositive,
    /// Not in order.
    #[error("low, typical and high must rise")]
    OutOfOrder,
    /// High is so many times low that no family of ours holds both.
    #[error("high is more than 200 times low")]
    TooWide,
}

/// The standard normal's 90th percentile.
const Z90: f64 = 1.281_551_565_544_600_4;

impl LowTypicalHigh {
    /// The distribution with these three: a PERT whose 10th percentile, mode and 90th percentile they are; where all
    /// three are equal, the constant. Where that PERT would reach below zero, low and high are kept and the mode is let
    /// go: the lognormal through both, or, where typical lies nearer to high, the PERT through both that starts at zero.
    ///
    /// With `t` the place of the mode in the range (0 to 1) the standardised quantiles `q10(t)` and `q90(t)` must
    /// satisfy `(t - q10) (high - typical) = (q90 - t) (typical - low)`, which rises in `t` and is solved by halving.
    ///
    /// # Errors
    /// If the three are not above 0, not rising, or absurdly far apart.
    ///
    /// ```
    /// let law = sim::LowTypicalHigh { low: 15.0, typical: 20.0, high: 30.0 }.fit().unwrap();
    /// assert!((law.quantile(0.1) - 15.0).abs() < 1e-6);
    /// assert!((law.quantile(0.9) - 30.0).abs() < 1e-6);
    /// ```
    pub fn fit(self) -> Result<Distribution, FitError> {
        let Self { low, typical, high } = self;
        if ![low, typical, high].iter().all(|v| v.is_finite() && *v > 0.0) {
            return Err(FitError::NotPositive);
        }
        if low > typical || typical > high {
            return Err(FitError::OutOfOrder);
        }
        if high > 200.0 * low {
            return Err(FitError::TooWide);
        }
        if low == high {
            return Ok(Distribution::Constant(typical));
        }
        let (mode, range) = self.mode_and_range();
        let least = typical - mode * range;
        if least > 0.0 {
            return Ok(Distribution::Pert { least, mode: typical, greatest: least + range });
        }
        if high - typical < typical - low
            && let Some(from_zero) = self.pert_from_zero()
        {
            return Ok(from_zero);
        }
        let sigma = libm::log(high / low) / (2.0 * Z90);
        Ok(Distribution::Lognormal {
            mean: libm::sqrt(low * high) * libm::exp(sigma * sigma / 2.0),
            cv: libm::sqrt(libm::expm1(sigma * sigma)),
        })
    }

    /// Where the mode lies in the range (0 to 1), and the range itself.
    fn mode_and_range(self) -> (f64, f64) {
        let t = halve(|t| {
            let (q10, q90) = pert_10_90(t);
            (t - q10) * (self.high - self.typical) - (q90 - t) * (self.typical - self.low)
        });
        let (q10, q90) = pert_10_90(t);
        (t, (self.high - self.low) / (q90 - q10))
    }

    /// The PERT from zero through low and high, if there is one.
    fn pert_from_zero(self) -> Option<Distribution> {
        let ratio = self.low / self.high;
        let lean = |t: f64| {
            let (q10, q90) = pert_10_90(t);
            q10 / q90 - ratio
        };
        if lean(0.0) > 0.0 || lean(1.0) < 0.0 {
            return None;
        }
        let t = halve(lean);
        let greatest = self.high / pert_10_90(t).1;
        Some(Distribution::Pert { least: 0.0, mode: t * greatest, greatest })
    }
}

/// Where on 0 to 1 a rising function passes through zero.
fn halve(rising: impl Fn(f64) -> f64) -> f64 {
    let (mut least, mut most) = (0.0, 1.0);
    for _ in 0..60 {
        let t = f64::midpoint(least, most);
        if rising(t) < 0.0 { least = t } else { most = t }
    }
    f64::midpoint(least, most)
}

/// P10 and P90 of the PERT on 0 to 1 with this mode.
fn pert_10_90(mode: f64) -> (f64, f64) {
    let alpha = 1.0 + 4.0 * mode;
    (quantile(0.1, alpha, 6.0 - alpha), quantile(0.9, alpha, 6.0 - alpha))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fitted_law_has_the_percentiles_and_the_mode_that_were_stated() {
        for (low, typical, high) in [(15.0, 20.0, 30.0), (1.0, 1.1, 1.9), (15.0, 19.5, 20.0), (5.0, 5.0, 9.0)]
        {
            let law = LowTypicalHigh { low, typical, high }.fit().unwrap();
            assert!((law.quantile(0.1) - low).abs() < 1e-6 * high, "{law:?}");
            assert!((law.quantile(0.9) - high).abs() < 1e-6 * high, "{law:?}");
            assert!(matches!(law, Distribution::Pert { mode, .. } if mode == typical), "{law:?}");
        }
    }

    #[test]
    fn a_long_tail_over_a_low_start_becomes_lognormal_and_keeps_low_and_high() {
        let law = LowTypicalHigh { low: 1.0, typical: 2.0, high: 50.0 }.fit().unwrap();
        assert!(matches!(law, Distribution::Lognormal { .. }));
        assert!((law.quantile(0.1) - 1.0).abs() < 1e-6 && (law.quantile(0.9) - 50.0).abs() < 1e-5);
    }

    #[test]
    fn what_leans_to_the_left_is_a_pert_from_zero_where_there_is_one_and_else_lognormal() {
        let from_zero = |low, typical, high| {
            let law = LowTypicalHigh { low, typical, high }.fit().unwrap();
            assert!((law.quantile(0.1) - low).abs() < 1e-5 * high, "{law:?}");
            assert!((law.quantile(0.9) - high).abs() < 1e-5 * high, "{law:?}");
            matches!(law, Distribution::Pert { least: 0.0, .. })
        };
        assert!(from_zero(10.0, 60.0, 70.0));
        // Leans to the right; to neither side; too wide for a PERT that begins at zero.
        assert!(!from_zero(10.0, 40.0, 75.0));
        assert!(!from_zero(10.0, 100.0, 190.0));
        assert!(!from_zero(2.0, 5.0, 8.0));
        assert!(!from_zero(1.0, 50.0, 60.0));
    }

    #[test]
    fn high_may_be_two_hundred_times_low() {
        assert!(LowTypicalHigh { low: 2.0, typical: 20.0, high: 400.0 }.fit().is_ok());
        let wide = LowTypicalHigh { low: 2.0, typical: 20.0, high: 400.1 }.fit();
        assert_eq!(wide, Err(FitError::TooWide));
    }

    #[test]
    fn a_long_tail_below_keeps_low_and_high_and_stays_above_zero() {
        let law = LowTypicalHigh { low: 8.0, typical: 19.0, high: 20.0 }.fit().unwrap();
        assert!(
            matches!(law, Distribution::Pert { least, mode, .. } if least == 0.0 && mode > 14.0),
            "{law:?}"
        );
        assert!((law.quantile(0.1) - 8.0).abs() < 1e-6 && (law.quantile(0.9) - 20.0).abs() < 1e-6);
    }

    #[test]
    fn figures_that_do_not_rise_from_above_zero_are_refused() {
        let fit = |low, typical, high| LowTypicalHigh { low, typical, high }.fit();
        assert_eq!(fit(0.0, 1.0, 2.0), Err(FitError::NotPositive));
        assert_eq!(fit(2.0, 1.0, 3.0), Err(FitError::OutOfOrder));
        assert_eq!(fit(1.0, f64::NAN, 3.0), Err(FitError::NotPositive));
        assert_eq!(fit(1.0, 2.0, 300.0), Err(FitError::TooWide));
        assert_eq!(fit(2.0, 2.0, 2.0), Ok(Distribution::Constant(2.0)));
    }
}
