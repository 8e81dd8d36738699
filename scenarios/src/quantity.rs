//! A quantity given one of three ways: one figure; low, typical and high; a full distribution.

mod family;
pub(crate) mod keys;

#[cfg(test)]
pub(crate) use family::FAMILIES;

use crate::diagnostics::{At, Read};
use crate::document::{Table, Value};
use crate::fields::Item;
use crate::units::kind::{Kind, Zero};
use keys::THREE;
use sim::{Distribution, FitError, LowTypicalHigh};

/// A quantity as given, in the unit its kind is kept in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Given {
    /// One figure.
    Figure(f64),
    /// How days differ.
    Days(LowTypicalHigh),
    /// A full distribution.
    Law(Distribution, By),
}

/// What a full distribution tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum By {
    /// How loads differ.
    Loads,
    /// How days differ.
    Days,
}

/// Which ways of giving a quantity are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Takes {
    /// All three; a distribution tells how loads differ unless it says `by = "days"`.
    Loads,
    /// All three; a distribution always tells how days differ.
    Days,
    /// One figure; low, typical and high; a distribution only with `by = "days"`.
    DaysIfSaid,
    /// One figure or low, typical and high.
    NoLaw,
    /// As `Loads`, but of the distributions only those whose inverse is known.
    Inverted,
}

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

/// Where fits come from.
pub(crate) const FIT: &str =
    "low and high taken as the 10th and 90th percentile, typical as the most likely value";

/// The distribution with low and high as 10th and 90th percentile and typical as mode. A low of 0 is taken as the least
/// that can be: then a PERT from 0 whose 90th percentile is high.
///
/// # Errors
/// As [`LowTypicalHigh::fit`].
pub(crate) fn fit(three: LowTypicalHigh) -> Result<Distribution, FitError> {
    if three.low > 0.0 || three.high == 0.0 {
        return if three.high == 0.0 { Ok(Distribution::Constant(0.0)) } else { three.fit() };
    }
    let from_zero = |greatest| Distribution::Pert { least: 0.0, mode: three.typical, greatest };
    let (mut low, mut high) = (three.high, three.high * 4.0);
    for _ in 0..60 {
        let greatest = f64::midpoint(low, high);
        if from_zero(greatest).quantile(0.9) < three.high { low = greatest } else { high = greatest }
    }
    Ok(from_zero(f64::midpoint(low, high)))
}

/// What a distribution is called.
pub(crate) fn describe(law: &Distribution) -> &'static str {
    match law {
        Distribution::Constant(_) => "a constant",
        Distribution::Uniform { .. } => "a uniform distribution",
        Distribution::Triangular { .. } => "a triangular distribution",
        Distribution::Pert { .. } => "a PERT distribution",
        Distribution::Normal { .. } => "a normal distribution",
        Distribution::Lognormal { .. } => "a lognormal distribution",
        Distribution::Gamma { .. } => "a gamma distribution",
        Distribution::Weibull { .. } => "a Weibull distribution",
        Distribution::Exponential { .. } => "an exponential distribution",
        Distribution::Observed(_) => "the distribution of the observed values",
    }
}

#[cfg(test)]
mod tests;
