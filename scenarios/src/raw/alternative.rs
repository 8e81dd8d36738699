//! `[[alternative]]`: named variants of the same job.

use super::change::{RawChange, collect, make_all};
use crate::diagnostics::{At, Place, Read};
use crate::document::{Table, Value};
use crate::fields::{Around, Fields, Item};
use crate::files::Files;
use crate::key::alternative::{CHANGE_RIGHT, KEYS};
use crate::parse::Listed;
use crate::signs::likeness;
use std::ops::Range;

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
pub(crate) fn alternatives(table: &Table, files: &dyn Files) -> Read<Vec<RawAlternative>> {
    let Some(node) = table.get("alternative") else {
        return Read::made(Vec::new());
    };
    let place =
        Place { words: "alternative".into(), path: "alternative".into(), span: Some(node.span.clone()) };
    let item = Item { node, place, around: Around { files, density: None } };
    let listed = Listed {
        most: MOST,
        too_many: |count| format!("there are {count} of them"),
        wanted: ", not a list of alternatives",
        right: "write [[alternative]] in double brackets, once for each",
    };
    let mut number = 0;
    let all = item.list(&listed).each(|mut item| {
        number += 1;
        let words = format!("alternative {number}");
        item.place = Place { path: words.clone(), words, span: Some(item.node.span.clone()) };
        item.table(KEYS, |fields| alternative(&item, fields))
    });
    all.and_then(each_its_own_name)
}

fn each_its_own_name(all: Vec<RawAlternative>) -> Read<Vec<RawAlternative>> {
    Read::of(|diagnostics| {
        for (i, one) in all.iter().enumerate() {
            let alike = |other: &&RawAlternative| likeness(&other.name.value) == likeness(&one.name.value);
            let Some(twin) = all[..i].iter().find(alike) else { continue };
            let same = twin.name.value == one.name.value;
            let what = if same { "have this name" } else { "have names that look the same" };
            let what = format!("two alternatives {what}");
            diagnostics.wrong_at(&one.name, what, "give each a name of its own");
        }
        Some(all)
    })
}

fn alternative(item: &Item<'_>, fields: &mut Fields<'_>) -> Option<RawAlternative> {
    let name = fields.text("name");
    let mut change = fields.item("change")?;
    let Value::Table(table) = &change.node.value else {
        let what = format!("this is {}, where a table is wanted", change.node.value.name());
        return fields.take(change.wrong(what, CHANGE_RIGHT));
    };
    let mut place = change.place.clone();
    if let Some(name) = &name {
        place.words = format!("alternative \"{}\"", name.value);
        change.place.words = format!("{}.change", place.words);
    }
    let changes = fields.take(collect(table, &[], &place))?;
    if table.entries.is_empty() {
        let _: Option<()> = fields.take(change.wrong("nothing is changed", CHANGE_RIGHT));
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
    pub(crate) fn apply(&self, table: &Table) -> Read<Table> {
        make_all(&self.changes, table)
    }
}
