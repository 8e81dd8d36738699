//! `[[alternative]]`: named variants of the same job.

use super::TOP;
use crate::document::{Entry, Node, Table, Value};
use crate::fields::{Fields, Item, printable};
use crate::ledger::{At, Ledger, Place};
use crate::nearest::nearest;
use std::ops::Range;

/// Kinds of thing of which a file may have several.
const KINDS: &[&str] = &["zone", "stockpile", "loader", "raker", "pass"];
/// Most alternatives of one file.
const MOST: usize = 30;
const RIGHT: &str =
    "write change = { \"loader.compact tractor.heaped\" = \"20 ft3\" }, with the file's own keys";

/// An alternative as typed.
pub(crate) struct RawAlternative {
    pub(crate) name: At<String>,
    /// Where its heading stands, and all it says.
    pub(crate) spans: Vec<Range<usize>>,
    changes: Vec<Change>,
}

/// One change: the path of a key, its pieces, and the new value.
struct Change {
    path: Vec<String>,
    place: Place,
    key_span: Range<usize>,
    node: Node,
}

/// Reads the alternatives of a file.
pub(crate) fn alternatives(table: &Table, ledger: &mut Ledger<'_>) -> Vec<RawAlternative> {
    let Some(node) = table.get("alternative") else {
        return Vec::new();
    };
    let place =
        Place { words: "alternative".into(), path: "alternative".into(), span: Some(node.span.clone()) };
    let item = Item { node, place };
    let list = match &node.value {
        Value::List(list) if list.len() <= MOST => list,
        Value::List(list) => {
            item.wrong(format!("there are {} of them", list.len()), format!("give at most {MOST}"), ledger);
            return Vec::new();
        }
        other => {
            let right = "write [[alternative]] in double brackets, once for each";
            item.wrong(format!("this is {}, not a list of alternatives", other.name()), right, ledger);
            return Vec::new();
        }
    };
    let mut all: Vec<RawAlternative> = Vec::new();
    for (i, node) in list.iter().enumerate() {
        let words = format!("alternative {}", i + 1);
        let place = Place { path: words.clone(), words, span: Some(node.span.clone()) };
        let Some(one) = alternative(&Item { node, place }, ledger) else {
            continue;
        };
        if all.iter().any(|other| other.name.value == one.name.value) {
            ledger.wrong_at(&one.name, "two alternatives have this name", "give each a name of its own");
        }
        all.push(one);
    }
    all
}

