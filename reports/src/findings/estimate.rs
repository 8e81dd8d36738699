//! A figure and how closely it is known.

use super::about_duration;
use serde::Serialize;
use sim::{Mean, Percentile, Share};

/// A figure with its 95 % interval, open where there are too few runs to bound it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Estimate {
    /// The estimate.
    pub value: f64,
    /// Lower end.
    pub low: Option<f64>,
    /// Upper end.
    pub high: Option<f64>,
}

impl From<Percentile> for Estimate {
    fn from(p: Percentile) -> Self {
        Self { value: p.value, low: p.low, high: p.high }
    }
}

impl From<Mean> for Estimate {
    fn from(mean: Mean) -> Self {
        let known = |v: f64| Some(v).filter(|v| v.is_finite());
        Self { value: mean.value, low: known(mean.low), high: known(mean.high) }
    }
}

impl From<Share> for Estimate {
    fn from(share: Share) -> Self {
        Self { value: share.value, low: Some(share.low), high: Some(share.high) }
    }
}

impl Estimate {
    pub(crate) fn plus(self, shift: f64) -> Self {
        Self {
            value: self.value + shift,
            low: self.low.map(|v| v + shift),
            high: self.high.map(|v| v + shift),
        }
    }

    /// How closely a time is known, in words: the longer side of its interval.
    pub(crate) fn known(self) -> String {
        match (self.low, self.high) {
            (Some(low), Some(high)) if low >= high => "exactly".into(),
            (Some(low), Some(high)) => {
                format!("± {}", about_duration((high - self.value).max(self.value - low)))
            }
            (Some(low), None) => format!("over {}", about_duration(low)),
            (None, Some(high)) => format!("under {}", about_duration(high)),
            (None, None) => "too few runs".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_interval_that_few_runs_cannot_bound_is_left_open() {
        let open = Estimate { value: 60.0, low: Some(50.0), high: None };
        assert_eq!(open.known(), "over 50 s");
        assert_eq!(Estimate { low: None, ..open }.known(), "too few runs");
        assert_eq!(Estimate { low: Some(60.0), high: Some(60.0), ..open }.known(), "exactly");
    }
}
