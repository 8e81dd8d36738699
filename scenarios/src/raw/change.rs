//! One change of a document: the path of a key and its new value.

use crate::diagnostics::{Place, Read};
use crate::document::{Entry, Node, Table, Value};
use crate::key::alternative::CHANGE_RIGHT;
use crate::key::sections::{SECTIONS, top};
use crate::nearest::nearest;
use crate::signs::composed;
use crate::signs::printable;
use std::ops::Range;

/// Kinds of thing of which a file may have several.
pub(crate) const KINDS: &[&str] = &["zone", "stockpile", "loader", "raker", "pass"];

/// One change: the path of a key, its pieces, and the new value.
#[derive(Clone, Debug)]
pub(crate) struct RawChange {
    path: Vec<String>,
    place: Place,
    /// Where its key stands.
    pub(super) key_span: Range<usize>,
    /// The new value.
    pub(super) node: Node,
}

/// The changes of a table of paths and values.
pub(crate) fn changes(table: &Table) -> Read<Vec<RawChange>> {
    collect(table, &[], &Place::default())
}

/// The document with changes made, if all of them name something.
pub(crate) fn make_all(changes: &[RawChange], table: &Table) -> Read<Table> {
    Read::of(|diagnostics| {
        let mut changed = table.clone();
        for change in changes {
            let _: Option<()> = change.make(&mut changed).join(diagnostics);
        }
        diagnostics.is_clean().then_some(changed)
    })
}

/// The kind of thing a key belongs to, if there may be several of it and the key is given without a name.
pub(crate) fn kind_of(kind: Option<&str>, key: &str) -> Option<&'static str> {
    let has = |kind: &str| {
        SECTIONS.iter().any(|section| {
            section.heading == format!("[[{kind}]]") && section.keys.iter().any(|its| its.name == key)
        })
    };
    match kind {
        Some(kind) => KINDS.iter().copied().find(|known| *known == kind && has(known)),
        None if top().any(|word| word == key) => None,
        None => KINDS.iter().copied().find(|known| has(known)),
    }
}

/// Changes of a table; keys with dots that are not in quotes arrive as tables in tables.
pub(super) fn collect(table: &Table, above: &[String], place: &Place) -> Read<Vec<RawChange>> {
    Read::made(table.in_order())
        .each(|(key, entry)| of_entry(key, entry, above, place))
        .map(|all| all.concat())
}

fn of_entry(key: &str, entry: &Entry, above: &[String], place: &Place) -> Read<Vec<RawChange>> {
    let mut here = place.clone().at(&entry.key_span);
    here.words = format!("{}: {}", place.words, printable(key));
    let wrong = |what: &str, right: &str| Read::problem(&here, &entry.node.typed, what, right);
    let Some(pieces) = pieces(key) else {
        return wrong("this is not a path of keys", CHANGE_RIGHT);
    };
    let path: Vec<String> = above.iter().cloned().chain(pieces).collect();
    let first = path[0].as_str();
    if first == "alternative" {
        let right = "an alternative changes the job, not another alternative";
        wrong("alternatives cannot be changed", right)
    } else if !top().any(|word| word == first) {
        let near = nearest(first, top().filter(|key| *key != "alternative"));
        let right = near.map(|near| format!("the nearest known key is \"{near}\""));
        let what = format!("\"{}\" is not known", printable(first));
        wrong(&what, right.as_deref().unwrap_or(CHANGE_RIGHT))
    } else if path.len() >= depth_of(first, &entry.node) {
        let (key_span, node) = (entry.key_span.clone(), entry.node.clone());
        Read::made(vec![RawChange { path, place: here, key_span, node }])
    } else if let Value::Table(inner) = &entry.node.value {
        collect(inner, &path, place)
    } else {
        wrong("this is a whole table, not one of its keys", CHANGE_RIGHT)
    }
}

/// How many pieces a path must have to name a key and not a whole table.
fn depth_of(first: &str, node: &Node) -> usize {
    match first {
        kind if KINDS.contains(&kind) => 3,
        "spread" if !matches!(node.value, Value::Table(_)) => 1,
        "spread" => 3,
        "material" | "crew" | "shift" | "finish" | "money" => 2,
        _ => 1,
    }
}

/// A dotted path taken apart; quotes keep dots in a name together.
pub(crate) fn pieces(path: &str) -> Option<Vec<String>> {
    if path.len() > 400 {
        return None;
    }
    let (mut pieces, mut piece, mut quote) = (Vec::new(), String::new(), None);
    for c in path.chars() {
        match (quote, c) {
            (Some(open), c) if c == open => quote = None,
            (None, '"' | '\'') if piece.is_empty() => quote = Some(c),
            (None, '.') => pieces.push(std::mem::take(&mut piece)),
            _ => piece.push(c),
        }
    }
    pieces.push(piece);
    let whole = quote.is_none() && pieces.iter().all(|piece| !piece.trim().is_empty());
    whole.then(|| pieces.iter().map(|piece| piece.trim().to_owned()).collect())
}