fn alternative(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<RawAlternative> {
    let fields = Fields::of(item, &["name", "change"], ledger)?;
    let name = fields
        .need("name", "give every alternative a name", ledger)
        .and_then(|item| item.text("write a name in quotes", ledger));
    let change = fields.need("change", RIGHT, ledger)?;
    let Value::Table(table) = &change.node.value else {
        change.wrong(format!("this is {}, where a table is wanted", change.node.value.name()), RIGHT, ledger);
        return None;
    };
    let mut change = change;
    let mut place = change.place.clone();
    if let Some(name) = &name {
        place.words = format!("alternative \"{}\"", name.value);
        change.place.words = format!("{}.change", place.words);
    }
    let mut changes = Vec::new();
    collect(table, &[], &place, &mut changes, ledger);
    if table.entries.is_empty() {
        change.wrong("nothing is changed", RIGHT, ledger);
    }
    let name = name?;
    let mut spans = vec![item.node.span.clone(), name.place.span.clone().unwrap_or_default()];
    spans.push(change.node.span.clone());
    for change in &changes {
        spans.extend([change.key_span.clone(), change.node.span.clone()]);
    }
    Some(RawAlternative { name, spans, changes })
}

/// Changes of a table; keys with dots that are not in quotes arrive as tables in tables.
fn collect(
    table: &Table,
    above: &[String],
    place: &Place,
    changes: &mut Vec<Change>,
    ledger: &mut Ledger<'_>,
) {
    for (key, entry) in table.in_order() {
        let shown = printable(key);
        let mut here = place.clone().at(&entry.key_span);
        here.words = format!("{}: {shown}", place.words);
        let Some(pieces) = pieces(key) else {
            ledger.problem(&here, &entry.node.typed, "this is not a path of keys", RIGHT);
            continue;
        };
        let path: Vec<String> = above.iter().cloned().chain(pieces).collect();
        let first = path[0].as_str();
        if first == "alternative" {
            let right = "an alternative changes the job, not another alternative";
            ledger.problem(&here, &entry.node.typed, "alternatives cannot be changed", right);
        } else if !TOP.contains(&first) {
            let near = nearest(first, TOP.iter().copied().filter(|key| *key != "alternative"));
            let right =
                near.map_or_else(|| RIGHT.to_owned(), |near| format!("the nearest known key is \"{near}\""));
            ledger.problem(&here, &entry.node.typed, format!("\"{first}\" is not known"), right);
        } else if path.len() >= depth_of(first, &entry.node) {
            let (key_span, node) = (entry.key_span.clone(), entry.node.clone());
            changes.push(Change { path, place: here, key_span, node });
        } else if let Value::Table(inner) = &entry.node.value {
            collect(inner, &path, place, changes, ledger);
        } else {
            let what = "this is a whole table, not one of its keys";
            ledger.problem(&here, &entry.node.typed, what, RIGHT);
        }
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
fn pieces(path: &str) -> Option<Vec<String>> {
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

impl RawAlternative {
    /// The file with the changes made, if all of them name something.
    pub(crate) fn apply(&self, table: &Table, ledger: &mut Ledger<'_>) -> Option<Table> {
        let mut table = table.clone();
        let mut sound = true;
        for change in &self.changes {
            sound &= change.make(&mut table, ledger);
        }
        sound.then_some(table)
    }
}

impl Change {
    fn make(&self, table: &mut Table, ledger: &mut Ledger<'_>) -> bool {
        let first = self.path[0].as_str();
        if !KINDS.contains(&first) {
            return self.set(table, &self.path, ledger);
        }
        let name = self.path[1].as_str();
        let mut names = Vec::new();
        if let Some(Entry { node: Node { value: Value::List(list), .. }, .. }) = table.entries.get_mut(first)
        {
            for node in list {
                let Value::Table(thing) = &mut node.value else { continue };
                match thing.get("name").map(|node| &node.value) {
                    Some(Value::Text(its)) if its.trim() == name => {
                        return self.set(thing, &self.path[2..], ledger);
                    }
                    Some(Value::Text(its)) => names.push(its.clone()),
                    _ => {}
                }
            }
        }
        let right = match nearest(name, names.iter().map(String::as_str)) {
            Some(near) => format!("the nearest is \"{near}\""),
            None if names.is_empty() => RIGHT.to_owned(),
            None => format!("there are {}", quoted(&names)),
        };
        ledger.problem(
            &self.place,
            &self.node.typed,
            format!("there is no {first} called \"{name}\""),
            right,
        );
        false
    }

    fn set(&self, table: &mut Table, path: &[String], ledger: &mut Ledger<'_>) -> bool {
        let Some((key, below)) = path.split_first() else {
            return false;
        };
        if below.is_empty() {
            let entry = Entry { key_span: self.key_span.clone(), node: self.node.clone() };
            table.entries.insert(key.clone(), entry);
            return true;
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
            Value::Table(inner) => self.set(inner, below, ledger),
            _ => {
                let right = format!("change the whole of \"{key}\" instead");
                ledger.problem(
                    &self.place,
                    &self.node.typed,
                    format!("\"{key}\" has no keys of its own"),
                    right,
                );
                false
            }
        }
    }
}

/// Names in quotes, a dozen at most.
pub(crate) fn quoted(names: &[String]) -> String {
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
