//! One table of a file, read key by key.

use crate::diagnostics::{At, Diagnostic, Diagnostics, Place, Read};
use crate::document::{Node, Table, Value};
use crate::files::{Files, NO_FILES};
use crate::key::sections::{home_of, instead_of};
use crate::key::{Holds, Key, LeftOut};
use crate::nearest::nearest;
use crate::parse::clock::{Days, LAST_DAY};
use crate::parse::{self, Listed, Wrong, figure};
use crate::quantity::given::Given;
use crate::signs::printable;
use crate::units::kind::Kind;
use sim::Distribution;
use std::ops::RangeInclusive;

/// What a value cannot be read without.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Around<'d> {
    /// Where files come from that are named.
    pub(crate) files: &'d dyn Files,
    /// Density of the material, once it is known: by it tons are turned into volumes \[kg/m3\].
    pub(crate) density: Option<f64>,
}

impl Around<'_> {
    /// No files, and no material.
    pub(crate) const NOTHING: Around<'static> = Around { files: NO_FILES, density: None };
}

/// A table whose keys are known, while it is read: what comes up is kept until all of it is read.
pub(crate) struct Fields<'d> {
    table: &'d Table,
    /// Where it stands.
    pub(crate) place: Place,
    pub(crate) around: Around<'d>,
    keys: &'static [Key],
    /// Known keys that a misspelt key probably stands for.
    mistaken: Vec<String>,
    /// What came up so far.
    pub(crate) diagnostics: Diagnostics,
}

/// A value under a key.
#[derive(Clone)]
pub(crate) struct Item<'d> {
    /// The value.
    pub(crate) node: &'d Node,
    /// Where it stands.
    pub(crate) place: Place,
    pub(crate) around: Around<'d>,
}

impl<'d> Fields<'d> {
    /// Reads a table key by key; every key that is not among the known words is a problem.
    pub(crate) fn read<T>(
        table: &'d Table,
        place: Place,
        around: Around<'d>,
        keys: &'static [Key],
        known: &[&str],
        read: impl FnOnce(&mut Self) -> Option<T>,
    ) -> Read<T> {
        let (mistaken, diagnostics) = (Vec::new(), Diagnostics::default());
        let mut fields = Self { table, place, around, keys, mistaken, diagnostics };
        fields.look_for_unknown(known);
        let made = read(&mut fields);
        Read { made, diagnostics: fields.diagnostics }
    }

    fn look_for_unknown(&mut self, known: &[&str]) {
        for (key, entry) in self.table.in_order() {
            if known.contains(&key) {
                continue;
            }
            let near = nearest(key, known.iter().copied());
            let right = match (instead_of(key), home_of(key), near) {
                (Some(right), ..) => right.to_owned(),
                (None, Some(home), _) => format!("this key belongs {home}"),
                (None, None, Some(near)) => format!("the nearest known key is \"{near}\""),
                (None, None, None) => format!("known keys are {}", known.join(", ")),
            };
            self.mistaken.extend(near.map(str::to_owned));
            let place = self.place.key(&printable(key)).at(&entry.key_span);
            self.diagnostics.problem(&place, "", "this key is not known", right);
        }
    }

    /// What was read of it; what came up joins the rest.
    pub(crate) fn take<T>(&mut self, read: Read<T>) -> Option<T> {
        read.join(&mut self.diagnostics)
    }

