//! A quantity given one of three ways: one figure; low, typical and high; a full distribution.

mod family;
pub(crate) mod given;
pub(crate) mod keys;

#[cfg(test)]
pub(crate) use family::FAMILIES;

use crate::diagnostics::{At, Read};
use crate::document::{Table, Value};
use crate::fields::Item;
use crate::key::Takes;
use crate::units::kind::{Kind, Zero};
use given::{By, FIT, Given, describe, fit};
use keys::THREE;
use sim::{Distribution, LowTypicalHigh};

impl<'d> Item<'d> {
    /// Reads a quantity.
    pub(crate) fn given(&self, kind: Kind, takes: Takes) -> Read<At<Given>> {
        let Value::Table(table) = &self.node.value else {
            return self.figure(kind).map(|figure| self.at(Given::Figure(figure.value)));
        };
        if !table.entries.contains_key("family") {
            return self.low_typical_high(table, kind).map(|days| self.at(Given::Days(days)));
        }
        Read::of(|diagnostics| {
            let (law, family) = self.family(table, kind).join(diagnostics)?;
            let by = self.by(table, takes).join(diagnostics)?;
            self.believable(law.mean(), kind).join(diagnostics)?;
            match not_taken(&law, &family, by, kind, takes) {
                None => Some(self.at(Given::Law(law, by))),
                Some((what, right)) => self.wrong(what, right).join(diagnostics),
            }
        })
    }

    /// Reads the distribution of the thing itself: one figure is a constant.
    pub(crate) fn law(&self, kind: Kind) -> Read<At<Distribution>> {
        let Value::Table(table) = &self.node.value else {
            return self.figure(kind).map(|figure| self.at(Distribution::Constant(figure.value)));
        };
        if !table.entries.contains_key("family") {
            return self.fitted(table, kind, "").map(|law| self.at(law));
        }
        self.family(table, kind).and_then(|(law, _)| match table.entries.get("by") {
            Some(entry) => {
                self.inner(&entry.node, self.place.key("by")).wrong("this is not known here", "leave it out")
            }
            None => self.believable(law.mean(), kind).map(|_| self.at(law)),
        })
    }

    /// The distribution fitted to low, typical and high; a multiplier is also scaled to mean 1.
    pub(crate) fn fitted(&self, table: &'d Table, kind: Kind, scaled: &str) -> Read<Distribution> {
        Read::of(|diagnostics| {
            let three = self.low_typical_high(table, kind).join(diagnostics)?;
            match fit(three) {
                Ok(law) => {
                    let words = format!("{} is fitted to low, typical and high{scaled}", describe(&law));
                    diagnostics.assume(&self.place.path, words, FIT);
                    Some(law)
                }
                Err(error) => self.wrong(error.to_string(), "see the three figures").join(diagnostics),
            }
        })
    }

    fn by(&self, table: &'d Table, takes: Takes) -> Read<By> {
        let usual = if takes == Takes::Days { By::Days } else { By::Loads };
        let Some(node) = table.get("by") else {
            return Read::made(usual);
        };
        let item = self.inner(node, self.place.key("by"));
        item.word(&[("loads", By::Loads), ("days", By::Days)]).and_then(|by| {
            if by.value != usual && takes == Takes::Days {
                let right = "write by = \"days\" or leave it out";
                return item.wrong("this cannot differ from load to load", right);
            }
            Read::made(by.value)
        })
    }

    fn low_typical_high(&self, table: &'d Table, kind: Kind) -> Read<LowTypicalHigh> {
        if THREE.iter().all(|key| !table.entries.contains_key(*key)) {
            let right = format!(
                "write one figure such as {}, or {{ low = ..., typical = ..., high = ... }}, or {{ family = ... }}",
                kind.facts().example
            );
            return self.wrong("this table gives neither low, typical and high nor a family", right);
        }
        let three = self.table_of(table, &[], &THREE, |fields| {
            let [low, typical, high] = THREE.map(|key| {
                let item = fields.need(key, "give all three of low, typical and high")?;
                let value = fields.take(item.measure(kind))?;
                let as_low_as_zero = key == "low" && value == 0.0 && kind.facts().zero == Zero::Allowed;
                if as_low_as_zero { Some(value) } else { fields.take(item.believable(value, kind)) }
            });
            Some(LowTypicalHigh { low: low?, typical: typical?, high: high? })
        });
        three.and_then(|three| {
            if three.low > three.typical || three.typical > three.high {
                let right = "low is the least of the three and high the greatest, also for speeds and rates";
                return self.wrong("low, typical and high do not rise", right);
            }
            if three.low > 0.0 && three.high > 200.0 * three.low {
                return self
                    .wrong("high is more than 200 times low", "give a range that can be planned with");
            }
            Read::made(three)
        })
    }
}

/// Why a distribution is not taken where it stands, and what would be.
fn not_taken(
    law: &Distribution,
    family: &str,
    by: By,
    kind: Kind,
    takes: Takes,
) -> Option<(String, &'static str)> {
    let none = |rates: &[f64]| rates.iter().any(|rate| *rate < kind.facts().least);
    match (takes, law) {
        (Takes::NoLaw, _) => Some((
            "a distribution is not taken here".into(),
            "write one figure or { low = ..., typical = ..., high = ... }",
        )),
        (Takes::DaysIfSaid, _) if by == By::Loads => Some((
            "this cannot tell how loads differ".into(),
            "add by = \"days\", or give the loads' differences under [spread.loads]",
        )),
        (Takes::Inverted, Distribution::Observed(rates)) if none(rates) => Some((
            "one of these rates is zero or next to nothing".into(),
            "leave out what took for ever: it is a stoppage, not a pace",
        )),
        (Takes::Inverted, _) if !matches!(family, "lognormal" | "observed" | "constant") => Some((
            format!("a rate cannot be \"{family}\""),
            "use lognormal or observed here, or give the spread of raking under [spread.loads]",
        )),
        _ => None,
    }
}

#[cfg(test)]
mod tests;
