//! What a quantity is once it is read, and the distribution fitted to low, typical and high.

use sim::{Distribution, FitError, LowTypicalHigh};

/// A quantity as given, in the unit its kind is kept in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Given {
    /// One figure.
    Figure(f64),
    /// How days differ.
    Days(LowTypicalHigh),
    /// A full distribution.
    Law(Distribution, By),
}

/// What a full distribution tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum By {
    /// How loads differ.
    Loads,
    /// How days differ.
    Days,
}

/// Where fits come from.
pub(crate) const FIT: &str =
    "low and high taken as the 10th and 90th percentile, typical as the most likely value";

/// The distribution with low and high as 10th and 90th percentile and typical as mode. A low of 0 is taken as the least
/// that can be: then a PERT from 0 whose 90th percentile is high.
///
/// # Errors
/// As [`LowTypicalHigh::fit`].
pub(crate) fn fit(three: LowTypicalHigh) -> Result<Distribution, FitError> {
    if three.low > 0.0 || three.high == 0.0 {
        return if three.high == 0.0 { Ok(Distribution::Constant(0.0)) } else { three.fit() };
    }
    let from_zero = |greatest| Distribution::Pert { least: 0.0, mode: three.typical, greatest };
    let (mut low, mut high) = (three.high, three.high * 4.0);
    for _ in 0..60 {
        let greatest = f64::midpoint(low, high);
        if from_zero(greatest).quantile(0.9) < three.high { low = greatest } else { high = greatest }
    }
    Ok(from_zero(f64::midpoint(low, high)))
}

/// What a distribution is called.
pub(crate) fn describe(law: &Distribution) -> &'static str {
    match law {
        Distribution::Constant(_) => "a constant",
        Distribution::Uniform { .. } => "a uniform distribution",
        Distribution::Triangular { .. } => "a triangular distribution",
        Distribution::Pert { .. } => "a PERT distribution",
        Distribution::Normal { .. } => "a normal distribution",
        Distribution::Lognormal { .. } => "a lognormal distribution",
        Distribution::Gamma { .. } => "a gamma distribution",
        Distribution::Weibull { .. } => "a Weibull distribution",
        Distribution::Exponential { .. } => "an exponential distribution",
        Distribution::Observed(_) => "the distribution of the observed values",
    }
}
