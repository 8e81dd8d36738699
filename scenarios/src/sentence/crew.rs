//! With which loaders, and who rakes.

use super::clause::{Add, Clause, Value};
use super::teller::{About, Teller, clause, told, words};
use super::words::{bare, between, number, plural};
use crate::diagnostics::At;
use crate::key::{loader, raker};
use crate::raw::{RawLoader, RawRaker};
use sim::{MOST_LOADERS, MOST_RAKERS};

const BUCKETS: [&[&str]; 2] = [
    &["6 ft3", "8 ft3", "10 ft3", "12 ft3", "14 ft3", "16 ft3", "20 ft3", "27 ft3"],
    &["0.15 m3", "0.2 m3", "0.25 m3", "0.3 m3", "0.4 m3", "0.5 m3", "0.6 m3", "0.8 m3"],
];

/// So many of a kind in all, and of one of them.
struct Counted {
    count: u32,
    all: u32,
    /// Of this one.
    least: u32,
    most: u32,
}

impl Counted {
    fn less(&self) -> Option<String> {
        (self.count > self.least).then(|| (self.count - 1).to_string())
    }

    fn more(&self) -> Option<String> {
        (self.all < self.most).then(|| (self.count + 1).to_string())
    }
}

fn count(count: &Option<At<u32>>) -> u32 {
    count.as_ref().map_or(1, |count| count.value)
}

impl Teller<'_> {
    pub(super) fn crew(&self) -> Vec<Clause> {
        let mut clauses = self.loaders();
        clauses.extend(self.rakers());
        clauses
    }

    fn loaders(&self) -> Vec<Clause> {
        let loaders = &self.raw.loaders;
        let all = loaders.iter().map(|loader| count(&loader.count)).sum();
        let mut clauses: Vec<Clause> =
            loaders.iter().enumerate().map(|(at, loader)| self.loader(at, loader, all)).collect();
        if let Some(last) = clauses.last_mut() {
            last.add = Some(Add { kind: "loader".into(), words: "another loader".into() });
        }
        clauses
    }

    fn loader(&self, at: usize, raw: &RawLoader, all: u32) -> Clause {
        let (name, its) = (raw.named.shown(), count(&raw.count));
        let about = About::of("loader", name, loader::KEYS, "count", "how many");
        let counted = Counted { count: its, all, least: 1, most: MOST_LOADERS as u32 };
        let (value, single) = (self.counted(about, &counted), self.raw.loaders.len() == 1);
        let value = Value { usual: raw.count.is_none() || its == 1 && single, ..value };
        let separator = if self.raw.zones.len() > 1 { ";" } else { "," };
        let before = match at {
            0 => format!("{separator} with "),
            _ => between(at, self.raw.loaders.len(), " and ").to_owned(),
        };
        let mut parts = vec![words(before), told(value), words(" ")];
        let named =
            raw.named.name.as_ref().map(|name| self.name("loader", loader::KEYS, name, "the loader's name"));
        parts.extend(named.map(|value| told(Value { words: plural(bare(name), its), ..value })));
        if let Some(heaped) = &raw.heaped {
            let about = About::of("loader", name, loader::KEYS, "heaped", "bucket, heaped");
            let value = self.as_in_a_starter(self.given(about, heaped, BUCKETS), &self.usual.bucket);
            parts.extend([words(" of "), told(value)]);
        }
        let can_remove = all > its && its > 0 || its == 0;
        Clause { name: Some(name.to_owned()), can_remove, ..clause("loader", parts) }
    }

    fn counted(&self, about: About, counted: &Counted) -> Value {
        let most = counted.most.min(6);
        let choices = (counted.least.max(1)..=most).map(|count| count.to_string()).collect();
        let (less, more) = (counted.less(), counted.more());
        let value = about.value(number(counted.count), counted.count.to_string());
        Value { less, more, choices, ..value }
    }

    fn rakers(&self) -> Vec<Clause> {
        let rakers = &self.raw.rakers;
        let all: u32 = rakers.iter().map(|raker| count(&raker.count)).sum();
        let add = Some(Add { kind: "raker".into(), words: "another kind of raker".into() });
        let single = rakers.len() <= 1 || all == 0;
        let mut clauses = match single {
            true => vec![self.together(all)],
            false => rakers.iter().enumerate().map(|(at, raker)| self.raker(at, raker, all)).collect(),
        };
        if let Some(last) = clauses.last_mut() {
            last.add = add;
        }
        clauses
    }

    /// The people who rake, where they are all alike: the trade's word for them sets how many.
    fn together(&self, all: u32) -> Clause {
        let known = About::of("raker", "", raker::KEYS, "count", "people raking");
        let about = About { key: "rakers".into(), ..known };
        let counted = Counted { count: all, all, least: 0, most: MOST_RAKERS as u32 };
        let value = self.counted(about, &counted);
        let mut choices = vec!["0".to_owned()];
        choices.extend(value.choices.iter().cloned());
        let limits = format!("a whole number from 0 to {MOST_RAKERS}");
        let shown = if all == 0 { "nobody".to_owned() } else { number(all) };
        let help = "How many people rake. With nobody raking the bucket spreads all of it.".to_owned();
        let value = Value { usual: all == self.usual.rakers, choices, limits, help, words: shown, ..value };
        let after = match all {
            0 => " raking: the bucket spreads it",
            1 => " person raking",
            _ => " people raking",
        };
        clause("raker", vec![words(self.joined()), told(value), words(after)])
    }

    /// What stands between the loaders and those who rake.
    fn joined(&self) -> &'static str {
        if self.raw.loaders.len() > 1 { ", and " } else { " and " }
    }

    fn raker(&self, at: usize, raw: &RawRaker, all: u32) -> Clause {
        let (name, its) = (raw.named.shown(), count(&raw.count));
        let about = About::of("raker", name, raker::KEYS, "count", "how many");
        let counted = Counted { count: its, all, least: 1, most: MOST_RAKERS as u32 };
        let before = if at == 0 { self.joined() } else { between(at, self.raw.rakers.len(), " and ") };
        let value = Value { usual: raw.count.is_none(), ..self.counted(about, &counted) };
        let mut parts = vec![words(before), told(value), words(" ")];
        let named =
            raw.named.name.as_ref().map(|name| self.name("raker", raker::KEYS, name, "the raker's name"));
        parts.extend(named.map(|value| told(Value { words: plural(bare(name), its), ..value })));
        if at + 1 == self.raw.rakers.len() {
            parts.push(words(" raking"));
        }
        Clause { name: Some(name.to_owned()), can_remove: true, ..clause("raker", parts) }
    }
}
