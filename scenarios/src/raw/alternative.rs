//! `[[alternative]]`: named variants of the same job.

use super::change::{RIGHT, RawChange, collect};
use super::key::{Holds, Key, LeftOut, key};
use crate::diagnostics::{At, Diagnostics, Place};
use crate::document::{Table, Value};
use crate::fields::{Fields, Item};
use crate::parse::Listed;
use crate::signs::likeness;
use std::ops::Range;

pub(super) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every alternative a name"),
        "\"second raker\"",
        "What the alternative is called.",
    ),
    key(
        "change",
        Holds::Changes,
        LeftOut::Needed(RIGHT),
        "{ \"raker.helper.count\" = 2 }",
        "What differs from the job as it stands: keys of the file with dots between kind, name and key, and their new values.",
    ),
];
/// Most alternatives of one file.
const MOST: usize = 30;

/// An alternative as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawAlternative {
    pub(crate) name: At<String>,
    /// Where its heading stands, and all it says.
    pub(crate) spans: Vec<Range<usize>>,
    changes: Vec<RawChange>,
}

/// Reads the alternatives of a file.
pub(crate) fn alternatives(table: &Table, diagnostics: &mut Diagnostics<'_>) -> Vec<RawAlternative> {
    let Some(node) = table.get("alternative") else {
        return Vec::new();
    };
    let place =
        Place { words: "alternative".into(), path: "alternative".into(), span: Some(node.span.clone()) };
    let item = Item { node, place };
    let listed = Listed {
        most: MOST,
        too_many: |count| format!("there are {count} of them"),
        wanted: ", not a list of alternatives",
        right: "write [[alternative]] in double brackets, once for each",
    };
    let mut all: Vec<RawAlternative> = Vec::new();
    for (i, Item { node, .. }) in item.list(&listed, diagnostics).into_iter().enumerate() {
        let words = format!("alternative {}", i + 1);
        let place = Place { path: words.clone(), words, span: Some(node.span.clone()) };
        let Some(one) = alternative(&Item { node, place }, diagnostics) else {
            continue;
        };
        let twin = all.iter().find(|other| likeness(&other.name.value) == likeness(&one.name.value));
        if let Some(twin) = twin {
            let same = twin.name.value == one.name.value;
            let what = if same { "have this name" } else { "have names that look the same" };
            diagnostics.wrong_at(
                &one.name,
                format!("two alternatives {what}"),
                "give each a name of its own",
            );
        }
        all.push(one);
    }
    all
}

fn alternative(item: &Item<'_>, diagnostics: &mut Diagnostics<'_>) -> Option<RawAlternative> {
    let fields = Fields::of(item, KEYS, diagnostics)?;
    let name = fields.text("name", diagnostics);
    let change = fields.item("change", diagnostics)?;
    let Value::Table(table) = &change.node.value else {
        change.wrong(
            format!("this is {}, where a table is wanted", change.node.value.name()),
            RIGHT,
            diagnostics,
        );
        return None;
    };
    let mut change = change;
    let mut place = change.place.clone();
    if let Some(name) = &name {
        place.words = format!("alternative \"{}\"", name.value);
        change.place.words = format!("{}.change", place.words);
    }
    let mut changes = Vec::new();
    collect(table, &[], &place, &mut changes, diagnostics);
    if table.entries.is_empty() {
        change.wrong("nothing is changed", RIGHT, diagnostics);
    }
    let name = name?;
    let mut spans = vec![item.node.span.clone(), name.place.span.clone().unwrap_or_default()];
    spans.push(change.node.span.clone());
    for change in &changes {
        spans.extend([change.key_span.clone(), change.node.span.clone()]);
    }
    Some(RawAlternative { name, spans, changes })
}

impl RawAlternative {
    /// The file with the changes made, if all of them name something.
    pub(crate) fn apply(&self, table: &Table, diagnostics: &mut Diagnostics<'_>) -> Option<Table> {
        let mut table = table.clone();
        let mut sound = true;
        for change in &self.changes {
            sound &= change.make(&mut table, diagnostics);
        }
        sound.then_some(table)
    }
}
