//! Dates.

use super::Wrong;
use crate::calendar;
use crate::document::Value;
use time::Date;

/// A date without a time: `2026-04-18`, with or without quotes.
pub(crate) fn date(value: &Value) -> Result<Date, Wrong> {
    let such = "write a date such as 2026-04-18";
    let (read, has_time) = match value {
        Value::Time(time) => (time.date.and_then(civil), time.date.is_some() && time.time.is_some()),
        Value::Text(text) => {
            let text = text.trim();
            let longer = text.len() > 10 && text.get(..10).is_some_and(|date| calendar::read(date).is_some());
            (calendar::read(text), longer)
        }
        _ => (None, false),
    };
    if has_time {
        return Err(Wrong::new(
            "a date is wanted here without a time",
            "write the date alone, such as 2026-04-18; the hour work begins is start under [shift]",
        ));
    }
    read.ok_or_else(|| Wrong::new("this is not a date there is", such))
}

fn civil(date: toml::value::Date) -> Option<Date> {
    calendar::day(date.year.into(), date.month, date.day)
}
