//! Percentiles, means and chances of a sample, never without their 95 % interval.
//!
//! Percentiles are Hyndman & Fan's type 7 ("Sample Quantiles in Statistical Packages", The American Statistician 50(4),
//! 1996): with the values in order `x[0] .. x[n-1]`, `h = (n - 1) p` and linear between `x[floor h]` and the next.
//! Their intervals are distribution-free, from order statistics (David & Nagaraja, Order Statistics, 3rd ed., 7.1).

use crate::beta;
use crate::threads;
use statrs::distribution::{Binomial, DiscreteCDF};

/// The confidence of every interval in this crate.
pub const LEVEL: f64 = 0.95;

/// A percentile with its interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Percentile {
    /// Which one, as a share \[0 to 1\]: 0.8 for P80.
    pub share: f64,
    /// The estimate, in the units of the sample.
    pub value: f64,
    /// Lower end of the interval; `None` where the sample is too small to bound it.
    pub low: Option<f64>,
    /// Upper end of the interval; `None` where the sample is too small to bound it.
    pub high: Option<f64>,
}

/// A mean with its interval (Student's t).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mean {
    /// The estimate.
    pub value: f64,
    /// Lower end of the interval.
    pub low: f64,
    /// Upper end of the interval.
    pub high: f64,
    /// Standard deviation of the sample (divisor n - 1).
    pub sd: f64,
    /// Size of the sample.
    pub n: usize,
}

/// A chance with its interval (Clopper & Pearson, Biometrika 26, 1934).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// The estimate \[0 to 1\].
    pub value: f64,
    /// Lower end of the interval.
    pub low: f64,
    /// Upper end of the interval.
    pub high: f64,
}

/// A sample in rising order.
#[derive(Clone, Debug, PartialEq)]
pub struct Sorted(Vec<f64>);

impl Sorted {
    /// Sorts a sample.
    pub fn new(values: impl IntoIterator<Item = f64>) -> Self {
        let mut values: Vec<f64> = values.into_iter().collect();
        threads::sort(&mut values);
        Self(values)
    }

    /// The values in rising order.
    pub fn values(&self) -> &[f64] {
        &self.0
    }

    /// The percentile at `share` \[0 to 1, cut to it\] with its 95 % interval. An empty sample gives NaN.
    ///
    /// ```
    /// let ten = sim::Sorted::new((1..=10).map(f64::from));
    /// assert!((ten.percentile(0.9).value - 9.1).abs() < 1e-12);
    /// assert_eq!(ten.percentile(0.9).high, None); // ten values cannot bound the P90 from above
    /// ```
    pub fn percentile(&self, share: f64) -> Percentile {
        let share = share.clamp(0.0, 1.0);
        let (low, high) = interval_ranks(self.0.len(), share);
        let at = |rank: Option<usize>| rank.and_then(|r| self.0.get(r - 1)).copied();
        Percentile { share, value: self.type7(share), low: at(low), high: at(high) }
    }

    fn type7(&self, share: f64) -> f64 {
        let Some(last) = self.0.len().checked_sub(1) else { return f64::NAN };
        let h = last as f64 * share;
        let below = (h.floor() as usize).min(last);
        let above = (below + 1).min(last);
        let (low, high, part) = (self.0[below], self.0[above], h - below as f64);
        // Equal values need no blending: infinite ones could not be blended.
        if part == 0.0 || low == high { low } else { low + part * (high - low) }
    }

    /// The chance of a value of at most `limit`.
    pub fn share_up_to(&self, limit: f64) -> Share {
        share(self.0.partition_point(|v| *v <= limit), self.0.len())
    }

    /// The mean of the sample.
    pub fn mean(&self) -> Mean {
        mean(&self.0)
    }
}

/// Ranks (counted from 1) of the order statistics that bound the `share` quantile of a sample of `n` with 95 %
/// confidence, each tail at most 2.5 %. `None` where no order statistic does.
///
/// ```
/// assert_eq!(sim::interval_ranks(1_000, 0.8), (Some(775), Some(825)));
/// ```
pub fn interval_ranks(n: usize, share: f64) -> (Option<usize>, Option<usize>) {
    let tail = (1.0 - LEVEL) / 2.0;
    let Ok(below) = Binomial::new(share, n as u64) else { return (None, None) };
    // The quantile lies below x(r) when fewer than r values lie below it.
    let below_at_most = |k: usize| below.cdf(k as u64);
    let first_over = partition(n, |k| below_at_most(k) <= tail);
    let first_enough = partition(n, |k| below_at_most(k) < 1.0 - tail);
    (Some(first_over).filter(|r| *r >= 1), Some(first_enough + 1).filter(|r| *r <= n))
}

