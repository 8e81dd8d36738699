//! A quantity given one of three ways: one figure; low, typical and high; a full distribution.

mod family;
pub(crate) mod keys;

#[cfg(test)]
pub(crate) use family::FAMILIES;

use crate::diagnostics::{At, Diagnostics};
use crate::document::{Table, Value};
use crate::fields::{Fields, Item};
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
    pub(crate) fn given(
        &self,
        kind: Kind,
        takes: Takes,
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<At<Given>> {
        let Value::Table(table) = &self.node.value else {
            return Some(self.at(Given::Figure(self.figure(kind, diagnostics)?.value)));
        };
        if !table.entries.contains_key("family") {
            let days = self.low_typical_high(table, kind, diagnostics)?;
            return Some(self.at(Given::Days(days)));
        }
        let (law, family) = self.family(table, kind, diagnostics)?;
        let by = self.by(table, takes, diagnostics)?;
        let mean = law.mean();
        if !self.believable(mean, kind, diagnostics) {
            return None;
        }
        if takes == Takes::NoLaw {
            let right = "write one figure or { low = ..., typical = ..., high = ... }";
            self.wrong("a distribution is not taken here", right, diagnostics);
            return None;
        }
        if takes == Takes::DaysIfSaid && by == By::Loads {
            let right = "add by = \"days\", or give the loads' differences under [spread.loads]";
            self.wrong("this cannot tell how loads differ", right, diagnostics);
            return None;
        }
        if takes == Takes::Inverted && !matches!(family.as_str(), "lognormal" | "observed" | "constant") {
            let right = "use lognormal or observed here, or give the spread of raking under [spread.loads]";
            self.wrong(format!("a rate cannot be \"{family}\""), right, diagnostics);
            return None;
        }
        if takes == Takes::Inverted
            && let Distribution::Observed(values) = &law
            && values.iter().any(|rate| *rate < kind.facts().least)
        {
            let right = "leave out what took for ever: it is a stoppage, not a pace";
            self.wrong("one of these rates is zero or next to nothing", right, diagnostics);
            return None;
        }
        Some(self.at(Given::Law(law, by)))
    }

    /// Reads the distribution of the thing itself: one figure is a constant.
    pub(crate) fn law(&self, kind: Kind, diagnostics: &mut Diagnostics<'_>) -> Option<At<Distribution>> {
        let Value::Table(table) = &self.node.value else {
            return Some(self.at(Distribution::Constant(self.figure(kind, diagnostics)?.value)));
        };
        if table.entries.contains_key("family") {
            let (law, _) = self.family(table, kind, diagnostics)?;
            if let Some(entry) = table.entries.get("by") {
                let place = self.place.key("by").at(&entry.node.span);
                diagnostics.problem(&place, &entry.node.typed, "this is not known here", "leave it out");
                return None;
            }
            return self.believable(law.mean(), kind, diagnostics).then(|| self.at(law));
        }
        let three = self.low_typical_high(table, kind, diagnostics)?;
        match fit(three) {
            Ok(law) => {
                let words = format!("{} is fitted to low, typical and high", describe(&law));
                diagnostics.assume(&self.place.path, words, FIT);
                Some(self.at(law))
            }
            Err(error) => {
                self.wrong(error.to_string(), "see the three figures", diagnostics);
                None
            }
        }
    }

    fn by(&self, table: &Table, takes: Takes, diagnostics: &mut Diagnostics<'_>) -> Option<By> {
        let usual = if takes == Takes::Days { By::Days } else { By::Loads };
        let Some(node) = table.get("by") else {
            return Some(usual);
        };
        let item = Item { node, place: self.place.key("by") };
        let by = item.word(&[("loads", By::Loads), ("days", By::Days)], diagnostics)?.value;
        if by != usual && takes == Takes::Days {
            item.wrong(
                "this cannot differ from load to load",
                "write by = \"days\" or leave it out",
                diagnostics,
            );
            return None;
        }
        Some(by)
    }

    pub(crate) fn low_typical_high(
        &self,
        table: &Table,
        kind: Kind,
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<LowTypicalHigh> {
        if THREE.iter().all(|key| !table.entries.contains_key(*key)) {
            let right = format!(
                "write one figure such as {}, or {{ low = ..., typical = ..., high = ... }}, or {{ family = ... }}",
                kind.facts().example
            );
            self.wrong("this table gives neither low, typical and high nor a family", right, diagnostics);
            return None;
        }
        let fields = Fields::open(table, self.place.clone().at(&self.node.span), &[], &THREE, diagnostics);
        let [low, typical, high] = THREE.map(|key| {
            let right = "give all three of low, typical and high";
            let item = fields.need(key, right, diagnostics)?;
            let value = item.measure(kind, diagnostics)?;
            let as_low_as_zero = key == "low" && value == 0.0 && kind.facts().zero == Zero::Allowed;
            (as_low_as_zero || item.believable(value, kind, diagnostics)).then_some(value)
        });
        let three = LowTypicalHigh { low: low?, typical: typical?, high: high? };
        if three.low > three.typical || three.typical > three.high {
            let right = "low is the least of the three and high the greatest, also for speeds and rates";
            self.wrong("low, typical and high do not rise", right, diagnostics);
            return None;
        }
        if three.low > 0.0 && three.high > 200.0 * three.low {
            self.wrong(
                "high is more than 200 times low",
                "give a range that can be planned with",
                diagnostics,
            );
            return None;
        }
        Some(three)
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
