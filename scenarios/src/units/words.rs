//! The words people use for units.

use super::dimension::Dimension;
use super::exact;
use super::system::System::{self, Metric, Us};
use crate::nearest::nearest;

/// A unit and the words for it, in small letters, without powers raised or dots.
pub(crate) struct Unit {
    /// The words; the first is the usual one.
    pub(crate) words: &'static [&'static str],
    /// What it measures.
    pub(crate) dimension: Dimension,
    /// Its size in SI.
    pub(crate) size: fn() -> f64,
    /// The system it belongs to, if to one only.
    pub(crate) system: Option<System>,
}

const fn unit(
    words: &'static [&'static str],
    dimension: Dimension,
    size: fn() -> f64,
    system: Option<System>,
) -> Unit {
    Unit { words, dimension, size, system }
}

/// Every unit that can be typed.
pub(crate) const UNITS: &[Unit] = &[
    unit(
        &["yd3", "cu yd", "cuyd", "cubic yard", "cubic yards", "cy", "yd^3"],
        Dimension::VOLUME,
        exact::cubic_yards,
        Some(Us),
    ),
    unit(
        &["ft3", "cu ft", "cuft", "cubic foot", "cubic feet", "cf", "ft^3"],
        Dimension::VOLUME,
        exact::cubic_feet,
        Some(Us),
    ),
    unit(
        &["gal", "gallon", "gallons", "us gal", "us gallon", "us gallons"],
        Dimension::VOLUME,
        exact::gallons,
        Some(Us),
    ),
    unit(
        &["m3", "cubic metre", "cubic metres", "cubic meter", "cubic meters", "cu m", "m^3"],
        Dimension::VOLUME,
        || 1.0,
        Some(Metric),
    ),
    unit(&["l", "litre", "litres", "liter", "liters", "ltr"], Dimension::VOLUME, || 0.001, Some(Metric)),
    unit(&["in", "inch", "inches", "\"", "″"], Dimension::LENGTH, exact::inches, Some(Us)),
    unit(&["ft", "foot", "feet", "'", "′"], Dimension::LENGTH, exact::feet, Some(Us)),
    unit(&["yd", "yard", "yards", "yds"], Dimension::LENGTH, exact::yards, Some(Us)),
    unit(&["mi", "mile", "miles"], Dimension::LENGTH, exact::miles, Some(Us)),
    unit(&["m", "metre", "metres", "meter", "meters"], Dimension::LENGTH, || 1.0, Some(Metric)),
    unit(
        &["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
        Dimension::LENGTH,
        || 0.01,
        Some(Metric),
    ),
    unit(
        &["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
        Dimension::LENGTH,
        || 0.001,
        Some(Metric),
    ),
    unit(
        &["km", "kilometre", "kilometres", "kilometer", "kilometers"],
        Dimension::LENGTH,
        || 1000.0,
        Some(Metric),
    ),
    unit(
        &["ft2", "sq ft", "sqft", "square foot", "square feet", "sf", "ft^2"],
        Dimension::AREA,
        exact::square_feet,
        Some(Us),
    ),
    unit(
        &["yd2", "sq yd", "sqyd", "square yard", "square yards", "sy", "yd^2"],
        Dimension::AREA,
        exact::square_yards,
        Some(Us),
    ),
    unit(&["acre", "acres", "ac"], Dimension::AREA, exact::acres, Some(Us)),
    unit(
        &["m2", "sq m", "sqm", "square metre", "square metres", "square meter", "square meters", "m^2"],
        Dimension::AREA,
        || 1.0,
        Some(Metric),
    ),
    unit(&["ha", "hectare", "hectares"], Dimension::AREA, || 10_000.0, Some(Metric)),
    unit(&["mph"], Dimension::SPEED, exact::miles_per_hour, Some(Us)),
    unit(&["fpm"], Dimension::SPEED, exact::feet_per_minute, Some(Us)),
    unit(&["km/h", "kmh", "kph"], Dimension::SPEED, exact::kilometres_per_hour, Some(Metric)),
    unit(&["s", "sec", "secs", "second", "seconds"], Dimension::TIME, || 1.0, None),
    unit(&["min", "mins", "minute", "minutes"], Dimension::TIME, exact::minutes, None),
    unit(&["h", "hr", "hrs", "hour", "hours"], Dimension::TIME, exact::hours, None),
    unit(&["lb", "lbs", "pound", "pounds"], Dimension::MASS, exact::pounds, Some(Us)),
    unit(
        &["ton", "tons", "short ton", "short tons", "us ton", "us tons"],
        Dimension::MASS,
        exact::short_tons,
        Some(Us),
    ),
    unit(&["kg", "kilogram", "kilograms", "kilo", "kilos"], Dimension::MASS, || 1.0, Some(Metric)),
    unit(&["t", "tonne", "tonnes", "metric ton", "metric tons"], Dimension::MASS, || 1000.0, Some(Metric)),
    unit(&["%", "percent", "per cent"], Dimension::NUMBER, || 0.01, None),
];

/// The unit a word stands for. Letters may be large or small, powers raised.
pub(crate) fn find(word: &str) -> Option<&'static Unit> {
    let word = plain(word);
    UNITS.iter().find(|unit| unit.words.contains(&word.as_str()))
}

/// The known word nearest to an unknown one.
pub(crate) fn nearest_word(word: &str) -> Option<&'static str> {
    nearest(&plain(word), UNITS.iter().flat_map(|unit| unit.words.iter().copied()))
}

fn plain(word: &str) -> String {
    let word = word.trim().replace('³', "3").replace('²', "2").to_lowercase();
    let word = word.replace('.', " ");
    word.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_word_stands_for_two_units() {
        let mut words: Vec<_> = UNITS.iter().flat_map(|unit| unit.words).collect();
        let all = words.len();
        words.sort_unstable();
        words.dedup();
        assert_eq!(words.len(), all);
    }

    #[test]
    fn every_word_finds_its_unit_however_it_is_written() {
        for unit in UNITS {
            for word in unit.words {
                let found = find(&word.to_uppercase()).unwrap();
                assert_eq!(found.words, unit.words);
            }
        }
        for (written, usual) in
            [("yd³", "yd3"), ("m²", "m2"), ("cu. yd.", "yd3"), ("Cubic  Yards", "yd3"), ("L", "l")]
        {
            assert_eq!(find(written).unwrap().words[0], usual);
        }
    }

    #[test]
    fn a_misspelt_unit_has_a_nearest_one() {
        assert_eq!(nearest_word("yrd3"), Some("yd3"));
        assert_eq!(nearest_word("meterz"), Some("meter"));
        assert_eq!(nearest_word("furlongs per fortnight and much else"), None);
    }
}
