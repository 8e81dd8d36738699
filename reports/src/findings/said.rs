//! Figures as people say them: no finer than anybody can know them. Files keep the exact figures; screens, pages and
//! charts say what stands here.

use scenarios::units::{System, clock, figure, money, volume_number};
use scenarios::{Scenario, calendar};
use time::Date;

/// Seconds in a minute, an hour and a day.
const MINUTE: f64 = 60.0;
const HOUR: f64 = 3_600.0;
const DAY: f64 = 86_400.0;
/// Smaller differences come from the last digits of sums and are none \[s\].
const CRUMB_S: f64 = 1e-3;

/// Which way a figure is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Rounding {
    Nearest,
    Up,
}

impl Rounding {
    fn to(self, value: f64, step: f64) -> f64 {
        match self {
            Self::Nearest => (value / step).round() * step,
            Self::Up => ((value - CRUMB_S) / step).ceil().max(0.0) * step,
        }
    }
}

/// The step that a length of time is told in \[s\]: 5 min from an hour on, 1 min below, 5 s under a minute.
fn step_of(seconds: f64) -> f64 {
    match seconds.abs() {
        s if s < MINUTE => 5.0,
        s if s < HOUR => MINUTE,
        _ => 5.0 * MINUTE,
    }
}

/// A length of time as people say it: `2 h 40 min`, `35 min`, `40 s`, `under 5 s`.
///
/// ```
/// use reports::findings::about_duration;
/// assert_eq!(about_duration(9_512.0), "2 h 40 min");
/// assert_eq!(about_duration(582.0), "10 min");
/// ```
pub fn about_duration(seconds: f64) -> String {
    rounded(seconds, Rounding::Nearest)
}

/// The same for a promise: never less than it is.
pub fn promised_duration(seconds: f64) -> String {
    rounded(seconds, Rounding::Up)
}

fn rounded(seconds: f64, rounding: Rounding) -> String {
    if !seconds.is_finite() {
        return "unknown".into();
    }
    let size = seconds.abs();
    let told = rounding.to(size, step_of(size));
    // What is rounded up to the hour is told like an hour.
    let told = rounding.to(told.max(size), step_of(told));
    if told < CRUMB_S {
        return if size < CRUMB_S { "0 min".into() } else { "under 5 s".into() };
    }
    let sign = if seconds < 0.0 { "-" } else { "" };
    format!("{sign}{}", exact_duration(told))
}

/// A length of time that is a whole number of minutes, or of seconds below one.
fn exact_duration(seconds: f64) -> String {
    if seconds < MINUTE {
        return format!("{seconds:.0} s");
    }
    let minutes = (seconds / MINUTE).round() as u64;
    match (minutes / 60, minutes % 60) {
        (0, m) => format!("{m} min"),
        (h, 0) => format!("{h} h"),
        (h, m) => format!("{h} h {m:02} min"),
    }
}

/// A sum of money to three figures, in whole units from 10 on: `$1940`, `$381`, `$42`, `$4.20`.
pub fn about_money(sum: f64, currency: &str) -> String {
    let size = sum.abs();
    let told = match size {
        s if !s.is_finite() => sum,
        s if s < 10.0 => sum,
        s if s < 999.5 => sum.round(),
        s => {
            let step = 10_f64.powi(s.log10().floor() as i32 - 2);
            (sum / step).round() * step
        }
    };
    money(told, currency)
}

/// A volume of material to a tenth, whole from 100 on: `14.7 yd3`, `under 0.1 yd3`.
pub fn about_volume(m3: f64, units: System) -> String {
    let (number, unit) = volume_number(m3, units);
    match number.abs() {
        0.0 => format!("0 {unit}"),
        n if n < 0.05 => format!("under 0.1 {unit}"),
        n if n < 99.95 => format!("{} {unit}", figure((number * 10.0).round() / 10.0)),
        _ => format!("{} {unit}", figure(number)),
    }
}

/// How many of the runs: `no run`, `under 1 run in 100`, `31 % of the runs`, `nearly every run`, `every run`.
pub fn share_of_runs(share: f64) -> String {
    match share {
        s if !s.is_finite() => "an unknown share of the runs".into(),
        s if s <= 0.0 => "no run".into(),
        s if s < 0.01 => "under 1 run in 100".into(),
        s if s >= 1.0 => "every run".into(),
        s if s > 0.99 => "nearly every run".into(),
        s => format!("{:.0} % of the runs", s * 100.0),
    }
}

/// Which clock is told: twelve or twenty-four hours, as the units have it, and the date of the first day where it is
/// known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Calendar {
    /// Units shown.
    pub units: System,
    /// The first day, if its date is set.
    pub first_day: Option<Date>,
}

impl Calendar {
    /// Of a job.
    pub fn of(scenario: &Scenario, units: System) -> Self {
        Self { units, first_day: scenario.date }
    }

    /// A time of the clock to the minute, from seconds after midnight of the first day: `10:05 am`; on a later day
    /// `Sat 18 Apr 10:05 am`, or `day 2 10:05 am` where no date is set.
    pub fn clock(&self, seconds: f64) -> String {
        let whole = (seconds / MINUTE).round() * MINUTE;
        let days = (whole / DAY).floor();
        let date = self.first_day.filter(|_| whole.is_finite() && days >= 1.0);
        match date.and_then(|first| calendar::later(first, days as i64)) {
            Some(day) => {
                format!("{} {}", calendar::short(day), clock(whole - days * DAY, self.units))
            }
            None => clock(seconds, self.units),
        }
    }