    /// The value under a key, if any.
    pub(crate) fn get(&self, key: &str) -> Option<Item<'d>> {
        let entry = self.table.entries.get(key)?;
        let place = self.place.key(key).at(&entry.node.span);
        Some(Item { node: &entry.node, place, around: self.around })
    }

    /// The value under a key that must be there. Nothing is said if a misspelt key probably stands for it.
    pub(crate) fn need(&mut self, key: &str, right: &str) -> Option<Item<'d>> {
        let found = self.get(key);
        if found.is_none() && !self.mistaken.iter().any(|other| other == key) {
            self.diagnostics.problem(&self.place, "", format!("\"{key}\" is missing"), right);
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
    pub(crate) fn item(&mut self, key: &str) -> Option<Item<'d>> {
        match self.keys.iter().find(|known| known.name == key)?.left_out {
            LeftOut::Needed(right) => self.need(key, right),
            _ => self.get(key),
        }
    }

    /// What is read of the value under a key.
    pub(crate) fn under<T>(&mut self, key: &str, read: impl FnOnce(&Item<'d>) -> Read<T>) -> Option<T> {
        let item = self.item(key)?;
        self.take(read(&item))
    }

    /// A text under a key.
    pub(crate) fn text(&mut self, key: &str) -> Option<At<String>> {
        let right = match self.holds(key)? {
            Holds::Name => "write a name in quotes",
            _ => "write it in quotes",
        };
        self.under(key, |item| item.text(right))
    }

    /// One of a few words under a key.
    pub(crate) fn word<T: Copy>(&mut self, key: &str, words: &[(&str, T)]) -> Option<At<T>> {
        self.under(key, |item| item.word(words))
    }

    /// A quantity under a key that is one figure.
    pub(crate) fn figure(&mut self, key: &str) -> Option<At<f64>> {
        let Holds::Figure(kind) = self.holds(key)? else { return None };
        self.under(key, |item| item.figure(kind))
    }

    /// A quantity under a key.
    pub(crate) fn given(&mut self, key: &str) -> Option<At<Given>> {
        let Holds::Given(kind, takes) = self.holds(key)? else { return None };
        self.under(key, |item| item.given(kind, takes))
    }

    /// The distribution of a thing itself under a key.
    pub(crate) fn law(&mut self, key: &str) -> Option<At<Distribution>> {
        let Holds::Law(kind) = self.holds(key)? else { return None };
        self.under(key, |item| item.law(kind))
    }

    /// A count under a key.
    pub(crate) fn count(&mut self, key: &str) -> Option<At<u32>> {
        let Holds::Count(least, most) = self.holds(key)? else { return None };
        self.under(key, |item| item.count(least..=most))
    }

    /// A time of the clock under a key.
    pub(crate) fn clock(&mut self, key: &str) -> Option<At<f64>> {
        let days =
            if matches!(self.holds(key)?, Holds::DayAndClock) { Days::To(LAST_DAY) } else { Days::Every };
        self.under(key, |item| item.clock(days))
    }

    /// What is read of the table under a key.
    pub(crate) fn table<T>(&mut self, key: &str, read: impl FnOnce(&mut Self) -> Option<T>) -> Option<T> {
        let Holds::Table(keys) = self.holds(key)? else { return None };
        self.under(key, |item| item.table(keys, read))
    }

    /// A yes or no under a key.
    pub(crate) fn truth(&mut self, key: &str) -> Option<At<bool>> {
        self.under(key, |item| item.read(parse::truth(&item.node.value)))
    }
}

