//! Distributions: what families there are, their moments and their quantile functions.

use statrs::distribution::{Beta, ContinuousCDF, Gamma, Normal};
use std::sync::Arc;

/// A law for a quantity that is never negative. Parameters are in the unit of the quantity.
#[derive(Clone, Debug, PartialEq)]
pub enum Distribution {
    /// Always this value.
    Constant(f64),
    /// Any value between the two, equally likely.
    Uniform {
        /// Least value.
        least: f64,
        /// Greatest value.
        greatest: f64,
    },
    /// Triangular density.
    Triangular {
        /// Least value.
        least: f64,
        /// Most likely value.
        mode: f64,
        /// Greatest value.
        greatest: f64,
    },
    /// Beta law on a range with weight 4 on the mode (Malcolm et al., Operations Research 7(5), 1959): shapes
    /// `1 + 4 (mode - least) / range` and `1 + 4 (greatest - mode) / range`.
    Pert {
        /// Least value.
        least: f64,
        /// Most likely value.
        mode: f64,
        /// Greatest value.
        greatest: f64,
    },
    /// Normal law drawn again until not negative.
    Normal {
        /// Mean before the cut.
        mean: f64,
        /// Standard deviation before the cut, at most 0.3 of the mean.
        sd: f64,
    },
    /// Lognormal law: `sigma2 = ln(1 + cv2)`, `mu = ln(mean) - sigma2 / 2`.
    Lognormal {
        /// Mean.
        mean: f64,
        /// Standard deviation over mean.
        cv: f64,
    },
    /// Gamma law: shape `1 / cv2`.
    Gamma {
        /// Mean.
        mean: f64,
        /// Standard deviation over mean.
        cv: f64,
    },
    /// Weibull law.
    Weibull {
        /// Mean.
        mean: f64,
        /// Shape; 1 is exponential.
        shape: f64,
    },
    /// Exponential law.
    Exponential {
        /// Mean.
        mean: f64,
    },
    /// Observed values, each equally likely.
    Observed(Arc<[f64]>),
}

/// Why a distribution is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ChanceError {
    /// A parameter is NaN or infinite.
    #[error("a figure is not a finite number")]
    NotFinite,
    /// Negative values would be possible.
    #[error("it could be negative")]
    Negative,
    /// Least, mode and greatest are not in order.
    #[error("least, mode and greatest are not in order")]
    OutOfOrder,
    /// A spread or shape outside what the family allows.
    #[error("the spread or shape is outside what the family allows")]
    Spread,
    /// A normal law too wide to stay positive.
    #[error("the standard deviation is more than 0.3 of the mean")]
    NormalTooWide,
    /// No observed values, or all of them 0.
    #[error("there is no observed value above 0")]
    NothingObserved,
}

use Distribution as D;

impl Distribution {
    /// Checks the parameters.
    ///
    /// # Errors
    /// The first thing wrong with them. Ranges: means at least 0 (above 0 where there is a spread), cv from 0 to 10,
    /// Weibull shapes from 0.2 to 100, `least <= mode <= greatest`, all finite and not negative.
    pub fn check(&self) -> Result<(), ChanceError> {
        let figures: &[f64] = match self {
            D::Constant(v) | D::Exponential { mean: v } => &[*v],
            D::Uniform { least, greatest } => &[*least, *greatest],
            D::Triangular { least, mode, greatest } | D::Pert { least, mode, greatest } => {
                &[*least, *mode, *greatest]
            }
            D::Normal { mean: m, sd: s } | D::Lognormal { mean: m, cv: s } => &[*m, *s],
            D::Gamma { mean: m, cv: s } | D::Weibull { mean: m, shape: s } => &[*m, *s],
            D::Observed(values) => values,
        };
        if figures.iter().any(|v| !v.is_finite()) {
            return Err(ChanceError::NotFinite);
        }
        if figures.iter().any(|v| *v < 0.0) {
            return Err(ChanceError::Negative);
        }
        match self {
            D::Uniform { least, greatest } if least > greatest => Err(ChanceError::OutOfOrder),
            D::Triangular { least, mode, greatest } | D::Pert { least, mode, greatest }
                if least > mode || mode > greatest =>
            {
                Err(ChanceError::OutOfOrder)
            }
            D::Normal { mean, sd } if *sd > 0.3 * mean => Err(ChanceError::NormalTooWide),
            D::Lognormal { mean, cv } | D::Gamma { mean, cv } if *cv > 10.0 || *mean <= 0.0 => {
                Err(ChanceError::Spread)
            }
            D::Weibull { mean, shape } if !(0.2..=100.0).contains(shape) || *mean <= 0.0 => {
                Err(ChanceError::Spread)
            }
            D::Exponential { mean } if *mean <= 0.0 => Err(ChanceError::Spread),
            D::Observed(values) if !values.iter().any(|v| *v > 0.0) => Err(ChanceError::NothingObserved),
            _ => Ok(()),
        }
    }

