//! Figures as the sentence says them, and as they would be typed.

use super::steps::{around, units};
use crate::diagnostics::At;
use crate::document::{self, Value};
use crate::quantity::given::Given;
use crate::units::kind::Kind;
use crate::units::{self, System, amount, figure};
use crate::vary::Written;
use sim::Distribution;

/// A quantity with how it was typed.
pub(super) struct Quantity {
    pub(super) typed: String,
    pub(super) size: Size,
}

/// How much it is, in the unit its kind is kept in.
#[derive(Clone, Copy)]
pub(super) enum Size {
    One(f64),
    /// Low, typical and high.
    Three([f64; 3]),
    /// The mean of a distribution.
    Law(f64),
}

/// What can be told as a quantity.
pub(super) trait Told {
    fn size(&self) -> Size;
}

impl Told for f64 {
    fn size(&self) -> Size {
        Size::One(*self)
    }
}

impl Told for Given {
    fn size(&self) -> Size {
        match self {
            Given::Figure(figure) => Size::One(*figure),
            Given::Days(three) => Size::Three([three.low, three.typical, three.high]),
            Given::Law(law, _) => Size::Law(law.mean()),
        }
    }
}

impl Told for Distribution {
    fn size(&self) -> Size {
        match self {
            Distribution::Constant(figure) => Size::One(*figure),
            law => Size::Law(law.mean()),
        }
    }
}

impl Quantity {
    pub(super) fn of<T: Told>(at: &At<T>, text: &str) -> Self {
        Self { typed: typed(at, text), size: at.value.size() }
    }

    /// As the sentence says it.
    pub(super) fn words(&self, kind: Kind, system: System, currency: &str) -> String {
        let shown = |value: f64| shown(value, kind, system, currency);
        match (self.size, self.three()) {
            (Size::One(value), _) => self.in_its_unit(value, kind, system).unwrap_or_else(|| shown(value)),
            (Size::Three(_) | Size::Law(_), Some([low, _, high])) if both(&low, &high, system).is_some() => {
                both(&low, &high, system).unwrap_or_default()
            }
            (Size::Three([low, _, high]), _) => {
                let (low, high) = (shown(low), shown(high));
                let unit = |text: &str| text.split_once(' ').map(|(_, unit)| unit.to_owned());
                match unit(&low).filter(|one| unit(&high).as_ref() == Some(one)) {
                    Some(unit) => format!("{} to {high}", low.trim_end_matches(&unit).trim_end()),
                    None => format!("{low} to {high}"),
                }
            }
            (Size::Law(mean), _) => format!("about {}", shown(mean)),
        }
    }

    /// The next values down and up; low, typical and high go together.
    pub(super) fn around(&self, kind: Kind) -> [Option<String>; 2] {
        match (self.size, self.three()) {
            (Size::One(_), _) => around(&self.typed, kind),
            (Size::Three(_) | Size::Law(_), Some(three)) => {
                around(&three[1], kind).map(|new| moved(&three, &new?))
            }
            _ => [None, None],
        }
    }

    /// As typed, where that is what it is: a word for several values is typed once for all of them.
    fn in_its_unit(&self, value: f64, kind: Kind, system: System) -> Option<String> {
        let facts = kind.facts();
        let typed = amount::parse(&self.typed).ok()?;
        let is_other = typed.dimension == facts.dimension
            && (typed.in_units_of((facts.kept_in)()) - value).abs() > 1e-9 * value.abs();
        if is_other { None } else { as_typed(&self.typed, system) }
    }

    /// Low, typical and high as typed.
    fn three(&self) -> Option<[String; 3]> {
        if !self.typed.starts_with('{') {
            return None;
        }
        let Ok(Value::Table(three)) = document::alone(&self.typed) else { return None };
        let part = |key| {
            let node = three.get(key)?;
            match &node.value {
                Value::Text(text) => Some(text.clone()),
                _ => Some(node.typed.clone()),
            }
        };
        Some([part("low")?, part("typical")?, part("high")?])
    }
}

/// A value as a person would type it. What a change set stands behind the end of the text and is known by its excerpt alone.
pub(super) fn typed<T>(at: &At<T>, text: &str) -> String {
    let span = at.place.span.clone().unwrap_or_default();
    let written = text.get(span).filter(|written| !written.is_empty());
    crate::edit::typed(written.unwrap_or(&at.typed))
}

