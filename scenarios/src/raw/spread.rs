//! `[spread.days]` and `[spread.loads]`, or `spread = "none"`.

use crate::diagnostics::{At, Read};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::key::Key;
use crate::key::spread::{DAYS_KEYS, KEYS, LOADS_KEYS};
use crate::units::kind::Kind;
use sim::Distribution;
use std::collections::BTreeMap;

const SWITCHED: &[(&str, Switched)] = &[("usual", Switched::Usual), ("none", Switched::None)];

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