    /// The mean. Of the normal law, as the model has it, the mean before the cut.
    pub fn mean(&self) -> f64 {
        match self {
            D::Constant(v) => *v,
            D::Uniform { least, greatest } => least.midpoint(*greatest),
            D::Triangular { least, mode, greatest } => (least + mode + greatest) / 3.0,
            D::Pert { least, mode, greatest } => (least + 4.0 * mode + greatest) / 6.0,
            D::Normal { mean, .. }
            | D::Lognormal { mean, .. }
            | D::Gamma { mean, .. }
            | D::Weibull { mean, .. }
            | D::Exponential { mean } => *mean,
            D::Observed(values) => values.iter().sum::<f64>() / values.len() as f64,
        }
    }

    /// The standard deviation. Of the normal law, the one before the cut; of observed values, their own (divisor n).
    pub fn sd(&self) -> f64 {
        let variance = match self {
            D::Constant(_) => 0.0,
            D::Uniform { least, greatest } => (greatest - least) * (greatest - least) / 12.0,
            D::Triangular { least: a, mode: c, greatest: b } => {
                (a * a + b * b + c * c - a * b - a * c - b * c) / 18.0
            }
            D::Pert { least, greatest, .. } => {
                let mean = self.mean();
                (mean - least) * (greatest - mean) / 7.0
            }
            D::Normal { sd, .. } => sd * sd,
            D::Lognormal { mean, cv } | D::Gamma { mean, cv } => mean * mean * cv * cv,
            D::Weibull { mean, shape } => {
                let first = libm::tgamma(1.0 + 1.0 / shape);
                mean * mean * (libm::tgamma(1.0 + 2.0 / shape) / (first * first) - 1.0)
            }
            D::Exponential { mean } => mean * mean,
            D::Observed(values) => {
                let mean = self.mean();
                values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / values.len() as f64
            }
        };
        libm::sqrt(variance)
    }

    /// The same law for `k` times the quantity.
    pub fn times(&self, k: f64) -> Self {
        match self {
            D::Constant(v) => D::Constant(v * k),
            D::Uniform { least, greatest } => D::Uniform { least: least * k, greatest: greatest * k },
            D::Triangular { least, mode, greatest } => {
                D::Triangular { least: least * k, mode: mode * k, greatest: greatest * k }
            }
            D::Pert { least, mode, greatest } => {
                D::Pert { least: least * k, mode: mode * k, greatest: greatest * k }
            }
            D::Normal { mean, sd } => D::Normal { mean: mean * k, sd: sd * k },
            D::Lognormal { mean, cv } => D::Lognormal { mean: mean * k, cv: *cv },
            D::Gamma { mean, cv } => D::Gamma { mean: mean * k, cv: *cv },
            D::Weibull { mean, shape } => D::Weibull { mean: mean * k, shape: *shape },
            D::Exponential { mean } => D::Exponential { mean: mean * k },
            D::Observed(values) => D::Observed(values.iter().map(|v| v * k).collect()),
        }
    }

    /// The law divided by its mean: a multiplier with mean 1.
    pub fn relative(&self) -> Self {
        self.times(1.0 / self.mean())
    }

    /// The value that the quantity stays below with chance `p` \[0 to 1\].
    pub fn quantile(&self, p: f64) -> f64 {
        let p = p.clamp(0.0, 1.0);
        match self {
            D::Constant(v) => *v,
            D::Uniform { least, greatest } => least + p * (greatest - least),
            D::Triangular { least, mode, greatest } => {
                let range = greatest - least;
                if p * range <= mode - least {
                    least + libm::sqrt(p * range * (mode - least))
                } else {
                    greatest - libm::sqrt((1.0 - p) * range * (greatest - mode))
                }
            }
            D::Pert { least, mode, greatest } => {
                let range = greatest - least;
                let alpha = 1.0 + 4.0 * (mode - least) / range;
                Beta::new(alpha, 6.0 - alpha).map_or(*mode, |beta| least + range * beta.inverse_cdf(p))
            }
            D::Normal { mean, sd } if *sd > 0.0 => {
                let z = Normal::standard();
                let cut = z.cdf(-mean / sd);
                (mean + sd * z.inverse_cdf(cut + p * (1.0 - cut))).max(0.0)
            }
            D::Lognormal { mean, cv } if *cv > 0.0 => {
                let sigma2 = libm::log1p(cv * cv);
                libm::exp(libm::log(*mean) - sigma2 / 2.0 + libm::sqrt(sigma2) * Normal::standard().inverse_cdf(p))
            }
            D::Gamma { mean, cv } if *cv > 0.0 => {
                let shape = 1.0 / (cv * cv);
                Gamma::new(shape, shape / mean).map_or(*mean, |gamma| gamma.inverse_cdf(p))
            }
            D::Normal { mean, .. } | D::Lognormal { mean, .. } | D::Gamma { mean, .. } => *mean,
            D::Weibull { mean, shape } => {
                let scale = mean / libm::tgamma(1.0 + 1.0 / shape);
                scale * libm::pow(-libm::log1p(-p), 1.0 / shape)
            }
            D::Exponential { mean } => -mean * libm::log1p(-p),
            D::Observed(values) => {
                let mut sorted = values.to_vec();
                sorted.sort_unstable_by(f64::total_cmp);
                let rank = (p * sorted.len() as f64).ceil() as usize;
                sorted.get(rank.saturating_sub(1)).or(sorted.last()).copied().unwrap_or(f64::NAN)
            }
        }
    }
}

#[cfg(test)]
mod tests;
