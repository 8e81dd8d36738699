//! From how people really know things - low, typical, high - to a distribution.

use crate::chance::Distribution;

/// Low, typical and high: the 10th percentile, the most likely value and the 90th percentile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LowTypicalHigh {
    /// One day in ten is lower.
    pub low: f64,
    /// The most likely value.
    pub typical: f64,
    /// One day in ten is higher.
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
}

impl LowTypicalHigh {
    /// Fits.
    ///
    /// # Errors
    /// If the three are not above 0 and rising.
    pub fn fit(self) -> Result<Distribution, FitError> {
        todo!()
    }
}
