//! What a sentence is made of, and how its values are made.

use super::clause::{Clause, Clock, Further, Part, Sentence, Value};
use super::figures::{Quantity, Told, shown, typed, typed_in};
use super::steps::{kind_of, units};
use super::words::as_said;
use crate::build::Built;
use crate::diagnostics::At;
use crate::document::Table;
use crate::key::Key;
use crate::keys::within;
use crate::raw::{Raw, piece};
use crate::starter::Answers;
use crate::units::System;

/// A job as typed and as made, and the way it is to be told.
pub(crate) struct Teller<'j> {
    pub(crate) raw: &'j Raw,
    pub(crate) built: &'j Built,
    /// The text it was read from.
    pub(crate) text: &'j str,
    pub(crate) system: System,
    pub(crate) clock: Clock,
    /// What a starter file in the units of the text has.
    pub(crate) usual: Answers,
}

/// What a value is called.
pub(super) struct About {
    pub(super) key: String,
    pub(super) title: &'static str,
    pub(super) known: &'static Key,
}

impl About {
    /// A key of a thing with a name.
    pub(super) fn of(kind: &str, name: &str, keys: &'static [Key], key: &str, title: &'static str) -> Self {
        Self { key: format!("{kind}.{}.{key}", piece(name)), title, known: known(keys, key) }
    }

    /// A key of a table of which there is one.
    pub(super) fn in_table(table: &str, keys: &'static [Key], key: &str, title: &'static str) -> Self {
        Self { key: format!("{table}.{key}"), title, known: known(keys, key) }
    }

    /// A value of which nothing more is said.
    pub(super) fn value(self, words: String, typed: String) -> Value {
        let (help, limits) = (without_commands(self.known.means), within(self.known.holds));
        Value { key: self.key, words, typed, title: self.title.to_owned(), help, limits, ..Value::default() }
    }
}

/// What a key means, without what is said of the command line in brackets.
fn without_commands(means: &str) -> String {
    match means.split_once(" (heapcast ").and_then(|(before, rest)| Some((before, rest.split_once(')')?.1))) {
        Some((before, after)) => format!("{before}{after}"),
        None => means.to_owned(),
    }
}