    /// The nearest time of the clock that people would say, to 5 min.
    pub fn about(&self, seconds: f64) -> String {
        self.clock(Rounding::Nearest.to(seconds, 5.0 * MINUTE))
    }

    /// When something is done that takes `working_s` and ends at `clock_s` \[s after midnight of the first day\]: how
    /// long it takes and when it is done. Both are rounded later, never earlier, and by as much, so that they agree.
    pub fn done(&self, working_s: f64, clock_s: f64) -> Done {
        let (duration_s, clock_s) = done_s(working_s, clock_s);
        Done {
            duration: if duration_s > 0.0 { exact_duration(duration_s) } else { "0 min".into() },
            clock: self.clock(clock_s),
        }
    }
}

/// When something is done, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Done {
    /// How long it takes.
    pub duration: String,
    /// The time of the clock it is done by.
    pub clock: String,
}

/// How long it takes and when it is done, rounded up to what people say \[s\].
pub fn done_s(working_s: f64, clock_s: f64) -> (f64, f64) {
    let step = if working_s <= HOUR { MINUTE } else { 5.0 * MINUTE };
    // Work that begins at 7:52 ends on no round time: then both go to the minute. Over a night nobody adds them up.
    let begins = clock_s - working_s;
    let on = |step: f64| (begins - Rounding::Nearest.to(begins, step)).abs() < 1e-3;
    let round = clock_s >= DAY || on(step) || !on(MINUTE);
    let step = if round { step } else { MINUTE };
    let told = match working_s {
        s if s < MINUTE && !round => Rounding::Up.to(s, 1.0),
        s if s < MINUTE => Rounding::Up.to(s, 5.0),
        s => Rounding::Up.to(s, step),
    };
    (told, Rounding::Up.to(clock_s, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_of_time_are_told_to_five_minutes_or_one() {
        let said = [0.0, 1.0, 12.0, 44.0, 59.0, 89.0, 582.0, 3_580.0, 3_600.0, 9_512.0, 9_750.0, -582.0];
        let expected = [
            "0 min",
            "under 5 s",
            "10 s",
            "45 s",
            "1 min",
            "1 min",
            "10 min",
            "1 h",
            "1 h",
            "2 h 40 min",
            "2 h 45 min",
            "-10 min",
        ];
        assert_eq!(said.map(about_duration), expected);
        assert_eq!(
            [1.0, 61.0, 3_541.0, 9_600.0, 9_601.0].map(promised_duration),
            ["5 s", "2 min", "1 h", "2 h 40 min", "2 h 45 min"]
        );
    }

    #[test]
    fn money_is_told_to_three_figures() {
        let said = [4.2, 41.5, 381.4, 999.6, 1_944.0, 12_345.0, -1_944.0].map(|sum| about_money(sum, "$"));
        assert_eq!(said, ["$4.20", "$42", "$381", "$1000", "$1940", "$12,300", "-$1940"]);
        assert_eq!(about_money(1_944.0, "EUR"), "1940 EUR");
    }

    #[test]
    fn volumes_are_told_to_a_tenth() {
        let said = [0.0, 0.007, 0.31, 14.68, 123.4].map(|m3| about_volume(m3, System::Metric));
        assert_eq!(said, ["0 m3", "under 0.1 m3", "0.3 m3", "14.7 m3", "123 m3"]);
    }

    #[test]
    fn all_and_none_are_words_and_nearly_all_is_not_all() {
        let said = [0.0, 0.001, 0.31, 0.995, 1.0].map(share_of_runs);
        assert_eq!(
            said,
            ["no run", "under 1 run in 100", "31 % of the runs", "nearly every run", "every run"]
        );
    }

    #[test]
    fn a_promise_is_never_rounded_earlier_and_clock_and_duration_agree() {
        let eight = 8.0 * HOUR;
        for starts in [eight, eight - 8.0 * MINUTE, DAY + eight] {
            for takes in (30..40_000).step_by(37).map(f64::from) {
                let (duration, clock) = done_s(takes, starts + takes);
                assert!(duration >= takes - 0.01 && clock >= starts + takes - 0.01, "{starts} {takes}");
                assert!(clock - (starts + takes) < 301.0, "{starts} {takes}: {clock}");
                let (agrees, least) =
                    ((starts + duration - clock).abs(), if takes < MINUTE { 60.0 } else { 1.0 });
                assert!(agrees < least, "{starts} {takes}: {duration} {clock}");
            }
        }
    }

    #[test]
    fn a_later_day_has_its_date_where_it_is_known() {
        let first_day = calendar::day(2026, 4, 17);
        let calendar = Calendar { units: System::Us, first_day };
        assert_eq!(calendar.clock(10.0 * HOUR), "10:00 am");
        assert_eq!(calendar.clock(DAY + 10.0 * HOUR), "Sat 18 Apr 10:00 am");
        assert_eq!(Calendar { first_day: None, ..calendar }.clock(DAY + 10.0 * HOUR), "day 2 10:00 am");
        assert_eq!(
            Calendar { units: System::Metric, ..calendar }.about(DAY + 14.0 * HOUR + 122.0),
            "Sat 18 Apr 14:00"
        );
        let done = calendar.done(9_512.0, 8.0 * HOUR + 9_512.0);
        assert_eq!((done.duration.as_str(), done.clock.as_str()), ("2 h 40 min", "10:40 am"));
    }
}
