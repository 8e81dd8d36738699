//! When, in the client's words: round times of the clock, days by their names.

use crate::render::page::words;
use scenarios::Scenario;
use scenarios::calendar::{later, of_month};
use scenarios::units::{System, clock};
use sim::Study;
use time::Date;

const DAY_S: f64 = 86_400.0;

/// The day, the start, and the range of the finish from the P10 to the P90.
pub(super) fn when(scenario: &Scenario, study: &Study, units: System) -> (Option<String>, String, String) {
    let start_s = scenario.job.shift.start_s;
    let finish = study.sorted(|o| start_s + o.finish.clock.as_secs_f64());
    let [from, middle, to] = [0.1, 0.5, 0.9].map(|share| finish.percentile(share).value);
    let date = scenario.date.map(words::date);
    (date, short_clock(start_s, units), done(from, middle, to, scenario.date, units))
}

/// `between 11:30 am and 2 pm, most likely about 1 pm`: times \[s after midnight of the first day\] are rounded outwards.
fn done(from: f64, middle: f64, to: f64, date: Option<Date>, units: System) -> String {
    let step = match to - from {
        s if s >= 3_600.0 => 1_800.0,
        s if s >= 1_200.0 => 900.0,
        _ => 300.0,
    };
    let (from, to) = ((from / step).floor() * step, (to / step).ceil() * step);
    let fine = step / 2.0;
    let middle = ((middle / fine).round() * fine).clamp(from, to);
    let on = |at: f64| (at / DAY_S).floor();
    if on(from) != on(to) {
        let say = |at: f64| of_day(at, date, units);
        return format!("between {} and {}, most likely about {}", say(from), say(to), say(middle));
    }
    let day = if to < DAY_S { String::new() } else { format!("on {} ", day(on(to), date)) };
    let say = |at: f64| short_clock(at, units);
    // A range of one step is told by its middle.
    if to - from <= 300.0 {
        return format!("{day}at about {}", say(middle));
    }
    format!("{day}between {} and {}, most likely about {}", say(from), say(to), say(middle))
}

/// A time with its day.
pub(super) fn of_day(at: f64, date: Option<Date>, units: System) -> String {
    format!("{} {}", day((at / DAY_S).floor(), date), short_clock(at, units))
}

/// A day by its name, counted from 0; by its number where the job has no date.
fn day(day: f64, date: Option<Date>) -> String {
    let named = date.and_then(|first| later(first, day as i64));
    match named {
        Some(date) if day < 6.0 => date.weekday().to_string(),
        Some(date) => format!("{} {}", date.weekday(), of_month(date)),
        None => format!("day {}", day + 1.0),
    }
}

/// The time of the day alone: `2 pm` for `2:00 pm`, `noon` for `12:00 pm`.
pub(super) fn short_clock(at: f64, units: System) -> String {
    let time = clock(at.rem_euclid(DAY_S), units);
    if time == "12:00 pm" { "noon".into() } else { time.replace(":00 ", " ") }
}

#[cfg(test)]
mod tests {
    use super::*;

    const H: f64 = 3_600.0;

    #[test]
    fn times_are_rounded_outwards_to_what_people_say() {
        let said = done(11.9 * H, 13.0 * H + 100.0, 13.6 * H, None, System::Us);
        assert_eq!(said, "between 11:30 am and 2 pm, most likely about 1 pm");
        let said = done(9.0 * H + 60.0, 9.2 * H, 9.4 * H, None, System::Metric);
        assert_eq!(said, "between 09:00 and 09:30, most likely about 09:15");
        assert_eq!(done(8.35 * H, 8.35 * H, 8.35 * H, None, System::Us), "at about 8:20 am");
    }

    #[test]
    fn a_job_that_ends_on_a_later_day_says_on_which() {
        let (from, middle, to) = (34.0 * H, 35.0 * H, 36.0 * H);
        let wednesday = scenarios::calendar::day(2026, 5, 27).unwrap();
        assert_eq!(
            done(from, middle, to, Some(wednesday), System::Us),
            "on Thursday between 10 am and noon, most likely about 11 am"
        );
    }

    #[test]
    fn a_job_that_may_take_days_names_them() {
        let saturday = scenarios::calendar::day(2026, 4, 18).unwrap();
        let (from, middle, to) = (15.0 * H, 24.0 * H + 9.0 * H, 24.0 * H + 10.8 * H);
        assert_eq!(
            done(from, middle, to, Some(saturday), System::Us),
            "between Saturday 3 pm and Sunday 11 am, most likely about Sunday 9 am"
        );
        assert_eq!(
            done(from, middle, to, None, System::Metric),
            "between day 1 15:00 and day 2 11:00, most likely about day 2 09:00"
        );
    }
}
