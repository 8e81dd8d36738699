//! The key of an edit: to which value it leads, and what that holds.

use super::draft::{Draft, Step};
use super::fault::Fault;
use crate::document::{Table, Value};
use crate::key::sections::SECTIONS;
use crate::key::{Holds, Key, LeftOut};
use crate::raw::{KINDS, none_called, pieces};
use crate::signs::{composed, printable};

/// A value in a text that may or may not be there.
pub(super) struct Place {
    pub(super) path: Vec<Step>,
    /// What is known of its key; nothing of an entry of a list and of a name in a table of names.
    pub(super) known: Option<&'static Key>,
    pub(super) holds: Option<Holds>,
}

impl Place {
    /// Whether it must be given.
    pub(super) fn is_needed(&self) -> bool {
        self.known.is_some_and(|key| matches!(key.left_out, LeftOut::Needed(_)))
    }

    /// Another key of the same table.
    pub(super) fn beside(&self, key: &str) -> Vec<Step> {
        let above = &self.path[..self.path.len().saturating_sub(1)];
        above.iter().cloned().chain([Step::Key(key.to_owned())]).collect()
    }

    /// The last key on the way.
    pub(super) fn last(&self) -> &str {
        match self.path.last() {
            Some(Step::Key(key)) => key,
            _ => "",
        }
    }

    /// The kind of thing it is a key of, where there may be several, and the key.
    pub(super) fn of_thing(&self) -> Option<(&str, &str)> {
        match self.path.as_slice() {
            [Step::Key(kind), Step::At(_), Step::Key(key)] => Some((kind, key)),
            _ => None,
        }
    }
}

/// Where a key leads.
pub(super) fn place(draft: &Draft, key: &str) -> Result<Place, Fault> {
    let right = "write a key of the file, such as \"loader.compact tractor.heaped\"";
    let pieces = pieces(key).ok_or_else(|| Fault::new("this is not a path of keys", right))?;
    let kind = pieces[0].as_str();
    let mut path = vec![Step::Key(kind.to_owned())];
    let mut rest = &pieces[1..];
    if KINDS.contains(&kind) {
        let name = rest.first().ok_or_else(|| Fault::new("it is not said of what", right))?;
        path.push(Step::At(thing(draft, kind, name)?));
        rest = &rest[1..];
    }
    if rest.is_empty() && path.len() > 1 {
        return Err(Fault::new("this is a whole table, not one of its keys", right));
    }
    for piece in rest {
        let is_list = matches!(draft.node(&path).map(|node| &node.value), Some(Value::List(_)));
        match piece.parse::<usize>() {
            Ok(number) if is_list => path.push(Step::At(number.wrapping_sub(1))),
            _ => path.push(Step::Key(piece.clone())),
        }
    }
    let entry_is_missing =
        |length| draft.node(&path[..length]).is_none() && matches!(path[length - 1], Step::At(_));
    if (1..=path.len()).any(entry_is_missing) {
        return Err(Fault::new(format!("there is no {}", printable(key)), "entries are counted from 1"));
    }
    let (known, holds) = what_is_known(&path);
    Ok(Place { path, known, holds })
}

/// Which of its kind has a name.
pub(super) fn thing(draft: &Draft, kind: &str, name: &str) -> Result<usize, Fault> {
    let names = names(draft.table(), kind);
    let wanted = composed(name.trim());
    if let Some(at) = names.iter().position(|its| *its == wanted) {
        return Ok(at);
    }
    let names: Vec<String> = names.into_iter().map(|name| printable(&name)).collect();
    let (what, right) = none_called(kind, name, &names, &format!("write [[{kind}]] with a name"));
    Err(Fault::new(what, right))
}

/// The names of the things of a kind, in their order; empty where there is none.
pub(super) fn names(table: &Table, kind: &str) -> Vec<String> {
    let Some(Value::List(list)) = table.get(kind).map(|node| &node.value) else { return Vec::new() };
    let name = |node: &crate::document::Node| match &node.value {
        Value::Table(thing) => text(thing, "name").map(|name| composed(name.trim())),
        _ => None,
    };
    list.iter().map(|node| name(node).unwrap_or_default()).collect()
}

/// The text under a key.
pub(super) fn text<'t>(table: &'t Table, key: &str) -> Option<&'t str> {
    match &table.get(key)?.value {
        Value::Text(text) => Some(text),
        _ => None,
    }
}

fn what_is_known(path: &[Step]) -> (Option<&'static Key>, Option<Holds>) {
    let Some(Step::Key(first)) = path.first() else { return (None, None) };
    let named = |section: &&crate::key::Section| section.heading.trim_matches(['[', ']']) == first;
    let (mut keys, rest) = match SECTIONS[1..].iter().find(named) {
        Some(section) => (section.keys, &path[1..]),
        None => (SECTIONS[0].keys, path),
    };
    let (mut known, mut holds) = (None, None);
    for step in rest {
        match step {
            Step::At(_) => known = None,
            Step::Key(name) => {
                known = keys.iter().find(|key| key.name == name);
                holds = known.map(|key| key.holds);
                keys = match holds {
                    Some(Holds::Table(inner) | Holds::List(inner, _)) => inner,
                    _ => &[],
                };
            }
        }
    }
    match (known, path.last()) {
        // An entry of a list may be a text.
        (_, Some(Step::At(_))) => (None, None),
        _ => (known, holds),
    }
}
