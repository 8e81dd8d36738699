//! The exact sizes of the units of the trade in SI, worked out by a units library from yard, foot, inch, mile and grain,
//! whose definitions it holds exactly (its own cubic yard, pound and gallon are rounded to seven digits).

use uom::si::area::square_meter;
use uom::si::f64::{Length, Mass, Time, Velocity};
use uom::si::length::{foot, inch, meter, mile, yard};
use uom::si::mass::{grain, kilogram};
use uom::si::time::{hour, minute, second};
use uom::si::velocity::meter_per_second;
use uom::si::volume::cubic_meter;

/// Inch \[m\].
pub(crate) fn inches() -> f64 {
    Length::new::<inch>(1.0).get::<meter>()
}

/// Foot \[m\].
pub(crate) fn feet() -> f64 {
    Length::new::<foot>(1.0).get::<meter>()
}

/// Yard \[m\].
pub(crate) fn yards() -> f64 {
    Length::new::<yard>(1.0).get::<meter>()
}

/// Mile \[m\].
pub(crate) fn miles() -> f64 {
    Length::new::<mile>(1.0).get::<meter>()
}

/// Square foot \[m2\].
pub(crate) fn square_feet() -> f64 {
    let side = Length::new::<foot>(1.0);
    (side * side).get::<square_meter>()
}

/// Square yard \[m2\].
pub(crate) fn square_yards() -> f64 {
    let side = Length::new::<yard>(1.0);
    (side * side).get::<square_meter>()
}

/// Acre: a furlong (220 yards) by a chain (22 yards) \[m2\].
pub(crate) fn acres() -> f64 {
    (Length::new::<yard>(220.0) * Length::new::<yard>(22.0)).get::<square_meter>()
}

/// Cubic foot \[m3\].
pub(crate) fn cubic_feet() -> f64 {
    let side = Length::new::<foot>(1.0);
    (side * side * side).get::<cubic_meter>()
}

/// Cubic yard \[m3\].
pub(crate) fn cubic_yards() -> f64 {
    let side = Length::new::<yard>(1.0);
    (side * side * side).get::<cubic_meter>()
}

/// US gallon, 231 cubic inches \[m3\].
pub(crate) fn gallons() -> f64 {
    let side = Length::new::<inch>(1.0);
    (231.0 * side * side * side).get::<cubic_meter>()
}

/// Pound, 7,000 grains \[kg\].
pub(crate) fn pounds() -> f64 {
    Mass::new::<grain>(7000.0).get::<kilogram>()
}

/// US ton of 2,000 pounds \[kg\].
pub(crate) fn short_tons() -> f64 {
    2000.0 * pounds()
}

/// Mile per hour \[m/s\].
pub(crate) fn miles_per_hour() -> f64 {
    let speed: Velocity = Length::new::<mile>(1.0) / Time::new::<hour>(1.0);
    speed.get::<meter_per_second>()
}

/// Kilometre per hour \[m/s\].
pub(crate) fn kilometres_per_hour() -> f64 {
    let speed: Velocity = Length::new::<meter>(1000.0) / Time::new::<hour>(1.0);
    speed.get::<meter_per_second>()
}

/// Foot per minute \[m/s\].
pub(crate) fn feet_per_minute() -> f64 {
    let speed: Velocity = Length::new::<foot>(1.0) / Time::new::<minute>(1.0);
    speed.get::<meter_per_second>()
}

/// Minute \[s\].
pub(crate) fn minutes() -> f64 {
    Time::new::<minute>(1.0).get::<second>()
}

/// Hour \[s\].
pub(crate) fn hours() -> f64 {
    Time::new::<hour>(1.0).get::<second>()
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
