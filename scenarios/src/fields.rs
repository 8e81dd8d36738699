//! One table of a file, read key by key.

use crate::document::{Node, Table, Value};
use crate::ledger::{At, Ledger, Place};
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
        ledger: &mut Ledger<'_>,
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
            ledger.problem(&place.key(&shown).at(&entry.key_span), "", "this key is not known", right);
        }
        Self { table, place, keys, mistaken }
    }

    /// Opens a value that must be a table.
    pub(crate) fn of(item: &Item<'d>, keys: &'static [Key], ledger: &mut Ledger<'_>) -> Option<Self> {
        let known: Vec<&str> = keys.iter().map(|key| key.name).collect();
        match &item.node.value {
            Value::Table(table) => {
                Some(Self::open(table, item.place.clone().at(&item.node.span), keys, &known, ledger))
            }
            other => {
                let what = format!("this is {}, where a table is wanted", other.name());
                let right = format!("give it keys of its own: {}", known.join(", "));
                ledger.wrong(&item.place, item.node, what, right);
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
    pub(crate) fn need(&self, key: &str, right: &str, ledger: &mut Ledger<'_>) -> Option<Item<'d>> {
        let found = self.get(key);
        if found.is_none() && !self.mistaken.iter().any(|other| other == key) {
            ledger.problem(&self.place, "", format!("\"{key}\" is missing"), right);
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
    pub(crate) fn item(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<Item<'d>> {
        match self.keys.iter().find(|known| known.name == key)?.left_out {
            LeftOut::Needed(right) => self.need(key, right, ledger),
            _ => self.get(key),
        }
    }

    /// A text under a key.
    pub(crate) fn text(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<String>> {
        let right = match self.holds(key)? {
            Holds::Name => "write a name in quotes",
            _ => "write it in quotes",
        };
        self.item(key, ledger)?.text(right, ledger)
    }

    /// One of a few words under a key.
    pub(crate) fn word<T: Copy>(
        &self,
        key: &str,
        words: &[(&str, T)],
        ledger: &mut Ledger<'_>,
    ) -> Option<At<T>> {
        self.item(key, ledger)?.word(words, ledger)
    }

    /// A quantity under a key that is one figure.
    pub(crate) fn figure(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        let Holds::Figure(kind) = self.holds(key)? else { return None };
        self.item(key, ledger)?.figure(kind, ledger)
    }

    /// A quantity under a key.
    pub(crate) fn given(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<Given>> {
        let Holds::Given(kind, takes) = self.holds(key)? else { return None };
        self.item(key, ledger)?.given(kind, takes, ledger)
    }

    /// The distribution of a thing itself under a key.
    pub(crate) fn law(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<Distribution>> {
        let Holds::Law(kind) = self.holds(key)? else { return None };
        self.item(key, ledger)?.law(kind, ledger)
    }

    /// A count under a key.
    pub(crate) fn count(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<u32>> {
        let Holds::Count(least, most) = self.holds(key)? else { return None };
        self.item(key, ledger)?.count(least..=most, ledger)
    }

    /// A time of the clock under a key.
    pub(crate) fn clock(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        let days = if matches!(self.holds(key)?, Holds::DayAndClock) { Days::Any } else { Days::Every };
        self.item(key, ledger)?.clock(days, ledger)
    }

    /// A table under a key.
    pub(crate) fn table(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<Fields<'d>> {
        let Holds::Table(keys) = self.holds(key)? else { return None };
        Fields::of(&self.item(key, ledger)?, keys, ledger)
    }

    /// A yes or no under a key.
    pub(crate) fn truth(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<bool>> {
        let item = self.item(key, ledger)?;
        item.read(parse::truth(&item.node.value), ledger).map(|truth| item.at(truth))
    }
}

impl<'d> Item<'d> {
    /// A value read from it.
    pub(crate) fn at<T>(&self, value: T) -> At<T> {
        At { value, place: self.place.clone().at(&self.node.span), typed: self.node.typed.clone() }
    }

    /// A problem of it.
    pub(crate) fn wrong(&self, what: impl Into<String>, right: impl Into<String>, ledger: &mut Ledger<'_>) {
        ledger.wrong(&self.place, self.node, what, right);
    }

    /// What was read of it, or a problem.
    pub(crate) fn read<T>(&self, read: Result<T, Wrong>, ledger: &mut Ledger<'_>) -> Option<T> {
        read.map_err(|Wrong { what, right }| self.wrong(what, right, ledger)).ok()
    }

    /// A text that is not empty.
    pub(crate) fn text(&self, right: &str, ledger: &mut Ledger<'_>) -> Option<At<String>> {
        self.read(parse::text(&self.node.value, right), ledger).map(|text| self.at(text))
    }

    /// One of a few words.
    pub(crate) fn word<T: Copy>(&self, words: &[(&str, T)], ledger: &mut Ledger<'_>) -> Option<At<T>> {
        self.read(parse::word(&self.node.value, words), ledger).map(|word| self.at(word))
    }

    /// A count within limits.
    pub(crate) fn count(&self, limits: RangeInclusive<u32>, ledger: &mut Ledger<'_>) -> Option<At<u32>> {
        self.read(parse::count(&self.node.value, limits), ledger).map(|count| self.at(count))
    }

    /// A time of the clock, in seconds after midnight of the first day.
    pub(crate) fn clock(&self, days: Days, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        self.read(parse::clock::clock(&self.node.value, days), ledger).map(|seconds| self.at(seconds))
    }

    /// The entries of a list; none if it is not one.
    pub(crate) fn list(&self, listed: &Listed<'_>, ledger: &mut Ledger<'_>) -> Vec<Item<'d>> {
        let list = self.read(parse::list(&self.node.value, listed), ledger).unwrap_or_default();
        list.iter().map(|node| Item { node, place: self.place.clone() }).collect()
    }

    /// A quantity as one figure, in the unit its kind is kept in.
    pub(crate) fn figure(&self, kind: Kind, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        self.read(figure::is_one(&self.node.value, kind), ledger)?;
        let value = self.measure(kind, ledger)?;
        self.believable(value, kind, ledger).then(|| self.at(value))
    }

    /// A quantity of the right dimension, believable or not, in the unit its kind is kept in.
    pub(crate) fn measure(&self, kind: Kind, ledger: &mut Ledger<'_>) -> Option<f64> {
        let measured = self.read(figure::measured(&self.node.value, kind, ledger.density), ledger)?;
        if let Some((words, from)) = measured.by_the_ton(&self.node.typed, kind) {
            ledger.assume(&self.place.path, words, from);
        }
        ledger.saw_unit(measured.system);
        if let Some(currency) = &measured.currency {
            ledger.saw_currency(&self.place, self.node, currency);
        }
        Some(measured.value)
    }

    /// Whether a value lies within what is believable for its kind; if not, that is a problem.
    pub(crate) fn believable(&self, value: f64, kind: Kind, ledger: &mut Ledger<'_>) -> bool {
        self.read(figure::believable(value, kind), ledger).is_some()
    }
}