impl<'d> Item<'d> {
    /// A value in it, or in place of it.
    pub(crate) fn inner(&self, node: &'d Node, place: Place) -> Item<'d> {
        Item { node, place, around: self.around }
    }

    /// A value read from it.
    pub(crate) fn at<T>(&self, value: T) -> At<T> {
        At { value, place: self.place.clone().at(&self.node.span), typed: self.node.typed.clone() }
    }

    /// Nothing is read of it, because of this.
    pub(crate) fn wrong<T>(&self, what: impl Into<String>, right: impl Into<String>) -> Read<T> {
        Read::problem(&self.place.clone().at(&self.node.span), &self.node.typed, what, right)
    }

    /// What was read of its value, or what is wrong with it.
    fn value<T>(&self, read: Result<T, Wrong>) -> Read<T> {
        match read {
            Ok(value) => Read::made(value),
            Err(Wrong { what, right }) => self.wrong(what, right),
        }
    }

    /// What was read of its value, with its place, or what is wrong with it.
    pub(crate) fn read<T>(&self, read: Result<T, Wrong>) -> Read<At<T>> {
        self.value(read).map(|value| self.at(value))
    }

    /// Reads a table key by key.
    pub(crate) fn table<T>(
        &self,
        keys: &'static [Key],
        read: impl FnOnce(&mut Fields<'d>) -> Option<T>,
    ) -> Read<T> {
        let known: Vec<&str> = keys.iter().map(|key| key.name).collect();
        match &self.node.value {
            Value::Table(table) => self.table_of(table, keys, &known, read),
            other => {
                let right = format!("give it keys of its own: {}", known.join(", "));
                self.wrong(format!("this is {}, where a table is wanted", other.name()), right)
            }
        }
    }

    /// Reads the table in it, of which these words are known.
    pub(crate) fn table_of<T>(
        &self,
        table: &'d Table,
        keys: &'static [Key],
        known: &[&str],
        read: impl FnOnce(&mut Fields<'d>) -> Option<T>,
    ) -> Read<T> {
        Fields::read(table, self.place.clone().at(&self.node.span), self.around, keys, known, read)
    }

    /// A text that is not empty.
    pub(crate) fn text(&self, right: &str) -> Read<At<String>> {
        self.read(parse::text(&self.node.value, right))
    }

    /// One of a few words.
    pub(crate) fn word<T: Copy>(&self, words: &[(&str, T)]) -> Read<At<T>> {
        self.read(parse::word(&self.node.value, words))
    }

    /// A count within limits.
    pub(crate) fn count(&self, limits: RangeInclusive<u32>) -> Read<At<u32>> {
        self.read(parse::count(&self.node.value, limits))
    }

    /// A time of the clock, in seconds after midnight of the first day.
    pub(crate) fn clock(&self, days: Days) -> Read<At<f64>> {
        self.read(parse::clock::clock(&self.node.value, days))
    }

    /// The entries of a list.
    pub(crate) fn list(&self, listed: &Listed<'_>) -> Read<Vec<Item<'d>>> {
        let entries =
            |list: &'d [Node]| list.iter().map(|node| self.inner(node, self.place.clone())).collect();
        self.value(parse::list(&self.node.value, listed)).map(entries)
    }

    /// What is read of each entry of a list of things that have no name: they are counted (`ways`, each a `way`).
    pub(crate) fn numbered<T>(
        &self,
        listed: &Listed<'_>,
        (key, one): (&str, &str),
        read: impl Fn(Item<'d>) -> Read<T>,
    ) -> Read<Vec<T>> {
        let above = self.place.words.trim_end_matches(key).trim_end_matches('.');
        let mut number = 0;
        self.list(listed).each(|mut item| {
            number += 1;
            item.place = Place {
                words: format!("{above}, {one} {number}"),
                path: format!("{} {number}", self.place.path),
                span: Some(item.node.span.clone()),
            };
            read(item)
        })
    }

    /// A quantity as one figure, in the unit its kind is kept in.
    pub(crate) fn figure(&self, kind: Kind) -> Read<At<f64>> {
        let one = self.value(figure::is_one(&self.node.value, kind)).and_then(|()| self.measure(kind));
        one.and_then(|value| self.believable(value, kind)).map(|value| self.at(value))
    }

    /// A quantity of the right dimension, believable or not, in the unit its kind is kept in.
    pub(crate) fn measure(&self, kind: Kind) -> Read<f64> {
        Read::of(|diagnostics| {
            let measured = figure::measured(&self.node.value, kind, self.around.density);
            let measured = self.value(measured).join(diagnostics)?;
            if let Some((words, from)) = measured.by_the_ton(&self.node.typed, kind) {
                diagnostics.assume(&self.place.path, words, from);
            }
            diagnostics.0.extend(measured.system.map(Diagnostic::Unit));
            diagnostics.0.extend(measured.currency.map(|currency| Diagnostic::Currency(self.at(currency))));
            Some(measured.value)
        })
    }

    /// The value, if it lies within what is believable for its kind.
    pub(crate) fn believable(&self, value: f64, kind: Kind) -> Read<f64> {
        self.value(figure::believable(value, kind).map(|()| value))
    }
}