/// The least `k` of `0..=n` for which `before` no longer holds.
fn partition(n: usize, before: impl Fn(usize) -> bool) -> usize {
    let (mut low, mut high) = (0, n);
    while low < high {
        let middle = low.midpoint(high);
        if before(middle) { low = middle + 1 } else { high = middle }
    }
    low
}

/// The mean of a sample, summed in its order.
pub fn mean(values: &[f64]) -> Mean {
    let n = values.len();
    let value = values.iter().sum::<f64>() / n as f64;
    let squares: f64 = values.iter().map(|v| (v - value) * (v - value)).sum();
    let sd = if n > 1 { libm::sqrt(squares / (n - 1) as f64) } else { f64::NAN };
    let half = match n {
        0 | 1 => f64::NAN,
        _ => beta::student(0.5 + LEVEL / 2.0, (n - 1) as f64) * sd / libm::sqrt(n as f64),
    };
    Mean { value, low: value - half, high: value + half, sd, n }
}

/// The chance that `hits` of `n` independent trials tell of.
pub fn share(hits: usize, n: usize) -> Share {
    let tail = (1.0 - LEVEL) / 2.0;
    let (k, misses) = (hits as f64, (n - hits.min(n)) as f64);
    Share {
        value: k / n as f64,
        low: if hits == 0 { 0.0 } else { beta::quantile(tail, k, misses + 1.0) },
        high: if misses == 0.0 { 1.0 } else { beta::quantile(1.0 - tail, k + 1.0, misses) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_percentile_lies_between_its_neighbours_in_proportion() {
        let four = Sorted::new([8.0, 1.0, 4.0, 2.0]);
        for (share, value) in [(0.0, 1.0), (0.25, 1.75), (0.5, 3.0), (0.9, 6.8), (1.0, 8.0)] {
            assert!((four.percentile(share).value - value).abs() < 1e-12, "{share}");
        }
        let never = Sorted::new([1.0, f64::INFINITY, f64::INFINITY]);
        assert_eq!(never.percentile(0.75).value, f64::INFINITY);
        assert!(Sorted::new(std::iter::empty()).percentile(0.5).value.is_nan());
    }

    #[test]
    fn those_at_the_limit_are_counted() {
        let four = Sorted::new([1.0, 2.0, 2.0, 4.0]);
        assert_eq!(four.share_up_to(2.0).value, 0.75);
        assert_eq!(four.share_up_to(1.9).value, 0.25);
    }

    #[test]
    fn the_interval_of_a_median_of_a_hundred_is_the_40th_to_the_61st() {
        let median = Sorted::new((1..=100).map(f64::from)).percentile(0.5);
        assert_eq!((median.low, median.high), (Some(40.0), Some(61.0)));
        // Six values: all above or all below their median once in 64 each; five are too few.
        assert_eq!(interval_ranks(6, 0.5), (Some(1), Some(6)));
        assert_eq!(interval_ranks(5, 0.5), (None, None));
    }

    #[test]
    fn the_interval_of_a_mean_is_students_and_that_of_a_share_clopper_and_pearsons() {
        // Student's t at 97.5 % with 3 degrees of freedom is 3.182446; recalled from memory, as are the shares.
        let four = mean(&[1.0, 2.0, 3.0, 4.0]);
        let half = 3.182_446 * (5.0_f64 / 3.0).sqrt() / 2.0;
        assert!((four.high - 2.5 - half).abs() < 1e-5 && (2.5 - half - four.low).abs() < 1e-5, "{four:?}");
        assert!(mean(&[1.0]).sd.is_nan() && mean(&[]).value.is_nan());
        let eight_of_ten = share(8, 10);
        assert!((eight_of_ten.low - 0.443_904_5).abs() < 1e-6, "{eight_of_ten:?}");
        assert!((eight_of_ten.high - 0.974_789_3).abs() < 1e-6, "{eight_of_ten:?}");
        let none_of_ten = share(0, 10);
        assert_eq!(none_of_ten.low, 0.0);
        assert!((none_of_ten.high - 0.308_497_1).abs() < 1e-6, "{none_of_ten:?}");
    }
}
