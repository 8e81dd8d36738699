//! `[spread.days]` and `[spread.loads]`, or `spread = "none"`.

use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::ledger::{At, Ledger};
use crate::quantity::{describe, fit};
use crate::units::kind::Kind;
use sim::Distribution;
use std::collections::BTreeMap;

/// Job factors, in the model's order.
pub(crate) const DAYS: [&str; 7] = ["day", "loader_pace", "travel", "raker_pace", "fill", "need", "bulk"];
/// Load noise, in the model's order.
pub(crate) const LOADS: [&str; 6] = ["fill", "loading", "haul", "dump", "return", "raking"];

/// Whether chance is on at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Switched {
    #[default]
    Usual,
    None,
}

/// Spreads as typed: multipliers with mean 1 by key.
#[derive(Default)]
pub(crate) struct RawSpread {
    pub(crate) switched: Switched,
    pub(crate) days: BTreeMap<&'static str, At<Distribution>>,
    pub(crate) loads: BTreeMap<&'static str, At<Distribution>>,
}

impl RawSpread {
    pub(super) fn read(top: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        let Some(item) = top.get("spread") else {
            return Self::default();
        };
        if let Value::Text(_) = item.node.value {
            let words = [("usual", Switched::Usual), ("none", Switched::None)];
            let switched = item.word(&words, ledger).map(|at| at.value).unwrap_or_default();
            return Self { switched, ..Self::default() };
        }
        let Some(fields) = Fields::of(&item, &["days", "loads"], ledger) else {
            return Self::default();
        };
        Self {
            switched: Switched::Usual,
            days: entries(&fields, "days", &DAYS, ledger),
            loads: entries(&fields, "loads", &LOADS, ledger),
        }
    }
}

fn entries(
    fields: &Fields<'_>,
    name: &str,
    keys: &[&'static str],
    ledger: &mut Ledger<'_>,
) -> BTreeMap<&'static str, At<Distribution>> {
    let Some(fields) = fields.get(name).and_then(|item| Fields::of(&item, keys, ledger)) else {
        return BTreeMap::new();
    };
    let read = keys.iter().filter_map(|key| Some((*key, multiplier(&fields.get(key)?, ledger)?)));
    read.collect()
}

fn multiplier(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<At<Distribution>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case("none") => Some(item.at(Distribution::Constant(1.0))),
        Value::Text(text) if text.trim().starts_with(char::is_alphabetic) => {
            let right = "write \"none\", or a share such as \"15 %\"";
            item.wrong("this word is not known here", right, ledger);
            None
        }
        Value::Table(table) if !table.entries.contains_key("family") => {
            let three = item.low_typical_high(table, Kind::Multiple, ledger)?;
            let law = match fit(three) {
                Ok(law) => law.relative(),
                Err(error) => {
                    item.wrong(error.to_string(), "see the three figures", ledger);
                    return None;
                }
            };
            let words = format!("{} is fitted to low, typical and high and scaled to mean 1", describe(&law));
            ledger.assume(&item.place.path, words, crate::quantity::FIT);
            Some(item.at(law))
        }
        Value::Table(_) => {
            let law = item.law(Kind::Multiple, ledger)?;
            if law.value.mean() <= 0.0 {
                item.wrong("the mean of this is zero", "give a distribution with a mean above 0", ledger);
                return None;
            }
            let relative = law.value.relative();
            Some(item.at(relative))
        }
        _ => {
            let cv = item.figure(Kind::Spread, ledger)?.value;
            let constant = cv == 0.0;
            let law = if constant {
                Distribution::Constant(1.0)
            } else {
                Distribution::Lognormal { mean: 1.0, cv }
            };
            Some(item.at(law))
        }
    }
}
