//! What one job saves against another, run by run on the same days and loads.

use super::{Estimate, about_duration, about_money, percent};
use serde::Serialize;
use sim::{Mean, Paired};

/// What is saved in one figure, in seconds or money.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Saved {
    /// Middle of the differences.
    pub median: Estimate,
    /// A tenth of the runs save less.
    pub p10: Estimate,
    /// A tenth of the runs save more.
    pub p90: Estimate,
    /// Mean of the differences with its 95 % interval.
    pub mean: Estimate,
    /// Chance that the job has the smaller figure.
    pub smaller: Estimate,
    /// Chance that both have the very same.
    pub same: Estimate,
    /// The same in words.
    pub said: SavedSaid,
}

/// What is saved, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SavedSaid {
    /// The median: `29 min`, `2 min lost`; of money `$20 less`, `$55 more`.
    pub median: String,
    /// From the P10 to the P90 in the same sense: `12 to 45 min`, `5 to 7 min lost`, `5 min lost to 12 min`.
    pub eight_in_ten: String,
    /// The mean with how closely it is known: `29 min ± 60 s`.
    pub mean: String,
    /// The chance that it is the smaller: `97 %`.
    pub smaller: String,
    /// The chance that both are the very same, where it is worth naming.
    pub same: Option<String>,
}

/// How a figure is said.
#[derive(Clone, Copy)]
pub(crate) enum Unit<'a> {
    Time,
    Money(&'a str),
}

impl Unit<'_> {
    /// A figure with its sign.
    pub(crate) fn say(self, value: f64) -> String {
        match self {
            Self::Time => about_duration(value),
            // Small change is told only where there is nothing larger.
            Self::Money(currency) => {
                about_money(if value.abs() < 10.0 { value } else { value.round() }, currency)
            }
        }
    }

    /// How closely something is known.
    fn roughly(self, value: f64) -> String {
        match self {
            Self::Time => about_duration(value),
            Self::Money(currency) => about_money(if value < 1.0 { value } else { value.ceil() }, currency),
        }
    }

    /// Less than this is nothing.
    fn least(self) -> f64 {
        match self {
            Self::Time => 0.5,
            Self::Money(_) => 0.005,
        }
    }

    /// From the one to the other: `29 to 35 min`, `$20 to $30`.
    pub(crate) fn span(self, low: f64, high: f64) -> String {
        joined(&self.say(low), &self.say(high))
    }

    /// A wide span, in whole minutes where it reaches beyond one and a half.
    pub(crate) fn band(self, low: f64, high: f64) -> String {
        let whole = |s: f64| match (s / 60.0).round() {
            // A single minute is said in seconds elsewhere.
            one if one.abs() == 1.0 => format!("{one} min"),
            minutes => about_duration(minutes * 60.0),
        };
        match self {
            Self::Time if low.abs().max(high.abs()) >= 90.0 => joined(&whole(low), &whole(high)),
            _ => self.span(low, high),
        }
    }
}

impl Unit<'_> {
    /// A wide span of what is gained or lost, in the words of [`gained`]: no sign ever stands for a loss. A loss is told from
    /// the least to the most.
    fn saved_band(self, low: f64, high: f64) -> String {
        let least = self.least();
        let (gain, loss) = self.gain_and_loss();
        let one = |value: f64| match value {
            v if v.abs() < least => self.nothing().to_owned(),
            v if v < 0.0 => format!("{}{loss}", self.band(-v, -v)),
            v => format!("{}{gain}", self.band(v, v)),
        };
        match (low, high) {
            (low, high) if low.abs() < least && high.abs() < least => self.nothing().to_owned(),
            (low, high) if high < least => format!("{}{loss}", self.band((-high).max(0.0), -low)),
            (low, high) if low > -least => format!("{}{gain}", self.band(low.max(0.0), high)),
            (low, high) => format!("{} to {}", one(low), one(high)),
        }
    }

    /// What stands behind a gain and behind a loss.
    fn gain_and_loss(self) -> (&'static str, &'static str) {
        match self {
            Self::Time => ("", " lost"),
            Self::Money(_) => (" less", " more"),
        }
    }

    fn nothing(self) -> &'static str {
        match self {
            Self::Time => "nothing",
            Self::Money(_) => "the same",
        }
    }
}

