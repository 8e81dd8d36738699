//! What is varied, and its values, in words.

use crate::findings::about_duration;
use scenarios::units::System;
use scenarios::{Knob, Value, Vary};

/// A value as people say it: `2 rakers`, `a bucket of 14 ft3`.
pub(super) fn value_words(vary: &Vary, value: &Value, units: System) -> String {
    let label = value.label(units);
    let people = |one: &str| match label.as_str() {
        "0" => format!("no {one}"),
        "1" => format!("1 {one}"),
        _ => format!("{label} {one}s"),
    };
    match &vary.knob {
        Knob::Rakers => people("raker"),
        Knob::Loaders => people("loader"),
        Knob::Bucket => format!("a bucket of {label}"),
        Knob::Haul => format!("a mean haul of {label}"),
        Knob::Room if label == "1" => "room for 1 heap".into(),
        Knob::Room => format!("room for {label} heaps"),
        Knob::Key(key) => format!("\"{key} = {label}\""),
    }
}

/// Values of several things at once: `2 rakers and a bucket of 14 ft3`.
pub(super) fn point_words(things: &[Vary], places: &[usize], units: System) -> String {
    let each = things.iter().zip(places).filter_map(|(vary, place)| {
        let value = vary.values.get(*place)?;
        Some(value_words(vary, value, units))
    });
    each.collect::<Vec<_>>().join(" and ")
}

/// What a step is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Saying {
    /// At the beginning of a sentence.
    InFull,
    /// After another step of the same thing.
    Short,
}

/// A step from one value to another: `a second raker`, `a bucket of 13 ft3 instead of 11 ft3`; after another, `a third`,
/// `one of 15 ft3`.
pub(super) fn step_words(vary: &Vary, from: usize, to: usize, units: System, saying: Saying) -> String {
    let (Some(from), Some(to)) = (vary.values.get(from), vary.values.get(to)) else { return String::new() };
    let (before, after) = (from.number(units).0, to.number(units).0);
    let (was, is) = (from.label(units), to.label(units));
    let further = matches!(vary.knob, Knob::Rakers | Knob::Loaders) && after - before == 1.0;
    let one = if vary.knob == Knob::Rakers { "raker" } else { "loader" };
    match (&vary.knob, saying) {
        (Knob::Rakers | Knob::Loaders, Saying::InFull) if further => format!("{} {one}", ordinal(after)),
        (Knob::Rakers | Knob::Loaders, Saying::Short) if further => ordinal(after),
        (Knob::Rakers | Knob::Loaders, Saying::InFull) => {
            format!("{} instead of {was}", value_words(vary, to, units))
        }
        (Knob::Bucket | Knob::Haul, Saying::Short) => format!("one of {is}"),
        (Knob::Room, Saying::Short) => format!("room for {is}"),
        (_, Saying::InFull) => format!("{} instead of {was}", value_words(vary, to, units)),
        (_, Saying::Short) => is,
    }
}

/// `a second`, `a third`, `an eighth`, `a 13th`.
fn ordinal(number: f64) -> String {
    const NAMED: [&str; 12] = [
        "a first",
        "a second",
        "a third",
        "a fourth",
        "a fifth",
        "a sixth",
        "a seventh",
        "an eighth",
        "a ninth",
        "a tenth",
        "an eleventh",
        "a twelfth",
    ];
    let n = number.round().max(0.0) as usize;
    match n.checked_sub(1).and_then(|place| NAMED.get(place)) {
        Some(named) => (*named).into(),
        None => {
            let ending = match (n % 10, n % 100) {
                (_, 11..=13) => "th",
                (1, _) => "st",
                (2, _) => "nd",
                (3, _) => "rd",
                _ => "th",
            };
            format!("{} {n}{ending}", if n == 18 { "an" } else { "a" })
        }
    }
}

/// `± 1 min`: half of an interval, in words.
pub(super) fn give_or_take(mean: sim::Mean) -> String {
    match half(mean) {
        half if !half.is_finite() => "too few runs to say how sure".into(),
        half if half < EXACT => "exactly".into(),
        half => format!("± {}", about_duration(half)),
    }
}

/// The same behind a figure; nothing where the figure is exact.
pub(super) fn bracketed(mean: sim::Mean) -> String {
    if half(mean) < EXACT { String::new() } else { format!(" ({})", give_or_take(mean)) }
}

/// Less is no doubt at all.
pub(super) const EXACT: f64 = 1e-6;

pub(super) fn half(mean: sim::Mean) -> f64 {
    (mean.high - mean.low) / 2.0
}

/// A list with `and` before the last.
pub(super) fn and_list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(text: &str, from: usize, to: usize, saying: Saying) -> String {
        step_words(&text.parse().unwrap(), from, to, System::Us, saying)
    }

    #[test]
    fn people_are_counted_and_things_are_measured() {
        let words = |text: &str, place: usize| {
            let vary: Vary = text.parse().unwrap();
            value_words(&vary, &vary.values[place], System::Us)
        };
        assert_eq!(
            [words("rakers 0..2", 0), words("rakers 0..2", 1), words("loaders 1..2", 1)],
            ["no raker", "1 raker", "2 loaders"]
        );
        assert_eq!(words("bucket 8.5, 14 ft3", 1), "a bucket of 14 ft3");
        assert_eq!([words("room 1..2", 0), words("room 1..2", 1)], ["room for 1 heap", "room for 2 heaps"]);
        assert_eq!(words("loader.x.loading = 20 s, 30 s", 0), "\"loader.x.loading = 20 s\"");
    }

    #[test]
    fn steps_are_named_after_what_they_add() {
        assert_eq!(step("rakers 1..4", 0, 1, Saying::InFull), "a second raker");
        assert_eq!(step("rakers 1..4", 1, 2, Saying::Short), "a third");
        assert_eq!(step("rakers 1, 4", 0, 1, Saying::InFull), "4 rakers instead of 1");
        assert_eq!(step("haul 20, 40 yd", 1, 0, Saying::InFull), "a mean haul of 20 yd instead of 40 yd");
        assert_eq!(step("bucket 9, 11, 13 ft3", 1, 2, Saying::Short), "one of 13 ft3");
        assert_eq!(step("room 1..3", 1, 2, Saying::Short), "room for 3");
        assert_eq!(ordinal(23.0), "a 23rd");
        assert_eq!(ordinal(13.0), "a 13th");
    }
}
