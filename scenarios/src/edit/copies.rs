//! What a copy of a thing is written from.

use super::draft::{Draft, Pair};
use super::key::names;
use super::knob::all_counts;
use super::lines::{Form, form};
use super::written::key_text;
use crate::check::names::copies;
use crate::document::{Node, Table, Value};
use crate::signs::{LONGEST_NAME, likeness};

/// The keys of a table with their values, but for some; others get values of their own.
pub(super) fn pairs(draft: &Draft, table: &Table, without: &[&str], own: &[(&str, String)]) -> Vec<Pair> {
    let all = table.in_order().into_iter().filter(|(key, _)| !without.contains(key));
    all.map(|(key, entry)| {
        let own = own.iter().find(|(own, _)| *own == key).map(|(_, value)| value.clone());
        (key.to_owned(), own.unwrap_or_else(|| inline(draft, &entry.node)))
    })
    .collect()
}

/// A value as it would stand behind its key.
fn inline(draft: &Draft, node: &Node) -> String {
    match (form(draft.text(), node), &node.value) {
        (Form::Inline, _) => draft.written(node).to_owned(),
        (_, Value::List(list)) => {
            let all: Vec<String> = list.iter().map(|node| inline(draft, node)).collect();
            format!("[ {} ]", all.join(", "))
        }
        (_, Value::Table(table)) => {
            let all = table.in_order().into_iter();
            let all: Vec<String> = all
                .map(|(key, entry)| format!("{} = {}", key_text(key), inline(draft, &entry.node)))
                .collect();
            format!("{{ {} }}", all.join(", "))
        }
        _ => draft.written(node).to_owned(),
    }
}

/// A name like another, with a number that nothing of the kind has.
pub(super) fn own_name(draft: &Draft, kind: &str, like: &str) -> String {
    let names = names(draft.table(), kind);
    let counts = all_counts(draft, kind);
    let taken: Vec<String> = names
        .iter()
        .zip(&counts)
        .flat_map(|(name, count)| {
            copies(name, (*count).min(sim::MOST_LOADERS.max(sim::MOST_RAKERS) as u32))
                .into_iter()
                .chain([name.clone()])
        })
        .map(|name| likeness(&name))
        .collect();
    if ["loader", "raker"].contains(&kind) {
        return ordinal(like, &taken);
    }
    let stem = like.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let stem = if stem.is_empty() { kind } else { stem };
    let stem: String = stem.chars().take(LONGEST_NAME - 6).collect();
    let mut number = 2;
    loop {
        let name = format!("{} {number}", stem.trim_end());
        if !taken.contains(&likeness(&name)) {
            return name;
        }
        number += 1;
    }
}

const ORDINALS: [&str; 11] = [
    "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
];

/// `second barrow`: copies of a thing have a number behind their name already.
fn ordinal(like: &str, taken: &[String]) -> String {
    let (first, rest) = like.split_once(' ').unwrap_or((like, ""));
    let stem = if ORDINALS.contains(&first) && !rest.is_empty() { rest } else { like };
    let stem: String = stem.chars().take(LONGEST_NAME - 12).collect();
    let words =
        ORDINALS.iter().map(|word| (*word).to_owned()).chain((13..).map(|number| format!("{number}th")));
    let mut names = words.map(|word| format!("{word} {}", stem.trim_end()));
    names.find(|name| !taken.contains(&likeness(name))).unwrap_or_default()
}