/// `29 to 35 min`: one unit is enough where it is the same and the only one.
fn joined(low: &str, high: &str) -> String {
    if low == high {
        return low.to_owned();
    }
    match (low.split_once(' '), high.split_once(' ')) {
        (Some((figure, unit)), Some((_, other)))
            if !unit.contains(' ') && (unit == other || figure == "0") =>
        {
            format!("{figure} to {high}")
        }
        _ => format!("{low} to {high}"),
    }
}

/// What is saved in a figure, in numbers and words.
pub(crate) fn saved(paired: &Paired, unit: Unit<'_>) -> Saved {
    let at = |share| Estimate::from(paired.saved.percentile(share));
    let (median, p10, p90) = (at(0.5), at(0.1), at(0.9));
    Saved {
        said: SavedSaid {
            median: gained(median.value, unit),
            eight_in_ten: unit.saved_band(p10.value, p90.value),
            mean: mean_words(paired.mean, unit),
            smaller: percent(paired.smaller.value),
            // A few runs that happen to be alike to the microsecond need no words.
            same: (paired.same.value >= 0.005).then(|| percent(paired.same.value)),
        },
        median,
        p10,
        p90,
        mean: Estimate::from(paired.mean),
        smaller: Estimate::from(paired.smaller),
        same: Estimate::from(paired.same),
    }
}

/// What is gained or lost: `29 min`, `2 min lost`; `$20 less`, `$55 more`.
fn gained(value: f64, unit: Unit<'_>) -> String {
    let words = unit.say(value.abs());
    let (gain, loss) = unit.gain_and_loss();
    match value {
        v if v.abs() < unit.least() => unit.nothing().to_owned(),
        v if v < 0.0 => format!("{words}{loss}"),
        _ => format!("{words}{gain}"),
    }
}

fn mean_words(mean: Mean, unit: Unit<'_>) -> String {
    let half = (mean.high - mean.low) / 2.0;
    let value = gained(mean.value, unit);
    match half {
        half if !half.is_finite() => format!("{value}, too few runs"),
        0.0 => value,
        half => format!("{value} ± {}", unit.roughly(half)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_range_has_the_sense_of_its_middle_and_no_sign() {
        let money = |low, high| Unit::Money("$").saved_band(low, high);
        assert_eq!(money(-68.0, -55.0), "$55 to $68 more");
        assert_eq!(money(20.0, 30.0), "$20 to $30 less");
        assert_eq!(money(-5.0, 12.0), "$5 more to $12 less");
        assert_eq!([money(0.0, 0.0), money(-40.0, 0.0)], ["the same", "$0 to $40 more"]);
        let time = |low: f64, high: f64| Unit::Time.saved_band(low * 60.0, high * 60.0);
        assert_eq!([time(-7.0, -5.0), time(12.0, 45.0)], ["5 to 7 min lost", "12 to 45 min"]);
        assert_eq!([time(-5.0, 12.0), time(-30.0, 0.0)], ["5 min lost to 12 min", "0 to 30 min lost"]);
    }

    #[test]
    fn every_range_of_savings_agrees_with_what_is_said_of_its_ends() {
        for (low, high) in [(-90.0, -40.0), (-90.0, 30.0), (-20.0, 0.2), (0.0, 80.0), (50.0, 90.0)] {
            for unit in [Unit::Time, Unit::Money("EUR")] {
                let said = unit.saved_band(low, high);
                let (_, loss) = unit.gain_and_loss();
                assert!(!said.contains('-'), "{said}");
                assert_eq!(said.contains(loss.trim()), low <= -unit.least(), "{low} to {high}: {said}");
            }
        }
    }
}
