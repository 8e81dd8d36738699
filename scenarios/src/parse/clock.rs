//! Times of the clock as people write them.

use super::Wrong;
use crate::document::Value;
use crate::units::System;

/// Seconds in a day.
pub(crate) const DAY: f64 = 86_400.0;
/// Last day that a time in a file may name.
pub(crate) const LAST_DAY: u32 = 60;
const EXAMPLE: &str = "write a time such as \"08:00\", \"2:15 pm\" or \"day 2 09:00\"";
const EXAMPLE_FIRST: &str = "write a time of the day such as \"08:00\" or \"2:15 pm\"";

/// Which days a time may name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Days {
    /// None: it is a time of every day.
    Every,
    /// The first, or one up to this, with `day 2` before the time.
    To(u32),
}

/// Why a text is no time of the clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NoTime {
    /// Not written as one.
    Form,
    /// An hour or minute there is not.
    NotOnTheClock,
    /// 13:00 pm.
    AfternoonTwice,
    /// A day named where none may be, or beyond belief.
    Day,
}

/// The way a time of the clock is written: with am and pm, or with 24 hours.
pub(crate) fn clock_of(typed: &str) -> System {
    if typed.trim_end().to_lowercase().ends_with('m') { System::Us } else { System::Metric }
}

impl NoTime {
    fn what(self) -> &'static str {
        match self {
            NoTime::Form => "this is not a time of the clock",
            NoTime::NotOnTheClock => "there is no such time on the clock",
            NoTime::AfternoonTwice => "am and pm go with hours from 1 to 12",
            NoTime::Day => "this day cannot be named here",
        }
    }
}

/// A time of the clock, in seconds after midnight of the first day.
pub(crate) fn clock(value: &Value, days: Days) -> Result<f64, Wrong> {
    let read = match value {
        Value::Text(text) => parse(text, days),
        Value::Time(time) if time.date.is_none() && time.offset.is_none() => {
            time.time.map(seconds).ok_or(NoTime::Form)
        }
        _ => Err(NoTime::Form),
    };
    read.map_err(|error| {
        let right = match (error, days) {
            (NoTime::Day, Days::To(last)) => {
                format!("days are counted from 1 to {last}, such as \"day 2 09:00\"")
            }
            (_, Days::To(_)) => EXAMPLE.to_owned(),
            (_, Days::Every) => EXAMPLE_FIRST.to_owned(),
        };
        Wrong::new(error.what(), right)
    })
}

fn seconds(time: toml::value::Time) -> f64 {
    let second = f64::from(time.second.unwrap_or(0)) + f64::from(time.nanosecond.unwrap_or(0)) / 1e9;
    f64::from(time.hour) * 3600.0 + f64::from(time.minute) * 60.0 + second
}

/// A stretch of every day: `12:00-12:30`. Beginning and end, each read or not.
pub(crate) fn stretch(text: &str) -> Option<[Result<f64, Wrong>; 2]> {
    let (from, to) = text.split_once(['-', '–'])?;
    Some([from, to].map(|half| clock(&Value::Text(half.trim().to_owned()), Days::Every)))
}

/// Reads `10:30`, `2:15 pm`, `9 am`, `day 2 09:00`, `24:00`.
///
/// # Errors
/// Why it is no time of the clock.
pub(crate) fn parse(text: &str, days: Days) -> Result<f64, NoTime> {
    let text = text.trim().to_lowercase();
    let Some(rest) = text.strip_prefix("day") else {
        return time(&text);
    };
    let (day, rest) = rest.trim_start().split_once([' ', ',']).ok_or(NoTime::Form)?;
    let day: u32 = day.trim_end_matches([',', ':']).parse().map_err(|_| NoTime::Form)?;
    match days {
        Days::To(last) if (1..=last).contains(&day) => {}
        _ => return Err(NoTime::Day),
    }
    Ok(f64::from(day - 1) * DAY + time(rest)?)
}

fn time(text: &str) -> Result<f64, NoTime> {
    let text = text.trim();
    let (text, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(rest), _) => (rest.trim_end(), Some(0)),
        (_, Some(rest)) => (rest.trim_end(), Some(12)),
        _ => (text, None),
    };
    let (hour, minute) = match text.split_once(':') {
        Some((hour, minute)) if minute.len() == 2 => (hour, number(minute)?),
        None if half.is_some() => (text, 0),
        _ => return Err(NoTime::Form),
    };
    let hour = number(hour)?;
    let hour = match half {
        Some(half) if (1..=12).contains(&hour) => hour % 12 + half,
        Some(_) => return Err(NoTime::AfternoonTwice),
        None => hour,
    };
    if minute > 59 || hour > 24 || hour == 24 && minute > 0 {
        return Err(NoTime::NotOnTheClock);
    }
    Ok(f64::from(hour) * 3600.0 + f64::from(minute) * 60.0)
}

fn number(digits: &str) -> Result<u32, NoTime> {
    if digits.is_empty() || digits.len() > 2 || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return Err(NoTime::Form);
    }
    digits.parse().map_err(|_| NoTime::Form)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_by_twelve_and_by_twenty_four_hours() {
        for (text, hours) in [
            ("08:00", 8.0),
            ("8:30", 8.5),
            ("2:15 pm", 14.25),
            ("12:00 pm", 12.0),
            ("12:30 am", 0.5),
            ("9 am", 9.0),
            ("9am", 9.0),
            ("24:00", 24.0),
            ("day 2 09:00", 33.0),
            ("Day 1 9:00 PM", 21.0),
            ("day2, 9:00", 33.0),
        ] {
            assert_eq!(parse(text, Days::To(LAST_DAY)), Ok(hours * 3600.0), "{text}");
        }
    }

    #[test]
    fn what_is_not_on_the_clock_is_refused() {
        for (text, error) in [
            ("25:00", NoTime::NotOnTheClock),
            ("10:75", NoTime::NotOnTheClock),
            ("24:01", NoTime::NotOnTheClock),
            ("13:00 pm", NoTime::AfternoonTwice),
            ("0:10 am", NoTime::AfternoonTwice),
            ("noon", NoTime::Form),
            ("8", NoTime::Form),
            ("8:5", NoTime::Form),
            ("-8:00", NoTime::Form),
            ("", NoTime::Form),
            ("day 0 09:00", NoTime::Day),
            ("day 365 09:00", NoTime::Day),
            ("day two 09:00", NoTime::Form),
            ("2 h", NoTime::Form),
        ] {
            assert_eq!(parse(text, Days::To(LAST_DAY)), Err(error), "{text}");
        }
        assert_eq!(parse("day 2 09:00", Days::Every), Err(NoTime::Day));
    }
}
