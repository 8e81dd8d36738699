//! `[spread.days]` and `[spread.loads]`, or `spread = "none"`.

use super::key::{Holds, Key, LeftOut, key};
use crate::defaults::{DAYS, LOADS};
use crate::diagnostics::{At, Read};
use crate::document::Value;
use crate::fields::{Fields, Item};
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
#[derive(Clone, Debug, Default)]
pub(crate) struct RawSpread {
    pub(crate) switched: Switched,
    pub(crate) days: BTreeMap<&'static str, At<Distribution>>,
    pub(crate) loads: BTreeMap<&'static str, At<Distribution>>,
}

impl RawSpread {
    pub(super) fn read(item: &Item<'_>) -> Read<Self> {
        if let Value::Text(_) = item.node.value {
            return item.word(SWITCHED).map(|at| Self { switched: at.value, ..Self::default() });
        }
        item.table(KEYS, |fields| {
            let (days, loads) = (entries(fields, "days", DAYS_KEYS), entries(fields, "loads", LOADS_KEYS));
            Some(Self { switched: Switched::Usual, days, loads })
        })
    }
}

fn entries(
    fields: &mut Fields<'_>,
    name: &str,
    keys: &'static [Key],
) -> BTreeMap<&'static str, At<Distribution>> {
    let read = |fields: &mut Fields<'_>| {
        let one = |key: &Key| Some((key.name, fields.under(key.name, multiplier)?));
        Some(keys.iter().filter_map(one).collect())
    };
    fields.table(name, read).unwrap_or_default()
}

fn multiplier(item: &Item<'_>) -> Read<At<Distribution>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case("none") => {
            Read::made(item.at(Distribution::Constant(1.0)))
        }
        Value::Text(text) if text.trim().starts_with(char::is_alphabetic) => {
            item.wrong("this word is not known here", "write \"none\", or a share such as \"15 %\"")
        }
        Value::Table(table) if !table.entries.contains_key("family") => {
            item.fitted(table, Kind::Multiple, " and scaled to mean 1").map(|law| item.at(law.relative()))
        }
        Value::Table(_) => item.law(Kind::Multiple).and_then(|law| match law.value.mean() > 0.0 {
            true => Read::made(item.at(law.value.relative())),
            false => item.wrong("the mean of this is zero", "give a distribution with a mean above 0"),
        }),
        _ => item.figure(Kind::Spread).map(|cv| {
            item.at(match cv.value {
                0.0 => Distribution::Constant(1.0),
                cv => Distribution::Lognormal { mean: 1.0, cv },
            })
        }),
    }
}