/// All three moved with the typical one.
fn moved(three: &[String; 3], new: &str) -> Option<String> {
    let number = |text: &str| Written::parse(text).ok();
    let factor = number(new)?.number / number(&three[1])?.number;
    let one = |at: usize| {
        let was = number(&three[at])?;
        let new = figure(was.number * factor).replace(',', "").parse().ok()?;
        Some(was.with(new).to_string())
    };
    Some(format!("{{ low = \"{}\", typical = \"{new}\", high = \"{}\" }}", one(0)?, one(2)?))
}

/// A figure as typed, rounded, if its unit belongs to the system in which it is to be said.
fn as_typed(typed: &str, system: System) -> Option<String> {
    let amount = amount::parse(typed).ok().filter(|amount| amount.system.is_none_or(|its| its == system))?;
    let written =
        Written::parse(typed).ok().filter(|written| !written.is_count() && !written.after.is_empty())?;
    let has_unit = written.after.starts_with('/') || amount::parse_unit(&written.after).is_ok();
    if !has_unit || amount.currency.is_some() {
        return None;
    }
    let Written { number, after, .. } = written;
    Some(format!("{} {after}", figure(number)))
}

/// `7 to 9.5 cm`, where both are typed in the same unit of the system.
fn both(low: &str, high: &str, system: System) -> Option<String> {
    let [low, high] = [as_typed(low, system)?, as_typed(high, system)?];
    let ((number, unit), (_, other)) = (low.split_once(' ')?, high.split_once(' ')?);
    (unit == other).then(|| format!("{number} to {high}"))
}

/// From here on a width is said as a length \[m\].
const LONG: f64 = 2.0;
/// Up to here a step of the work is said in seconds.
const SECONDS: f64 = 600.0;
const LITRES_IN_A_GALLON: f64 = crate::units::exact::gallons() * 1000.0;

/// A value as it is said in a system of units.
pub(super) fn shown(value: f64, kind: Kind, system: System, currency: &str) -> String {
    let money = |value: f64, unit: &str| format!("{}{unit}", units::money(value, currency));
    match kind {
        Kind::Way | Kind::Walk => units::way(value, system),
        Kind::Width if system == System::Metric && value >= 1.0 || value >= LONG => {
            units::length(value, system)
        }
        Kind::Width | Kind::Depth => units::short_length(value, system),
        Kind::Side => units::length(value, system),
        Kind::Area => units::area(value, system),
        Kind::Volume | Kind::Delivery => units::volume(value, system),
        Kind::Bucket => units::bucket(value, system),
        Kind::Lift | Kind::BucketMass => units::mass(value, system),
        Kind::Density => units::density(value, system),
        Kind::Speed => units::speed(value, system),
        Kind::Rate => units::rate(value, system),
        Kind::Step if (10.0..SECONDS).contains(&value) => format!("{value:.0} s"),
        Kind::Step | Kind::Stretch | Kind::Gap => units::duration(value),
        Kind::HourlyCost => money(value, "/h"),
        Kind::Price => money(value, ""),
        Kind::PricePerVolume if system == System::Us => {
            money(value * crate::units::exact::cubic_yards(), "/yd3")
        }
        Kind::PricePerVolume => money(value, "/m3"),
        Kind::FuelPrice if system == System::Us => money(value * LITRES_IN_A_GALLON, "/gal"),
        Kind::FuelPrice => money(value, "/l"),
        _ => format!("{} %", figure(value * 100.0)),
    }
}

/// A value as it would be typed: in the first unit offered.
pub(super) fn typed_in(value: f64, kind: Kind, system: System, currency: &str) -> String {
    match kind {
        Kind::Rate => units::rate(value, system).replace(',', ""),
        Kind::Step | Kind::Stretch => {
            let unit = units(kind, system)[0];
            let size = amount::parse_unit(unit).map_or(1.0, |unit| unit.in_units_of(1.0));
            format!("{} {unit}", figure(value / size))
        }
        _ => shown(value, kind, system, currency).replace(',', ""),
    }
}
