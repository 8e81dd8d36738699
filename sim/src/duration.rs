//! Lengths of simulated time.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Rem, Sub, SubAssign};

/// A time in whole microseconds, as the engine counts it.
pub(crate) type Micros = i64;

/// Microseconds in a second.
pub(crate) const SECOND: Micros = 1_000_000;

const MINUTE: Micros = 60 * SECOND;
const HOUR: Micros = 60 * MINUTE;

/// A length of simulated time in whole microseconds. A point of time is its distance from the start of the first day. A
/// difference can be below zero, which a duration of the standard library cannot.
///
/// Whole numbers, so that time accounts add up exactly whatever the order.
///
/// ```
/// use sim::Duration;
/// let cycle = Duration::from_mins(2) + Duration::from_secs(5);
/// assert_eq!(cycle.as_secs_f64(), 125.0);
/// assert_eq!((cycle * 30).to_string(), "1 h 2 min 30 s");
/// assert_eq!(Duration::try_from_secs_f64(0.25), Some(Duration::from_micros(250_000)));
/// assert_eq!(Duration::try_from_secs_f64(f64::NAN), None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Duration(Micros);

impl Duration {
    /// No time at all.
    pub const ZERO: Self = Self(0);
    /// The longest there is, about 292,000 years.
    pub const MAX: Self = Self(Micros::MAX);

    /// So many microseconds.
    pub const fn from_micros(micros: i64) -> Self {
        Self(micros)
    }

    /// So many seconds; the longest or shortest duration where they are too many.
    pub const fn from_secs(seconds: i64) -> Self {
        Self(seconds.saturating_mul(SECOND))
    }

    /// So many minutes; the longest or shortest duration where they are too many.
    pub const fn from_mins(minutes: i64) -> Self {
        Self(minutes.saturating_mul(MINUTE))
    }

    /// So many hours; the longest or shortest duration where they are too many.
    pub const fn from_hours(hours: i64) -> Self {
        Self(hours.saturating_mul(HOUR))
    }

    /// Seconds, rounded to the microsecond (halves to even); `None` for what is not a number or does not fit.
    pub fn try_from_secs_f64(seconds: f64) -> Option<Self> {
        let micros = (seconds * SECOND as f64).round_ties_even();
        // From 2^63 on nothing fits; just below, the neighbours of an f64 are whole numbers.
        let fits = micros >= Micros::MIN as f64 && micros < -(Micros::MIN as f64);
        fits.then_some(Self(micros as Micros))
    }

    /// In microseconds.
    pub const fn as_micros(self) -> i64 {
        self.0
    }

    /// In seconds.
    pub const fn as_secs_f64(self) -> f64 {
        self.0 as f64 / SECOND as f64
    }

    /// In minutes.
    pub const fn as_mins_f64(self) -> f64 {
        self.0 as f64 / MINUTE as f64
    }

    /// In hours.
    pub const fn as_hours_f64(self) -> f64 {
        self.0 as f64 / HOUR as f64
    }

    /// Without its sign.
    pub const fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// The sum, where it fits.
    pub const fn checked_add(self, other: Self) -> Option<Self> {
        match self.0.checked_add(other.0) {
            Some(sum) => Some(Self(sum)),
            None => None,
        }
    }

    /// The difference, where it fits.
    pub const fn checked_sub(self, other: Self) -> Option<Self> {
        match self.0.checked_sub(other.0) {
            Some(difference) => Some(Self(difference)),
            None => None,
        }
    }
}

/// Hours, minutes and seconds, those that are zero left out: `1 h 2 min 30.5 s`.
impl fmt::Display for Duration {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let micros = self.0.unsigned_abs();
        let [second, minute, hour] = [SECOND, MINUTE, HOUR].map(Micros::unsigned_abs);
        let mut parts = Vec::new();
        if micros >= hour {
            parts.push(format!("{} h", micros / hour));
        }
        if micros % hour >= minute {
            parts.push(format!("{} min", micros % hour / minute));
        }
        let (whole, rest) = (micros % minute / second, micros % second);
        if rest > 0 {
            let digits = format!("{rest:06}");
            parts.push(format!("{whole}.{} s", digits.trim_end_matches('0')));
        } else if whole > 0 || parts.is_empty() {
            parts.push(format!("{whole} s"));
        }
        f.pad(&format!("{}{}", if self.0 < 0 { "-" } else { "" }, parts.join(" ")))
    }
}

impl Add for Duration {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Duration {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Neg for Duration {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl AddAssign for Duration {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}

impl SubAssign for Duration {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}

impl Mul<i64> for Duration {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0 * times)
    }
}

impl Div<i64> for Duration {
    type Output = Self;
    fn div(self, parts: i64) -> Self {
        Self(self.0 / parts)
    }
}

/// How many times the other it is: what share of a whole, for instance.
impl Div for Duration {
    type Output = f64;
    fn div(self, other: Self) -> f64 {
        self.0 as f64 / other.0 as f64
    }
}

impl Rem for Duration {
    type Output = Self;
    fn rem(self, other: Self) -> Self {
        Self(self.0 % other.0)
    }
}

impl Sum for Duration {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        Self(all.map(|d| d.0).sum())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_duration_is_shown_without_what_is_zero() {
        let shown = |micros| Duration(micros).to_string();
        assert_eq!(shown(0), "0 s");
        assert_eq!(shown(45 * SECOND), "45 s");
        assert_eq!(shown(2 * HOUR), "2 h");
        assert_eq!(shown(2 * HOUR + 5 * SECOND + 40), "2 h 5.00004 s");
        assert_eq!(shown(-(90 * SECOND + 500_000)), "-1 min 30.5 s");
        assert_eq!(format!("{:>6}", Duration::from_secs(7)), "   7 s");
        assert_eq!(shown(Micros::MIN), "-2562047788 h 54.775808 s");
    }

    #[test]
    fn seconds_are_rounded_halves_to_even_and_refused_beyond_what_fits() {
        let micros = |seconds| Duration::try_from_secs_f64(seconds).map(Duration::as_micros);
        assert_eq!([1.5e-6, 2.5e-6, -2.5e-6, 3.0].map(micros), [Some(2), Some(2), Some(-2), Some(3_000_000)]);
        assert_eq!([f64::NAN, f64::INFINITY, 9.3e12, -9.3e12].map(micros), [None; 4]);
        assert!(micros(9.2e12).is_some());
    }

    #[test]
    fn durations_are_counted_as_numbers_are() {
        let [one, two] = [1, 2].map(Duration::from_hours);
        assert_eq!(
            (one + two, one - two, -one),
            (Duration::from_mins(180), Duration::from_hours(-1), one * -1)
        );
        assert_eq!([one, two, two].into_iter().sum::<Duration>(), Duration::from_hours(5));
        assert_eq!(
            (two / 4, Duration::from_mins(90) % one),
            (Duration::from_mins(30), Duration::from_mins(30))
        );
        assert_eq!((Duration::from_mins(90) / one, (-two).abs()), (1.5, two));
        assert_eq!((two.as_mins_f64(), two.as_hours_f64()), (120.0, 2.0));
        assert_eq!(Duration::MAX.checked_add(one), None);
        assert_eq!(one.checked_sub(two), Some(Duration::from_hours(-1)));
        assert_eq!(Duration::from_hours(Micros::MAX), Duration::MAX);
    }
}
