//! What the parts of a job are made with.

use crate::defaults::Usual;
use crate::diagnostics::{At, Read};
use crate::quantity::given::{Given, fit};
use crate::raw::{Raw, Switched};
use crate::units::System;
use sim::{Distribution, LowTypicalHigh};

/// What all parts of a job are made with.
pub(super) struct Makings<'r> {
    pub(super) raw: &'r Raw,
    pub(super) system: System,
}

impl Makings<'_> {
    /// Whether anything has to be passed on the way to some zone.
    pub(super) fn has_passes_on_a_way(&self) -> bool {
        self.raw.zones.iter().flat_map(|zone| &zone.ways).any(|way| !way.passes.is_empty())
    }

    /// Whether this has to be passed on the way to some zone.
    pub(super) fn is_passed(&self, pass: &str) -> bool {
        let entries = self.raw.zones.iter().flat_map(|zone| &zone.ways).flat_map(|way| &way.passes);
        entries.into_iter().any(|entry| entry.pass.value == pass)
    }

    /// Number of loaders, copies counted.
    pub(super) fn loaders(&self) -> u32 {
        self.raw.loaders.iter().map(|loader| loader.count.as_ref().map_or(1, |count| count.value)).sum()
    }

    /// A distribution of a thing itself, at its mean if chance is switched off.
    pub(super) fn law(&self, law: &Distribution) -> Distribution {
        match self.raw.spread.switched {
            Switched::Usual => law.clone(),
            Switched::None => Distribution::Constant(law.mean()),
        }
    }
}

/// Whether a quantity is a time or volume itself, or a rate that is turned into a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sense {
    Direct,
    Inverted,
}

/// The mean of a quantity as given; of a rate or speed the one that has the mean time.
pub(super) fn mean(given: &Given, sense: Sense) -> f64 {
    match (given, sense) {
        (Given::Figure(figure), _) => *figure,
        (Given::Days(three), Sense::Direct) => fit(*three).map_or(three.typical, |law| law.mean()),
        (Given::Days(three), Sense::Inverted) => {
            fit(inverted(*three)).map_or(three.typical, |law| 1.0 / law.mean())
        }
        (Given::Law(law, _), Sense::Direct) => law.mean(),
        (Given::Law(law, _), Sense::Inverted) => 1.0 / inverse(law).mean(),
    }
}

/// Low, typical and high of one over a quantity.
pub(super) fn inverted(three: LowTypicalHigh) -> LowTypicalHigh {
    LowTypicalHigh { low: 1.0 / three.high, typical: 1.0 / three.typical, high: 1.0 / three.low }
}

/// The mean of a quantity, or the default, which is then assumed.
pub(super) fn or_usual(
    given: Option<&At<Given>>,
    sense: Sense,
    usual: &Usual,
    key: String,
    words: impl FnOnce(f64) -> String,
) -> Read<f64> {
    match given {
        Some(given) => Read::made(mean(&given.value, sense)),
        None => Read::assumed(usual.value, key, words(usual.value), usual.from),
    }
}

/// The law of one over the quantity, for the families that have one here.
pub(super) fn inverse(law: &Distribution) -> Distribution {
    match law {
        Distribution::Constant(value) => Distribution::Constant(1.0 / value),
        Distribution::Lognormal { mean, cv } => {
            Distribution::Lognormal { mean: (1.0 + cv * cv) / mean, cv: *cv }
        }
        Distribution::Observed(values) => Distribution::Observed(values.iter().map(|v| 1.0 / v).collect()),
        other => Distribution::Constant(1.0 / other.mean()),
    }
}
