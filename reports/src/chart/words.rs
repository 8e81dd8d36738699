//! Names and axis labels in words; durations and clock times are said as [`scenarios::units`] says them.

use scenarios::units::{System, clock};

/// Most letters of a name in a title.
const NAME: usize = 40;

/// A name as far as a title has room for it.
pub(crate) fn short_name(name: &str) -> String {
    if name.chars().count() <= NAME {
        return name.to_owned();
    }
    let kept: String = name.chars().take(NAME - 1).collect();
    format!("{}…", kept.trim_end())
}

/// Label of a clock axis for seconds after midnight; the day is told elsewhere. Steps under a minute show seconds,
/// whole hours of the twelve-hour clock leave the minutes out.
pub(super) fn tick_clock(after_midnight_s: f64, step_s: f64, system: System) -> String {
    let of_day = after_midnight_s.rem_euclid(86_400.0);
    if step_s < 60.0 {
        let seconds = of_day.round() as i64;
        let (minutes, seconds) = (seconds / 60, seconds % 60);
        return format!("{}:{:02}:{seconds:02}", minutes / 60, minutes % 60);
    }
    let label = clock(of_day, system);
    match system {
        System::Us => label.replace(":00", ""),
        System::Metric => label,
    }
}

/// Label of an axis of durations.
pub(super) fn tick_duration(seconds: f64) -> String {
    match seconds.round() as i64 {
        0 => "0".into(),
        s if s % 60 == 0 || s.abs() < 60 => scenarios::units::duration(seconds.round()),
        s => format!("{}:{:02} min", s / 60, (s % 60).abs()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_as_fine_as_their_step() {
        assert_eq!(tick_clock(9.5 * 3600.0, 1_800.0, System::Metric), "09:30");
        assert_eq!(tick_clock(14.0 * 3600.0, 1_800.0, System::Us), "2 pm");
        assert_eq!(tick_clock(27_015.0, 15.0, System::Us), "7:30:15");
        assert_eq!(tick_clock(86_400.0 + 8.0 * 3600.0, 7_200.0, System::Metric), "08:00");
        assert_eq!(tick_duration(5_400.0), "1 h 30 min");
        assert_eq!(tick_duration(150.0), "2:30 min");
    }
}
