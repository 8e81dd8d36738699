//! One table of a file, read key by key.

use crate::diagnostics::{At, Diagnostics, Place};
use crate::document::{Node, Table, Value};
use crate::nearest::nearest;
use crate::parse::clock::Days;
use crate::parse::{self, Listed, Wrong, figure, printable};
use crate::quantity::Given;
use crate::raw::{self, Holds, Key, LeftOut};
use crate::units::kind::Kind;
use sim::Distribution;
use std::ops::RangeInclusive;

/// A table whose keys are known.
pub(crate) struct Fields<'d> {
    table: &'d Table,
    /// Where it stands.
    pub(crate) place: Place,
    keys: &'static [Key],
    /// Known keys that a misspelt key probably stands for.
    mistaken: Vec<String>,
}

/// A value under a key.
#[derive(Clone)]
pub(crate) struct Item<'d> {
    /// The value.
    pub(crate) node: &'d Node,
    /// Where it stands.
    pub(crate) place: Place,
}

impl<'d> Fields<'d> {
    /// Opens a table; every key that is not among the known words is a problem.
    pub(crate) fn open(
        table: &'d Table,
        place: Place,
        keys: &'static [Key],
        known: &[&str],
        diagnostics: &mut Diagnostics<'_>,
    ) -> Self {
        let mut mistaken = Vec::new();
        for (key, entry) in table.in_order() {
            if known.contains(&key) {
                continue;
            }
            let near = nearest(key, known.iter().copied());
            let right = match (raw::instead_of(key), raw::home_of(key), near) {
                (Some(right), ..) => right.to_owned(),
                (None, Some(home), _) => format!("this key belongs {home}"),
                (None, None, Some(near)) => format!("the nearest known key is \"{near}\""),
                (None, None, None) => format!("known keys are {}", known.join(", ")),
            };
            mistaken.extend(near.map(str::to_owned));
            let shown = printable(key);
            diagnostics.problem(&place.key(&shown).at(&entry.key_span), "", "this key is not known", right);
        }
        Self { table, place, keys, mistaken }
    }

    /// Opens a value that must be a table.
    pub(crate) fn of(
        item: &Item<'d>,
        keys: &'static [Key],
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<Self> {
        let known: Vec<&str> = keys.iter().map(|key| key.name).collect();
        match &item.node.value {
            Value::Table(table) => {
                Some(Self::open(table, item.place.clone().at(&item.node.span), keys, &known, diagnostics))
            }
            other => {
                let what = format!("this is {}, where a table is wanted", other.name());
                let right = format!("give it keys of its own: {}", known.join(", "));
                diagnostics.wrong(&item.place, item.node, what, right);
                None
            }
        }
    }

    /// The value under a key, if any.
    pub(crate) fn get(&self, key: &str) -> Option<Item<'d>> {
        let entry = self.table.entries.get(key)?;
        let place = self.place.key(key).at(&entry.node.span);
        Some(Item { node: &entry.node, place })
    }

    /// The value under a key that must be there. Nothing is said if a misspelt key probably stands for it.
    pub(crate) fn need(&self, key: &str, right: &str, diagnostics: &mut Diagnostics<'_>) -> Option<Item<'d>> {
        let found = self.get(key);
        if found.is_none() && !self.mistaken.iter().any(|other| other == key) {
            diagnostics.problem(&self.place, "", format!("\"{key}\" is missing"), right);
        }
        found
    }

    /// Whether a key is given, be it misspelt.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.table.entries.contains_key(key) || self.mistaken.iter().any(|other| other == key)
    }

    /// What is known of a key. Asking for one that the table does not have is a fault of the program.
    fn holds(&self, key: &str) -> Option<Holds> {
        let holds = self.keys.iter().find(|known| known.name == key).map(|known| known.holds);
        debug_assert!(holds.is_some(), "{key} is not declared");
        holds
    }

    /// The value under a key; if there is none and there must be, that is a problem.
    pub(crate) fn item(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<Item<'d>> {
        match self.keys.iter().find(|known| known.name == key)?.left_out {
            LeftOut::Needed(right) => self.need(key, right, diagnostics),
            _ => self.get(key),
        }
    }

