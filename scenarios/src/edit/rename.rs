//! Names, and all that names them.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::key::{Place, names};
use super::written::key_text;
use crate::document::quoted;
use crate::document::{Entry, Node, Table, Value};
use crate::raw::{piece, pieces};
use crate::signs::composed;
use std::ops::Range;

/// A place where a thing is named.
pub(super) struct Reference {
    pub(super) path: Vec<Step>,
    /// Where the name stands, and what stands there when it is another.
    span: Range<usize>,
    written: Written,
}

enum Written {
    /// A text.
    Text,
    /// A key.
    Key,
    /// A dotted path in a key, in pieces, the name among them.
    Dotted(Vec<String>, usize),
}

/// Gives a thing another name, wherever it is named.
pub(super) fn rename(draft: &mut Draft, kind: &str, place: &Place, name: &str) -> Result<(), Fault> {
    let Some(Step::At(at)) = place.path.get(1) else { return Ok(()) };
    let old = names(draft.table(), kind).get(*at).cloned().unwrap_or_default();
    let mut all: Vec<(Range<usize>, String)> = references(draft.table(), kind, &old)
        .into_iter()
        .map(|reference| {
            let text = match reference.written {
                Written::Text => quoted(name),
                Written::Key => key_text(name),
                Written::Dotted(mut pieces, at) => {
                    pieces[at] = name.to_owned();
                    key_text(&pieces.iter().map(|one| piece(one)).collect::<Vec<_>>().join("."))
                }
            };
            (reference.span, text)
        })
        .collect();
    all.extend(draft.node(&place.path).map(|node| (node.span.clone(), quoted(name))));
    // From behind, so that what is before stays where it is; and at once, so that it is read when all is done.
    all.sort_by_key(|(span, _)| std::cmp::Reverse(span.start));
    let mut text = draft.text().to_owned();
    all.into_iter().for_each(|(span, new)| text.replace_range(span, &new));
    draft.splice(0..draft.text().len(), &text)
}

/// All places where a thing is named, but for its own table.
pub(super) fn references(table: &Table, kind: &str, name: &str) -> Vec<Reference> {
    let mut all = Vec::new();
    for (top, entry) in table.in_order() {
        let Value::List(things) = &entry.node.value else {
            if let Value::Table(section) = &entry.node.value {
                texts(section, &[Step::Key(top.to_owned())], kind, name, &mut all);
            }
            continue;
        };
        for (at, thing) in things.iter().enumerate() {
            let Value::Table(thing) = &thing.value else { continue };
            let path = [Step::Key(top.to_owned()), Step::At(at)];
            match (top, thing.entries.get("change")) {
                ("alternative", Some(change)) => {
                    let path = [path.as_slice(), &[Step::Key("change".into())]].concat();
                    if let Value::Table(changes) = &change.node.value {
                        keys(changes, &path, &[], (kind, name), &mut all);
                    }
                }
                _ => texts(thing, &path, kind, name, &mut all),
            }
        }
    }
    all
}

/// Texts that name a thing, in a table and in all that is in it.
fn texts(table: &Table, path: &[Step], kind: &str, name: &str, all: &mut Vec<Reference>) {
    for (key, entry) in table.in_order() {
        let path = [path, &[Step::Key(key.to_owned())]].concat();
        texts_of(key, entry, &path, kind, name, all);
    }
}

fn texts_of(key: &str, entry: &Entry, path: &[Step], kind: &str, name: &str, all: &mut Vec<Reference>) {
    let names_kind = match kind {
        "zone" => ["start", "surplus"].contains(&key),
        "stockpile" => key == "from",
        "pass" => ["pass", "passes"].contains(&key),
        _ => false,
    };
    let mut see = |node: &Node, path: Vec<Step>| match &node.value {
        Value::Text(text) if names_kind && composed(text.trim()) == name => {
            all.push(Reference { path, span: node.span.clone(), written: Written::Text });
        }
        Value::Table(inner) if kind == "zone" && key == "walk" => {
            let named = inner.in_order().into_iter().filter(|(to, _)| composed(to.trim()) == name);
            all.extend(named.map(|(to, entry)| Reference {
                path: [path.as_slice(), &[Step::Key(to.to_owned())]].concat(),
                span: entry.key_span.clone(),
                written: Written::Key,
            }));
        }
        Value::Table(inner) => texts(inner, &path, kind, name, all),
        _ => {}
    };
    match &entry.node.value {
        Value::List(list) => {
            for (at, node) in list.iter().enumerate() {
                see(node, [path, &[Step::At(at)]].concat());
            }
        }
        _ => see(&entry.node, path.to_owned()),
    }
}

/// Keys of changes that name a thing, and texts among their values.
fn keys(
    table: &Table,
    path: &[Step],
    above: &[String],
    (kind, name): (&str, &str),
    all: &mut Vec<Reference>,
) {
    for (key, entry) in table.in_order() {
        let path = [path, &[Step::Key(key.to_owned())]].concat();
        let Some(own) = pieces(key) else { continue };
        let whole: Vec<String> = above.iter().cloned().chain(own.iter().cloned()).collect();
        let at = 1_usize.wrapping_sub(above.len());
        let is_named = whole[0] == kind && own.get(at).is_some_and(|piece| composed(piece.trim()) == name);
        if is_named {
            let written = if own.len() == 1 { Written::Key } else { Written::Dotted(own, at) };
            all.push(Reference { path: path.clone(), span: entry.key_span.clone(), written });
        }
        match &entry.node.value {
            Value::Table(inner) if whole.len() < 3 => keys(inner, &path, &whole, (kind, name), all),
            _ => texts_of(whole.last().map_or("", String::as_str), entry, &path, kind, name, all),
        }
    }
}
