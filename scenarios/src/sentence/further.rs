//! What a file says that the sentence does not.

use super::clause::{Further, Sentence};
use crate::document::{Node, Table, Value};
use crate::key::sections::SECTIONS;
use crate::key::{Holds, Key};
use crate::raw::piece;
use std::collections::BTreeSet;

/// Keys that are shown beside the sentence, or not of the job itself.
const ELSEWHERE: [&str; 3] = ["title", "units", "alternative"];
/// Keys of what the sentence says in its words.
const IN_WORDS: [&str; 8] = ["name", "from", "passes", "pass", "currency", "rule", "count", "spread_share"];

/// Every key of a document that no value of the sentence has, and every distribution of which it says the mean alone.
pub(super) fn further(table: &Table, sentence: &Sentence) -> Vec<Further> {
    let told: BTreeSet<&str> = sentence.values().map(|value| value.key.as_str()).collect();
    let mut search = Search { told, found: Vec::new() };
    for (top, entry) in table.in_order() {
        if ELSEWHERE.contains(&top) {
            continue;
        }
        let section = SECTIONS[1..].iter().find(|section| section.heading.trim_matches(['[', ']']) == top);
        match (&entry.node.value, section) {
            (Value::List(things), Some(section)) => {
                for thing in things {
                    search.table(thing, &format!("{top}.{}", name(thing)), section.keys);
                }
            }
            (Value::Table(_), Some(section)) => search.table(&entry.node, top, section.keys),
            _ => search.one(&entry.node, top, SECTIONS[0].keys.iter().find(|key| key.name == top), top),
        }
    }
    search.found
}

fn name(thing: &Node) -> String {
    match &thing.value {
        Value::Table(thing) => match thing.get("name").map(|node| &node.value) {
            Some(Value::Text(name)) => piece(name.trim()),
            _ => String::new(),
        },
        _ => String::new(),
    }
}

struct Search<'s> {
    told: BTreeSet<&'s str>,
    found: Vec<Further>,
}

impl Search<'_> {
    fn table(&mut self, node: &Node, path: &str, keys: &'static [Key]) {
        let Value::Table(table) = &node.value else { return };
        for (key, entry) in table.in_order() {
            let known = keys.iter().find(|known| known.name == key);
            self.one(&entry.node, &format!("{path}.{key}"), known, key);
        }
    }

    fn one(&mut self, node: &Node, path: &str, known: Option<&'static Key>, key: &str) {
        let is_law = matches!(&node.value, Value::Table(table) if table.entries.contains_key("family"));
        let is_part = path.rsplit_once('.').is_some_and(|(above, _)| self.told.contains(above));
        if (self.told.contains(path) || self.told.contains(key) || is_part) && !is_law
            || IN_WORDS.contains(&key)
        {
            return;
        }
        match (known.map(|known| known.holds), &node.value) {
            (Some(Holds::List(keys, _)), Value::List(list)) => {
                for (at, entry) in list.iter().enumerate() {
                    self.table(entry, &format!("{path}.{}", at + 1), keys);
                }
            }
            (Some(Holds::Table(keys)), Value::Table(table))
                if table.entries.keys().all(|key| keys.iter().any(|known| known.name == key)) =>
            {
                self.table(node, path, keys);
            }
            _ => {
                let words = known.map_or_else(String::new, |known| known.means.to_owned());
                self.found.push(Further { key: path.to_owned(), words });
            }
        }
    }
}
