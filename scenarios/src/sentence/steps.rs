//! The next value up or down in steps a person would take, and the units that are offered.

use crate::key::Holds;
use crate::key::Key;
use crate::units::System;
use crate::units::amount;
use crate::units::kind::{Kind, Zero};
use crate::vary::Written;

/// The units of a kind, those of a system first; of money what stands behind the sum.
pub(super) fn units(kind: Kind, system: System) -> &'static [&'static str] {
    let [us, metric]: [&[&str]; 2] = match kind {
        Kind::Way | Kind::Walk => [&["yd", "ft", "m"], &["m", "yd", "ft"]],
        Kind::Width => [&["in", "ft", "cm", "m"], &["m", "cm", "in", "ft"]],
        Kind::Side => [&["ft", "yd", "m"], &["m", "ft", "yd"]],
        Kind::Depth => [&["in", "ft", "cm"], &["cm", "mm", "in"]],
        Kind::Area => [&["ft2", "yd2", "acre", "m2"], &["m2", "ha", "ft2"]],
        Kind::Volume | Kind::Delivery => [&["yd3", "ft3", "ton", "m3"], &["m3", "l", "t", "yd3"]],
        Kind::Bucket => [&["ft3", "yd3", "m3", "l"], &["m3", "l", "ft3"]],
        Kind::Lift | Kind::BucketMass => [&["lb", "kg"], &["kg", "lb"]],
        Kind::Rate => [&["yd3/h", "m3/h"], &["m3/h", "yd3/h"]],
        Kind::Step => [&["s", "min"], &["s", "min"]],
        Kind::Stretch | Kind::Gap => [&["min", "h"], &["min", "h"]],
        Kind::HourlyCost => [&["/h"], &["/h"]],
        Kind::PricePerVolume => [&["/yd3", "/ton"], &["/m3", "/t"]],
        Kind::FuelPrice => [&["/gal", "/l"], &["/l", "/gal"]],
        Kind::Price => [&[], &[]],
        _ => [&["%"], &["%"]],
    };
    if system == System::Us { us } else { metric }
}

/// The usual step in a unit; smaller amounts go in smaller ones, larger in larger ones.
fn usual_step(kind: Kind, unit: &str) -> f64 {
    match (kind, unit) {
        (Kind::Bucket, "m3") => 0.05,
        (Kind::Bucket, "yd3") => 0.1,
        (Kind::Bucket, "l") => 10.0,
        (Kind::Way | Kind::Walk, "ft") => 10.0,
        (Kind::Way | Kind::Walk, _) => 5.0,
        (Kind::Width, "in") => 2.0,
        (Kind::Width, "ft") => 0.5,
        (Kind::Width, "cm") => 5.0,
        (Kind::Width, _) => 0.1,
        (Kind::Side, "ft") => 5.0,
        (Kind::Depth, "in") => 0.5,
        (Kind::Depth, "mm") => 5.0,
        (Kind::Lift, "lb") => 100.0,
        (Kind::Lift, "kg") => 50.0,
        (Kind::Step | Kind::Stretch, "s" | "min") => 5.0,
        (_, "h") => 0.5,
        (_, "%") => 5.0,
        (_, "") => 0.05,
        _ => 1.0,
    }
}

/// Share of an amount that is taken for a step, where the usual one is less.
const SHARE: f64 = 1.0 / 8.0;
/// The same where the usual step is more than there is.
const LARGE_SHARE: f64 = 1.0 / 3.0;

/// One, two or five times a power of ten, at most a number.
fn round_step(most: f64) -> f64 {
    let power = 10_f64.powi(most.log10().floor() as i32);
    let times = most / power;
    power
        * if times >= 5.0 {
            5.0
        } else if times >= 2.0 {
            2.0
        } else {
            1.0
        }
}