/// A name as a piece of a dotted path.
pub(crate) fn piece(name: &str) -> String {
    let plain = !name.contains('.') && !name.starts_with(['"', '\'']);
    match (plain, name.contains('"')) {
        (true, _) => name.to_owned(),
        (false, false) => format!("\"{name}\""),
        (false, true) => format!("'{name}'"),
    }
}

impl RawChange {
    /// Whether it changes one of these keys of a thing.
    pub(crate) fn is_of(&self, kind: &str, name: &str, keys: &[&str]) -> bool {
        match self.path.as_slice() {
            [its_kind, its_name, key, ..] => {
                its_kind == kind && composed(its_name) == name && keys.contains(&key.as_str())
            }
            _ => false,
        }
    }

    /// Makes the change; if it names nothing, that is a problem.
    fn make(&self, table: &mut Table) -> Read<()> {
        let first = self.path[0].as_str();
        if !KINDS.contains(&first) {
            return self.set(table, &self.path);
        }
        let name = self.path[1].as_str();
        let mut names = Vec::new();
        if let Some(Entry { node: Node { value: Value::List(list), .. }, .. }) = table.entries.get_mut(first)
        {
            for node in list {
                let Value::Table(thing) = &mut node.value else { continue };
                match thing.get("name").map(|node| &node.value) {
                    Some(Value::Text(its)) if composed(its.trim()) == composed(name) => {
                        return self.set(thing, &self.path[2..]);
                    }
                    Some(Value::Text(its)) => names.push(printable(its.trim())),
                    _ => {}
                }
            }
        }
        let (what, right) = none_called(first, name, &names, CHANGE_RIGHT);
        self.wrong(what, right)
    }

    fn wrong(&self, what: String, right: String) -> Read<()> {
        Read::problem(&self.place, &self.node.typed, what, right)
    }

    fn set(&self, table: &mut Table, path: &[String]) -> Read<()> {
        let Some((key, below)) = path.split_first() else {
            return self.wrong("this is not a path of keys".into(), CHANGE_RIGHT.into());
        };
        if below.is_empty() {
            let entry = Entry { key_span: self.key_span.clone(), node: self.node.clone() };
            table.entries.insert(key.clone(), entry);
            return Read::made(());
        }
        let empty = || Entry {
            key_span: self.key_span.clone(),
            node: Node {
                span: self.key_span.clone(),
                typed: String::new(),
                value: Value::Table(Table::default()),
            },
        };
        let entry = table.entries.entry(key.clone()).or_insert_with(empty);
        if let Value::Text(_) = entry.node.value
            && key == "spread"
        {
            *entry = empty();
        }
        match &mut entry.node.value {
            Value::Table(inner) => self.set(inner, below),
            _ => {
                let key = printable(key);
                let right = format!("change the whole of \"{key}\" instead");
                self.wrong(format!("\"{key}\" has no keys of its own"), right)
            }
        }
    }
}

/// That nothing of a kind has a name, and which is meant instead; or what is right where there is none at all.
pub(crate) fn none_called(kind: &str, name: &str, names: &[String], right: &str) -> (String, String) {
    let right = match nearest(name, names.iter().map(String::as_str)) {
        Some(near) => format!("the nearest is \"{near}\""),
        None if names.is_empty() => right.to_owned(),
        None => format!("there are {}", in_quotes(names)),
    };
    (format!("there is no {kind} called \"{}\"", printable(name)), right)
}

/// Names in quotes, a dozen at most.
pub(crate) fn in_quotes(names: &[String]) -> String {
    let shown: Vec<String> = names.iter().take(12).map(|name| format!("\"{name}\"")).collect();
    let more = if names.len() > shown.len() { ", ..." } else { "" };
    format!("{}{more}", shown.join(", "))
}

#[cfg(test)]
mod tests {
    use super::pieces;

    #[test]
    fn a_path_is_taken_apart_at_its_dots_and_quotes_keep_names_whole() {
        let parts = |path: &str| pieces(path).unwrap();
        assert_eq!(parts("raker.helper.count"), ["raker", "helper", "count"]);
        assert_eq!(parts("zone.north half.room"), ["zone", "north half", "room"]);
        assert_eq!(parts("zone.\"plot no. 4\".room"), ["zone", "plot no. 4", "room"]);
        assert_eq!(parts("zone.'a.b'.room"), ["zone", "a.b", "room"]);
        assert_eq!(parts("fill_order"), ["fill_order"]);
        for bad in ["", ".", "zone..room", "zone.\"open.room", "zone. .room"] {
            assert_eq!(pieces(bad), None, "{bad}");
        }
    }
}
