//! Quantities that are one figure.

use super::Wrong;
use crate::document::Value;
use crate::units::amount::{self, Amount};
use crate::units::amount_error::AmountError;
use crate::units::dimension::Dimension;
use crate::units::kind::{Kind, Zero};
use crate::units::{self, System, volume_number};

/// What is less, but not zero, cannot be calculated with, in whatever unit it is kept.
const NEXT_TO_NOTHING: f64 = 1e-9;

/// A quantity of the right dimension, believable or not.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Measured {
    /// In the unit its kind is kept in.
    pub(crate) value: f64,
    /// The system its unit belongs to, if to one only.
    pub(crate) system: Option<System>,
    /// The currency typed.
    pub(crate) currency: Option<String>,
    /// The density by which it was turned from tons into a volume \[kg/m3\].
    pub(crate) density: Option<f64>,
}

/// A believable quantity.
///
/// # Errors
/// As [`measured`] and [`believable`].
pub(crate) fn figure(value: &Value, kind: Kind) -> Result<Measured, Wrong> {
    is_one(value, kind)?;
    let measured = measured(value, kind, None)?;
    believable(measured.value, kind).map(|()| measured)
}

/// Whether a value can be one figure at all.
pub(crate) fn is_one(value: &Value, kind: Kind) -> Result<(), Wrong> {
    match value {
        Value::Table(_) => Err(Wrong::new(
            "a range or a distribution is not taken here",
            format!("write one figure, such as {}", kind.facts().example),
        )),
        _ => Ok(()),
    }
}

/// A quantity of the right dimension; what is given by the ton is turned into a volume by the density \[kg/m3\].
pub(crate) fn measured(value: &Value, kind: Kind, density: Option<f64>) -> Result<Measured, Wrong> {
    let facts = kind.facts();
    let (wanted, example) = (facts.dimension, facts.example);
    let wrong = |what: String| Wrong::new(what, format!("{} is wanted, such as {example}", wanted.name()));
    let read = match value {
        Value::Text(text) => amount::parse(text),
        Value::Whole(number) => Ok(amount::bare(*number as f64)),
        Value::Number(number) if number.is_finite() => Ok(amount::bare(*number)),
        Value::Number(_) => Err(AmountError::NotFinite),
        other => return Err(wrong(format!("this is {}", other.name()))),
    };
    let amount = read.map_err(|error| wrong(error.what()))?;
    let kept_in = (facts.kept_in)();
    let (value, density) = if amount.dimension == wanted {
        (amount.in_units_of(kept_in), None)
    } else if !by_the_ton(kind, &amount) {
        return Err(wrong(mismatch(&amount, wanted)));
    } else if let Some(density) = density {
        (amount.by_volume(wanted, density).unwrap_or(f64::NAN) / kept_in, Some(density))
    } else {
        return Err(Wrong::new(
            "tons are turned into a volume by the density, which is not known",
            format!(
                "give density under [material], as in \"1500 kg/m3\", or write {} such as {example}",
                wanted.name()
            ),
        ));
    };
    Ok(Measured { value, system: amount.system, currency: amount.currency, density })
}

/// What is wrong with a value that is not believable for its kind.
pub(crate) fn believable(value: f64, kind: Kind) -> Result<(), Wrong> {
    let facts = kind.facts();
    let what = if !value.is_finite() {
        "this is not a finite number"
    } else if value < 0.0 {
        "this is less than nothing"
    } else if value == 0.0 && facts.zero == Zero::Refused {
        "this may not be zero"
    } else if value < facts.least || value > 0.0 && value < NEXT_TO_NOTHING {
        "this is absurdly small"
    } else if value > facts.greatest * (1.0 + 1e-12) {
        "this is absurdly large"
    } else {
        return Ok(());
    };
    let [low, high] = facts.limits;
    Err(Wrong::new(what, format!("it may be from {low} to {high}, such as {}", facts.example)))
}

impl Measured {
    /// How what was given by the ton is taken, and by which density, in words.
    pub(crate) fn by_the_ton(&self, typed: &str, kind: Kind) -> Option<(String, String)> {
        let density = self.density?;
        let currency = self.currency.as_deref().unwrap_or_default();
        let value = self.value * (kind.facts().kept_in)();
        let show = |system: System| match kind {
            Kind::PricePerVolume => {
                let (unit, size) =
                    if system == System::Us { ("yd3", volume_number(1.0, system).0) } else { ("m3", 1.0) };
                format!("{}/{unit}", units::money(value / size, currency))
            }
            _ => units::volume(value, system),
        };
        let weighs = [System::Metric, System::Us].map(|system| units::density(density, system));
        Some((
            format!("{typed} is taken as {} ({})", show(System::Metric), show(System::Us)),
            format!("by the material's density, {} ({})", weighs[0], weighs[1]),
        ))
    }
}

/// Whether a kind of volume or price is also given by the ton.
fn by_the_ton(kind: Kind, amount: &Amount) -> bool {
    match kind {
        Kind::Volume | Kind::Delivery => amount.is_in_tons(),
        Kind::PricePerVolume => amount.by_volume(Dimension::MONEY_PER_VOLUME, 1.0).is_some(),
        _ => false,
    }
}

fn mismatch(amount: &Amount, wanted: Dimension) -> String {
    if amount.dimension == Dimension::NUMBER {
        let money = [Dimension::MONEY, Dimension::MONEY_PER_TIME, Dimension::MONEY_PER_VOLUME];
        return if money.contains(&wanted) {
            "the currency is missing".into()
        } else {
            AmountError::NoUnit.what()
        };
    }
    let what = format!("this is {}", amount.dimension.name());
    match (amount.dimension, wanted) {
        (Dimension::LENGTH, Dimension::VOLUME) => {
            format!("{what} (a \"yard\" of material is a cubic yard, written yd3)")
        }
        (Dimension::LENGTH, Dimension::TIME) => format!("{what} (m is for metres, minutes are written min)"),
        _ => what,
    }
}