/// What is known of a key; the first of the table if it has none of this name, which is a fault of the program.
fn known(keys: &'static [Key], name: &str) -> &'static Key {
    let found = keys.iter().find(|key| key.name == name);
    debug_assert!(found.is_some(), "{name} is not declared");
    found.unwrap_or(&keys[0])
}

impl Teller<'_> {
    /// The whole sentence; what the file says besides is looked for in its document.
    pub(crate) fn sentence(&self, table: &Table) -> Sentence {
        let mut clauses: Vec<Clause> = Vec::new();
        clauses.extend(self.material());
        clauses.extend(self.zones());
        clauses.extend(self.crew());
        clauses.extend(self.hours());
        clauses.extend(self.piles());
        clauses.extend(self.machines());
        clauses.extend(self.room());
        clauses.extend(self.people());
        clauses.extend(self.passes());
        clauses.extend(self.preparing());
        clauses.extend(self.prices());
        let mut sentence = Sentence { clauses, usual: 0, further: Vec::new() };
        sentence.usual = sentence.values().filter(|value| value.usual).count();
        let further: Vec<Further> = super::further::further(table, &sentence);
        Sentence { further, ..sentence }
    }

    pub(super) fn currency(&self) -> &str {
        let usual = if self.raw.system() == System::Us { "$" } else { "€" };
        self.raw.said.currency.as_deref().unwrap_or(usual)
    }

    /// A quantity that is given.
    pub(super) fn given<T: Told>(&self, about: About, at: &At<T>, choices: [&[&str]; 2]) -> Value {
        let quantity = Quantity::of(at, self.text);
        self.quantity(about, &quantity, choices)
    }

    fn quantity(&self, about: About, quantity: &Quantity, choices: [&[&str]; 2]) -> Value {
        let Some(kind) = kind_of(about.known) else {
            return about.value(quantity.typed.clone(), quantity.typed.clone());
        };
        let words = quantity.words(kind, self.system, self.currency());
        let [less, more] = quantity.around(kind);
        let money = |unit: &&str| {
            if unit.starts_with('/') { format!("{}{unit}", self.currency()) } else { (*unit).to_owned() }
        };
        let units: Vec<String> = units(kind, self.system).iter().map(money).collect();
        let choices = self.pick(choices);
        Value { less, more, units, choices, ..about.value(words, quantity.typed.clone()) }
    }

    /// The choices in one of the systems.
    pub(super) fn pick(&self, choices: [&[&str]; 2]) -> Vec<String> {
        let [us, metric] = choices;
        let all = if self.system == System::Us { us } else { metric };
        all.iter().map(|choice| choice.replace('$', self.currency())).collect()
    }

    /// A quantity that is given, or its usual one.
    pub(super) fn or_usual<T: Told>(
        &self,
        about: About,
        at: Option<&At<T>>,
        usual: f64,
        choices: [&[&str]; 2],
    ) -> Value {
        match at {
            Some(at) => self.given(about, at, choices),
            None => self.usual(about, usual, choices),
        }
    }

    fn usual(&self, about: About, usual: f64, choices: [&[&str]; 2]) -> Value {
        let Some(kind) = kind_of(about.known) else { return about.value(String::new(), String::new()) };
        let typed = typed_in(usual, kind, self.system, self.currency());
        let quantity = Quantity { typed, size: super::figures::Size::One(usual) };
        let words = shown(usual, kind, self.system, self.currency());
        Value { words, usual: true, ..self.quantity(about, &quantity, choices) }
    }

    /// A quantity that is given, or words for there being none.
    pub(super) fn or_none<T: Told>(
        &self,
        about: About,
        at: Option<&At<T>>,
        none: &str,
        choices: [&[&str]; 2],
    ) -> Value {
        match at {
            Some(at) => self.given(about, at, choices),
            None => self.none(about, none, choices),
        }
    }

    fn none(&self, about: About, none: &str, choices: [&[&str]; 2]) -> Value {
        let quantity = Quantity { typed: String::new(), size: super::figures::Size::One(0.0) };
        let value = self.quantity(about, &quantity, choices);
        Value { words: none.to_owned(), usual: true, less: None, more: None, ..value }
    }

    /// A value that a starter file has too is usual where it is the same.
    pub(super) fn as_in_a_starter(&self, mut value: Value, usual: &str) -> Value {
        value.usual |= usual == value.typed;
        value
    }

    /// A name that can be changed, as it is said within a sentence.
    pub(super) fn name(
        &self,
        kind: &str,
        keys: &'static [Key],
        at: &At<String>,
        title: &'static str,
    ) -> Value {
        About::of(kind, &at.value, keys, "name", title).value(as_said(&at.value), typed(at, self.text))
    }

    /// A time of the clock as it is said.
    pub(super) fn clock(&self, seconds: f64) -> String {
        crate::units::clock(seconds, self.clock_system())
    }

    pub(super) fn clock_system(&self) -> System {
        match self.clock {
            Clock::AmPm => System::Us,
            Clock::Hours24 => System::Metric,
        }
    }
}

/// Words of a clause.
pub(super) fn words(text: impl Into<String>) -> Part {
    Part::Words(text.into())
}

/// A value as part of a clause.
pub(super) fn told(value: Value) -> Part {
    Part::Value(Box::new(value))
}

/// A clause that is always said.
pub(super) fn clause(kind: &'static str, parts: Vec<Part>) -> Clause {
    Clause { kind, parts, ..Clause::default() }
}

/// A clause that is said only if something in it is not the usual.
pub(super) fn aside(kind: &'static str, parts: Vec<Part>) -> Clause {
    let told = parts.iter().any(|part| matches!(part, Part::Value(value) if !value.usual));
    Clause { kind, parts, is_quiet: !told, ..Clause::default() }
}
