//! `[spread.days]` and `[spread.loads]`, or `spread = "none"`.

use super::key::{Holds, Key, LeftOut, key};
use crate::defaults::{DAYS, LOADS};
use crate::diagnostics::{At, Diagnostics};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::quantity::{describe, fit};
use crate::units::kind::Kind;
use sim::Distribution;
use std::collections::BTreeMap;

/// Job factors, in the model's order.
pub(super) const DAYS_KEYS: &[Key] = &[
    factor(DAYS[0], "\"10 %\"", "How whole days differ for everybody: weather, light, ground."),
    factor(DAYS[1], "\"10 %\"", "How the pace of loading and dumping differs."),
    factor(DAYS[2], "\"10 %\"", "How driving times differ."),
    factor(DAYS[3], "\"10 %\"", "How the pace of raking differs."),
    factor(DAYS[4], "\"10 %\"", "How full buckets are on the whole."),
    factor(DAYS[5], "\"10 %\"", "What the ground really takes, compared with what was measured."),
    factor(DAYS[6], "\"10 %\"", "What a truck really brings, compared with what was ordered."),
];
/// Load noise, in the model's order.
pub(super) const LOADS_KEYS: &[Key] = &[
    factor(LOADS[0], "\"20 %\"", "How full the bucket is."),
    factor(LOADS[1], "\"20 %\"", "How loading times differ."),
    factor(LOADS[2], "\"20 %\"", "How loaded trips differ."),
    factor(LOADS[3], "\"20 %\"", "How dumping times differ."),
    factor(LOADS[4], "\"20 %\"", "How empty trips differ."),
    factor(LOADS[5], "\"20 %\"", "How the raking of equal heaps differs."),
];
pub(super) const KEYS: &[Key] = &[
    key(
        "days",
        Holds::Table(DAYS_KEYS),
        LeftOut::Taken("the built-in table, or what low, typical and high of the quantities say"),
        "{ day = \"10 %\" }",
        "How one day differs from the next; the same for all loads of a day.",
    ),
    key(
        "loads",
        Holds::Table(LOADS_KEYS),
        LeftOut::Taken("the built-in table, or the distributions of the quantities"),
        "{ loading = \"20 %\" }",
        "How one load differs from the next on the same day.",
    ),
];
const SWITCHED: &[(&str, Switched)] = &[("usual", Switched::Usual), ("none", Switched::None)];

/// A row of the built-in table as a key.
const fn factor(row: (&'static str, f64, &str), example: &'static str, means: &'static str) -> Key {
    key(row.0, Holds::Spread, LeftOut::Differs(row.1), example, means)
}

/// Whether chance is on at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Switched {
    #[default]
    Usual,
    None,
}

/// Spreads as typed: multipliers with mean 1 by key.
#[derive(Debug, Default)]
pub(crate) struct RawSpread {
    pub(crate) switched: Switched,
    pub(crate) days: BTreeMap<&'static str, At<Distribution>>,
    pub(crate) loads: BTreeMap<&'static str, At<Distribution>>,
}

impl RawSpread {
    pub(super) fn read(top: &Fields<'_>, diagnostics: &mut Diagnostics<'_>) -> Self {
        let Some(item) = top.get("spread") else {
            return Self::default();
        };
        if let Value::Text(_) = item.node.value {
            let switched = item.word(SWITCHED, diagnostics).map(|at| at.value).unwrap_or_default();
            return Self { switched, ..Self::default() };
        }
        let Some(fields) = Fields::of(&item, KEYS, diagnostics) else {
            return Self::default();
        };
        Self {
            switched: Switched::Usual,
            days: entries(&fields, "days", DAYS_KEYS, diagnostics),
            loads: entries(&fields, "loads", LOADS_KEYS, diagnostics),
        }
    }
}

fn entries(
    fields: &Fields<'_>,
    name: &str,
    keys: &'static [Key],
    diagnostics: &mut Diagnostics<'_>,
) -> BTreeMap<&'static str, At<Distribution>> {
    let Some(fields) = fields.table(name, diagnostics) else {
        return BTreeMap::new();
    };
    let read =
        keys.iter().filter_map(|key| Some((key.name, multiplier(&fields.get(key.name)?, diagnostics)?)));
    read.collect()
}

fn multiplier(item: &Item<'_>, diagnostics: &mut Diagnostics<'_>) -> Option<At<Distribution>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case("none") => Some(item.at(Distribution::Constant(1.0))),
        Value::Text(text) if text.trim().starts_with(char::is_alphabetic) => {
            let right = "write \"none\", or a share such as \"15 %\"";
            item.wrong("this word is not known here", right, diagnostics);
            None
        }
        Value::Table(table) if !table.entries.contains_key("family") => {
            let three = item.low_typical_high(table, Kind::Multiple, diagnostics)?;
            let law = match fit(three) {
                Ok(law) => law.relative(),
                Err(error) => {
                    item.wrong(error.to_string(), "see the three figures", diagnostics);
                    return None;
                }
            };
            let words = format!("{} is fitted to low, typical and high and scaled to mean 1", describe(&law));
            diagnostics.assume(&item.place.path, words, crate::quantity::FIT);
            Some(item.at(law))
        }
        Value::Table(_) => {
            let law = item.law(Kind::Multiple, diagnostics)?;
            if law.value.mean() <= 0.0 {
                item.wrong(
                    "the mean of this is zero",
                    "give a distribution with a mean above 0",
                    diagnostics,
                );
                return None;
            }
            let relative = law.value.relative();
            Some(item.at(relative))
        }
        _ => {
            let cv = item.figure(Kind::Spread, diagnostics)?.value;
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