    /// A text under a key.
    pub(crate) fn text(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<String>> {
        let right = match self.holds(key)? {
            Holds::Name => "write a name in quotes",
            _ => "write it in quotes",
        };
        self.item(key, diagnostics)?.text(right, diagnostics)
    }

    /// One of a few words under a key.
    pub(crate) fn word<T: Copy>(
        &self,
        key: &str,
        words: &[(&str, T)],
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<At<T>> {
        self.item(key, diagnostics)?.word(words, diagnostics)
    }

    /// A quantity under a key that is one figure.
    pub(crate) fn figure(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<f64>> {
        let Holds::Figure(kind) = self.holds(key)? else { return None };
        self.item(key, diagnostics)?.figure(kind, diagnostics)
    }

    /// A quantity under a key.
    pub(crate) fn given(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<Given>> {
        let Holds::Given(kind, takes) = self.holds(key)? else { return None };
        self.item(key, diagnostics)?.given(kind, takes, diagnostics)
    }

    /// The distribution of a thing itself under a key.
    pub(crate) fn law(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<Distribution>> {
        let Holds::Law(kind) = self.holds(key)? else { return None };
        self.item(key, diagnostics)?.law(kind, diagnostics)
    }

    /// A count under a key.
    pub(crate) fn count(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<u32>> {
        let Holds::Count(least, most) = self.holds(key)? else { return None };
        self.item(key, diagnostics)?.count(least..=most, diagnostics)
    }

    /// A time of the clock under a key.
    pub(crate) fn clock(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<f64>> {
        let days = if matches!(self.holds(key)?, Holds::DayAndClock) { Days::Any } else { Days::Every };
        self.item(key, diagnostics)?.clock(days, diagnostics)
    }

    /// A table under a key.
    pub(crate) fn table(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<Fields<'d>> {
        let Holds::Table(keys) = self.holds(key)? else { return None };
        Fields::of(&self.item(key, diagnostics)?, keys, diagnostics)
    }

    /// A yes or no under a key.
    pub(crate) fn truth(&self, key: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<bool>> {
        let item = self.item(key, diagnostics)?;
        item.read(parse::truth(&item.node.value), diagnostics).map(|truth| item.at(truth))
    }
}

impl<'d> Item<'d> {
    /// A value read from it.
    pub(crate) fn at<T>(&self, value: T) -> At<T> {
        At { value, place: self.place.clone().at(&self.node.span), typed: self.node.typed.clone() }
    }

    /// A problem of it.
    pub(crate) fn wrong(
        &self,
        what: impl Into<String>,
        right: impl Into<String>,
        diagnostics: &mut Diagnostics<'_>,
    ) {
        diagnostics.wrong(&self.place, self.node, what, right);
    }

    /// What was read of it, or a problem.
    pub(crate) fn read<T>(&self, read: Result<T, Wrong>, diagnostics: &mut Diagnostics<'_>) -> Option<T> {
        read.map_err(|Wrong { what, right }| self.wrong(what, right, diagnostics)).ok()
    }

    /// A text that is not empty.
    pub(crate) fn text(&self, right: &str, diagnostics: &mut Diagnostics<'_>) -> Option<At<String>> {
        self.read(parse::text(&self.node.value, right), diagnostics).map(|text| self.at(text))
    }

    /// One of a few words.
    pub(crate) fn word<T: Copy>(
        &self,
        words: &[(&str, T)],
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<At<T>> {
        self.read(parse::word(&self.node.value, words), diagnostics).map(|word| self.at(word))
    }

    /// A count within limits.
    pub(crate) fn count(
        &self,
        limits: RangeInclusive<u32>,
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<At<u32>> {
        self.read(parse::count(&self.node.value, limits), diagnostics).map(|count| self.at(count))
    }

    /// A time of the clock, in seconds after midnight of the first day.
    pub(crate) fn clock(&self, days: Days, diagnostics: &mut Diagnostics<'_>) -> Option<At<f64>> {
        self.read(parse::clock::clock(&self.node.value, days), diagnostics).map(|seconds| self.at(seconds))
    }

    /// The entries of a list; none if it is not one.
    pub(crate) fn list(&self, listed: &Listed<'_>, diagnostics: &mut Diagnostics<'_>) -> Vec<Item<'d>> {
        let list = self.read(parse::list(&self.node.value, listed), diagnostics).unwrap_or_default();
        list.iter().map(|node| Item { node, place: self.place.clone() }).collect()
    }

    /// A quantity as one figure, in the unit its kind is kept in.
    pub(crate) fn figure(&self, kind: Kind, diagnostics: &mut Diagnostics<'_>) -> Option<At<f64>> {
        self.read(figure::is_one(&self.node.value, kind), diagnostics)?;
        let value = self.measure(kind, diagnostics)?;
        self.believable(value, kind, diagnostics).then(|| self.at(value))
    }

    /// A quantity of the right dimension, believable or not, in the unit its kind is kept in.
    pub(crate) fn measure(&self, kind: Kind, diagnostics: &mut Diagnostics<'_>) -> Option<f64> {
        let measured =
            self.read(figure::measured(&self.node.value, kind, diagnostics.density), diagnostics)?;
        if let Some((words, from)) = measured.by_the_ton(&self.node.typed, kind) {
            diagnostics.assume(&self.place.path, words, from);
        }
        diagnostics.saw_unit(measured.system);
        if let Some(currency) = &measured.currency {
            diagnostics.saw_currency(&self.place, self.node, currency);
        }
        Some(measured.value)
    }

    /// Whether a value lies within what is believable for its kind; if not, that is a problem.
    pub(crate) fn believable(&self, value: f64, kind: Kind, diagnostics: &mut Diagnostics<'_>) -> bool {
        self.read(figure::believable(value, kind), diagnostics).is_some()
    }
}
