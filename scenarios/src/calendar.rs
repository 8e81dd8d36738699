//! Days of the calendar: read, counted on, and told by their names.

use time::{Date, Duration, Month};

/// A day by its year, month and number; none where there is no such day.
///
/// ```
/// assert!(scenarios::calendar::day(2026, 2, 29).is_none());
/// ```
pub fn day(year: i32, month: u8, number: u8) -> Option<Date> {
    Date::from_calendar_date(year, Month::try_from(month).ok()?, number).ok()
}

/// The day so many days later, or earlier; none beyond the year 9999.
///
/// ```
/// use scenarios::calendar::{day, later};
/// let last = day(2026, 12, 31).unwrap();
/// assert_eq!(later(last, 1), day(2027, 1, 1));
/// ```
pub fn later(date: Date, days: i64) -> Option<Date> {
    // What the library multiplies by the seconds of a day.
    let known = -4_000_000..=4_000_000;
    date.checked_add(Duration::days(Some(days).filter(|days| known.contains(days))?))
}

/// `18 April`.
pub fn of_month(date: Date) -> String {
    format!("{} {}", date.day(), date.month())
}

/// `Saturday 18 April 2026`.
///
/// ```
/// let date = scenarios::calendar::day(2026, 4, 18).unwrap();
/// assert_eq!(scenarios::calendar::whole(date), "Saturday 18 April 2026");
/// assert_eq!(scenarios::calendar::short(date), "Sat 18 Apr");
/// ```
pub fn whole(date: Date) -> String {
    format!("{} {} {}", date.weekday(), of_month(date), date.year())
}

/// `Sat 18 Apr`.
pub fn short(date: Date) -> String {
    let [weekday, month] = [date.weekday().to_string(), date.month().to_string()];
    format!("{weekday:.3} {} {month:.3}", date.day())
}

/// A day written as `2026-04-18`; none where it is another text or no day there is.
pub(crate) fn read(text: &str) -> Option<Date> {
    let mut parts = text.split('-');
    let mut part = |digits: usize| {
        let part = parts.next().filter(|part| part.len() == digits)?;
        // A sign before it would be read as well.
        part.bytes().all(|byte| byte.is_ascii_digit()).then_some(part)?.parse::<u16>().ok()
    };
    let (year, month, number) = (part(4)?, part(2)?, part(2)?);
    if parts.next().is_some() {
        return None;
    }
    day(year.into(), month.try_into().ok()?, number.try_into().ok()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_whole_day_that_there_is_is_read() {
        assert_eq!(read("2028-02-29"), day(2028, 2, 29));
        for wrong in [
            "2026-02-29",
            "2026-4-18",
            "26-04-18",
            "2026-04-18-1",
            "+026-04-18",
            "2026-04-+8",
            "2026/04/18",
            "",
        ] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_day_without_end_is_none() {
        let date = day(2026, 4, 18).unwrap();
        assert_eq!(later(date, i64::MAX), None);
        assert_eq!(later(date, 3_000_000), None);
        assert_eq!(later(date, -18), day(2026, 3, 31));
    }
}