/// The next number below and above one.
fn neighbours(number: f64, step: f64) -> [f64; 2] {
    let step = match step < number {
        true => step.max(round_step(number * SHARE)),
        false => round_step(number * LARGE_SHARE),
    };
    let dust = 1e-9 * number.abs();
    [((number - dust) / step).ceil() * step - step, ((number + dust) / step).floor() * step + step]
}

/// The next values down and up of one as typed; none beyond what is believable.
pub(super) fn around(typed: &str, kind: Kind) -> [Option<String>; 2] {
    let Ok(written) = Written::parse(typed) else { return [None, None] };
    let unit = written.after.clone();
    let is_unit = unit.is_empty() || unit.starts_with('/') || amount::parse_unit(&unit).is_ok();
    if !is_unit || written.number < 0.0 {
        return [None, None];
    }
    if written.number == 0.0 {
        return [None, believable(&written, usual_step(kind, &unit), kind)];
    }
    neighbours(written.number, usual_step(kind, &unit)).map(|number| believable(&written, number, kind))
}

/// Another number in the same unit, if it is believable for the kind.
fn believable(written: &Written, number: f64, kind: Kind) -> Option<String> {
    let facts = kind.facts();
    let text = written.with(number).to_string();
    let amount = amount::parse(&text).ok()?;
    // What is given by the ton is judged by its number alone.
    let value = match amount.dimension == facts.dimension {
        true => amount.in_units_of((facts.kept_in)()),
        false => return (number > 0.0).then_some(text),
    };
    let is_some = value > 0.0 || value == 0.0 && facts.zero == Zero::Allowed;
    (is_some && value >= facts.least && value <= facts.greatest).then_some(text)
}

/// The kind of quantity a key holds.
pub(super) fn kind_of(key: &Key) -> Option<Kind> {
    match key.holds {
        Holds::Figure(kind) | Holds::Given(kind, _) | Holds::Law(kind) => Some(kind),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_those_a_person_would_take() {
        for (typed, kind, less, more) in [
            ("0.4 m3", Kind::Bucket, "0.35 m3", "0.45 m3"),
            ("14 ft3", Kind::Bucket, "13 ft3", "15 ft3"),
            ("0.1 m3", Kind::Bucket, "0.05 m3", "0.15 m3"),
            ("25 m", Kind::Way, "20 m", "30 m"),
            ("23 yd", Kind::Way, "20 yd", "25 yd"),
            ("4 m", Kind::Way, "3 m", "5 m"),
            ("130 yd", Kind::Way, "120 yd", "140 yd"),
            ("24 m3", Kind::Volume, "22 m3", "26 m3"),
            ("6 m3", Kind::Volume, "5 m3", "7 m3"),
            ("0.3 m3", Kind::Volume, "0.2 m3", "0.4 m3"),
            ("20 s", Kind::Step, "15 s", "25 s"),
            ("15 min", Kind::Stretch, "10 min", "20 min"),
            ("$28/h", Kind::HourlyCost, "$26/h", "$30/h"),
            ("0.5", Kind::SpreadShare, "0.45", "0.55"),
        ] {
            assert_eq!(around(typed, kind), [Some(less.into()), Some(more.into())], "{typed}");
        }
        assert_eq!(around("100 %", Kind::SpreadShare), [Some("90 %".into()), None]);
        assert_eq!(around("0 min", Kind::Stretch), [None, Some("5 min".into())]);
        assert_eq!(around("5 ft 6 in", Kind::Width), [None, None]);
    }

    #[test]
    fn every_unit_offered_can_be_typed() {
        for kind in [
            Kind::Way,
            Kind::Width,
            Kind::Side,
            Kind::Depth,
            Kind::Area,
            Kind::Bucket,
            Kind::Lift,
            Kind::Rate,
            Kind::Step,
        ] {
            for unit in [System::Us, System::Metric].iter().flat_map(|system| units(kind, *system)) {
                let amount = amount::parse(&format!("2 {unit}")).unwrap();
                assert_eq!(amount.dimension, kind.facts().dimension, "{unit}");
            }
        }
    }
}
