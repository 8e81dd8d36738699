//! What kinds of quantity a scenario file holds: what they measure, and what is believable. One table.

use super::dimension::Dimension;
use super::exact::hours;

/// A kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Way,
    Walk,
    Width,
    Side,
    Depth,
    Area,
    Volume,
    Delivery,
    Bucket,
    Lift,
    BucketMass,
    Density,
    Speed,
    Step,
    Stretch,
    Gap,
    SpreadTime,
    Rate,
    FuelBurn,
    HourlyCost,
    Price,
    PricePerVolume,
    FuelPrice,
    FillFactor,
    Settling,
    LiftShare,
    SpreadShare,
    PlaceOnWay,
    Crowding,
    FatigueLoss,
    FatigueLeast,
    Spread,
    Multiple,
    Shape,
}

/// Whether nothing at all is a believable quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Zero {
    Allowed,
    Refused,
}

/// What is to be known of a kind.
pub(crate) struct Facts {
    /// What it measures.
    pub(crate) dimension: Dimension,
    /// SI size of the unit it is kept in.
    pub(crate) kept_in: fn() -> f64,
    /// Whether it may be 0.
    pub(crate) zero: Zero,
    /// Least believable value above 0, in the unit it is kept in.
    pub(crate) least: f64,
    /// Greatest believable value, in the unit it is kept in.
    pub(crate) greatest: f64,
    /// The least and greatest in words.
    pub(crate) limits: [&'static str; 2],
    /// An example in both systems.
    pub(crate) example: &'static str,
}

fn one() -> f64 {
    1.0
}

fn per_hour() -> f64 {
    1.0 / hours()
}

fn litres_per_hour() -> f64 {
    0.001 / hours()
}

fn per_litre() -> f64 {
    1.0 / 0.001
}

macro_rules! facts {
    ($kind:expr; $($name:ident $dimension:ident in $kept:ident, $zero:ident, $least:literal $low:literal to
        $greatest:literal $high:literal, $example:literal;)*) => {
        match $kind {
            $(Kind::$name => Facts {
                dimension: Dimension::$dimension,
                kept_in: $kept,
                zero: Zero::$zero,
                least: $least,
                greatest: $greatest,
                limits: [$low, $high],
                example: $example,
            },)*
        }
    };
}

impl Kind {
    /// What is to be known of it.
    pub(crate) fn facts(self) -> Facts {
        facts! { self;
            Way LENGTH in one, Allowed, 0.0 "0 m" to 20e3 "20 km", "\"25 yd\" or \"23 m\"";
            Walk LENGTH in one, Allowed, 0.0 "0 m" to 20e3 "20 km", "\"30 yd\" or \"27 m\"";
            Width LENGTH in one, Refused, 0.1 "10 cm" to 50.0 "50 m", "\"48 in\" or \"1.2 m\"";
            Side LENGTH in one, Refused, 0.01 "1 cm" to 10e3 "10 km", "\"60 ft\" or \"18 m\"";
            Depth LENGTH in one, Refused, 0.001 "1 mm" to 10.0 "10 m", "\"4 in\" or \"10 cm\"";
            Area AREA in one, Refused, 0.01 "0.01 m2" to 1e6 "100 ha", "\"1200 ft2\" or \"110 m2\"";
            Volume VOLUME in one, Allowed, 0.0 "0 m3" to 100e3 "100000 m3", "\"20 yd3\" or \"15 m3\"";
            Delivery VOLUME in one, Refused, 0.01 "10 l" to 10e3 "10000 m3", "\"20 yd3\" or \"15 m3\"";
            Bucket VOLUME in one, Refused, 0.001 "1 l" to 50.0 "50 m3", "\"14 ft3\" or \"0.4 m3\"";
            Lift MASS in one, Refused, 1.0 "1 kg" to 100e3 "100 t", "\"1100 lb\" or \"500 kg\"";
            BucketMass MASS in one, Refused, 1.0 "1 kg" to 20e3 "20 t", "\"180 lb\" or \"80 kg\"";
            Density DENSITY in one, Refused, 5.0 "5 kg/m3" to 10e3 "10000 kg/m3",
                "\"473 lb/yd3\" or \"280 kg/m3\"";
            Speed SPEED in one, Refused, 0.01 "0.01 m/s" to 30.0 "30 m/s", "\"4 mph\" or \"6.5 km/h\"";
            Step TIME in one, Allowed, 0.0 "0 s" to 7200.0 "2 h", "\"20 s\" or \"1.5 min\"";
            Stretch TIME in one, Allowed, 0.0 "0 s" to 86400.0 "24 h", "\"15 min\" or \"1 h 30 min\"";
            Gap TIME in one, Refused, 10.0 "10 s" to 36e5 "1000 h", "\"3 h\" or \"45 min\"";
            SpreadTime TIME_PER_VOLUME in one, Allowed, 0.0 "0 s/m3" to 3600.0 "1 h/m3",
                "\"30 s/yd3\" or \"40 s/m3\"";
            Rate RATE in per_hour, Refused, 0.01 "0.01 m3/h" to 1000.0 "1000 m3/h",
                "\"30 yd3/h\" or \"22 m3/h\"";
            FuelBurn RATE in litres_per_hour, Allowed, 0.0 "0 l/h" to 200.0 "200 l/h",
                "\"1.2 gal/h\" or \"4.5 l/h\"";
            HourlyCost MONEY_PER_TIME in per_hour, Allowed, 0.0 "0/h" to 1e5 "100000/h",
                "\"$35/h\" or \"35 EUR/h\"";
            Price MONEY in one, Allowed, 0.0 "0" to 1e8 "100000000", "\"$380\" or \"380 EUR\"";
            PricePerVolume MONEY_PER_VOLUME in one, Allowed, 0.0 "0/m3" to 1e5 "100000/m3",
                "\"$18/yd3\" or \"24 EUR/m3\"";
            FuelPrice MONEY_PER_VOLUME in per_litre, Allowed, 0.0 "0/l" to 1000.0 "1000/l",
                "\"$4/gal\" or \"1.60 EUR/l\"";
            FillFactor NUMBER in one, Refused, 0.05 "5 %" to 2.0 "200 %", "\"95 %\" or 0.95";
            Settling NUMBER in one, Allowed, 0.0 "0 %" to 0.8 "80 %", "\"25 %\" or 0.25";
            LiftShare NUMBER in one, Refused, 0.05 "5 %" to 1.0 "100 %", "\"50 %\" or 0.5";
            SpreadShare NUMBER in one, Allowed, 0.0 "0 %" to 1.0 "100 %", "\"30 %\" or 0.3";
            PlaceOnWay NUMBER in one, Allowed, 0.0 "0 %" to 1.0 "100 %", "\"40 %\" or 0.4";
            Crowding NUMBER in one, Refused, 0.05 "5 %" to 2.0 "200 %", "\"90 %\" or 0.9";
            FatigueLoss PER_TIME in per_hour, Allowed, 0.0 "0 %/h" to 1.0 "100 %/h", "\"5 %/h\"";
            FatigueLeast NUMBER in one, Refused, 0.01 "1 %" to 1.0 "100 %", "\"60 %\" or 0.6";
            Spread NUMBER in one, Allowed, 0.0 "0 %" to 2.0 "200 %", "\"15 %\" or 0.15";
            Multiple NUMBER in one, Allowed, 0.0 "0 %" to 20.0 "2000 %", "\"110 %\" or 1.1";
            Shape NUMBER in one, Refused, 0.2 "0.2" to 100.0 "100", "1.8";
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::amount::parse;

    const ALL: [Kind; 34] = [
        Kind::Way,
        Kind::Walk,
        Kind::Width,
        Kind::Side,
        Kind::Depth,
        Kind::Area,
        Kind::Volume,
        Kind::Delivery,
        Kind::Bucket,
        Kind::Lift,
        Kind::BucketMass,
        Kind::Density,
        Kind::Speed,
        Kind::Step,
        Kind::Stretch,
        Kind::Gap,
        Kind::SpreadTime,
        Kind::Rate,
        Kind::FuelBurn,
        Kind::HourlyCost,
        Kind::Price,
        Kind::PricePerVolume,
        Kind::FuelPrice,
        Kind::FillFactor,
        Kind::Settling,
        Kind::LiftShare,
        Kind::SpreadShare,
        Kind::PlaceOnWay,
        Kind::Crowding,
        Kind::FatigueLoss,
        Kind::FatigueLeast,
        Kind::Spread,
        Kind::Multiple,
        Kind::Shape,
    ];

    #[test]
    fn limits_in_words_are_the_limits_in_figures() {
        for kind in ALL {
            let facts = kind.facts();
            for (words, figure) in facts.limits.iter().zip([facts.least, facts.greatest]) {
                let money = facts.dimension.over(Dimension::NUMBER) != Dimension::NUMBER
                    && words.contains("0/")
                    || kind == Kind::Price;
                let amount = parse(&if money { format!("${words}") } else { (*words).to_owned() }).unwrap();
                assert_eq!(amount.dimension, facts.dimension, "{kind:?} {words}");
                let read = amount.in_units_of((facts.kept_in)());
                assert!((read - figure).abs() <= 1e-12 * figure, "{kind:?}: {words} is {read}, not {figure}");
            }
            assert_eq!(facts.zero == Zero::Refused, facts.least > 0.0, "{kind:?}");
        }
    }

    #[test]
    fn examples_are_of_their_kind_and_believable() {
        for kind in ALL {
            let facts = kind.facts();
            for example in facts.example.split(" or ") {
                let amount = parse(example.trim_start_matches('"').trim_end_matches('"')).unwrap();
                assert_eq!(amount.dimension, facts.dimension, "{kind:?} {example}");
                let value = amount.in_units_of((facts.kept_in)());
                assert!((facts.least..=facts.greatest).contains(&value), "{kind:?} {example}");
            }
        }
    }
}
