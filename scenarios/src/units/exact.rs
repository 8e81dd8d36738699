//! The sizes of the units of the trade in SI, from their definitions: the yard of 0.9144 m and the grain of 64.798 91 mg, the mile of
//! 1,760 yards, the US gallon of 231 cubic inches, the acre of 220 by 22 yards, the US ton of 2,000 pounds
//! (NIST Special Publication 811, 2008 edition, appendix B).

/// Inch \[m\].
pub(crate) const fn inches() -> f64 {
    0.0254
}

/// Foot \[m\].
pub(crate) const fn feet() -> f64 {
    0.3048
}

/// Yard \[m\].
pub(crate) const fn yards() -> f64 {
    0.9144
}

/// Mile \[m\].
pub(crate) const fn miles() -> f64 {
    1609.344
}

/// Square foot \[m2\].
pub(crate) const fn square_feet() -> f64 {
    feet() * feet()
}

/// Square yard \[m2\].
pub(crate) const fn square_yards() -> f64 {
    yards() * yards()
}

/// Acre: a furlong (220 yards) by a chain (22 yards) \[m2\].
pub(crate) const fn acres() -> f64 {
    (220.0 * yards()) * (22.0 * yards())
}

/// Cubic foot \[m3\].
pub(crate) const fn cubic_feet() -> f64 {
    feet() * feet() * feet()
}

/// Cubic yard \[m3\].
pub(crate) const fn cubic_yards() -> f64 {
    yards() * yards() * yards()
}

/// US gallon, 231 cubic inches \[m3\].
pub(crate) const fn gallons() -> f64 {
    231.0 * inches() * inches() * inches()
}

/// Pound, 7,000 grains \[kg\].
pub(crate) const fn pounds() -> f64 {
    7000.0 * 6.479_891e-5
}

/// US ton of 2,000 pounds \[kg\].
pub(crate) const fn short_tons() -> f64 {
    2000.0 * pounds()
}

/// Mile per hour \[m/s\].
pub(crate) const fn miles_per_hour() -> f64 {
    miles() / hours()
}

/// Kilometre per hour \[m/s\].
pub(crate) const fn kilometres_per_hour() -> f64 {
    1000.0 / hours()
}

/// Foot per minute \[m/s\].
pub(crate) const fn feet_per_minute() -> f64 {
    feet() / minutes()
}

/// Minute \[s\].
pub(crate) const fn minutes() -> f64 {
    60.0
}

/// Hour \[s\].
pub(crate) const fn hours() -> f64 {
    3600.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Legal definitions: 1 in = 25.4 mm, 1 gal = 231 in3, 1 lb = 0.45359237 kg (from memory); the cubic yard as in the
    /// project's collection of published check values.
    #[test]
    fn the_units_of_the_trade_have_their_exact_sizes() {
        for (made, exact) in [
            (inches(), 0.0254),
            (feet(), 0.3048),
            (yards(), 0.9144),
            (miles(), 1609.344),
            (square_feet(), 0.092_903_04),
            (square_yards(), 0.836_127_36),
            (acres(), 4_046.856_422_4),
            (cubic_feet(), 0.028_316_846_592),
            (cubic_yards(), 0.764_554_857_984),
            (gallons(), 0.003_785_411_784),
            (pounds(), 0.453_592_37),
            (short_tons(), 907.184_74),
            (miles_per_hour(), 0.447_04),
            (kilometres_per_hour(), 1.0 / 3.6),
            (feet_per_minute(), 0.005_08),
            (minutes(), 60.0),
            (hours(), 3600.0),
        ] {
            assert!((made / exact - 1.0).abs() < 1e-15, "{made} is not {exact}");
        }
    }
}
