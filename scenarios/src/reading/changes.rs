//! Changes asked for on the command line, and what is wrong with them told at them.

use super::turn::{Before, Setting, turn};
use crate::change::Change;
use crate::diagnostics::{Place, Read};
use crate::document::{self, Entry, Node, Table, Value};
use crate::fields::{Around, Item};
use crate::key::alternative::CHANGE_RIGHT;
use crate::key::sections::top;
use crate::knob::Knob;
use crate::nearest::nearest;
use crate::problem::Problem;
use crate::raw::{self, RawChange};
use crate::signs::escaped;
use crate::signs::printable;
use std::ops::Range;

const RIGHT: &str = "write a key of the file, such as \"loader.compact tractor.heaped = 22 ft3\", or one of rakers, \
                     loaders, bucket, haul and room";

/// A change asked for, and what it is called in messages.
#[derive(Clone, Debug)]
pub(crate) struct Asked {
    /// The change.
    pub(crate) change: Change,
    /// `--change "rakers = 0"`.
    pub(crate) label: String,
}

impl Asked {
    /// By `--change`.
    pub(crate) fn by_change(change: &Change) -> Self {
        Self { change: change.clone(), label: format!("--change \"{}\"", shown(change)) }
    }

    /// As one value of a sweep.
    pub(crate) fn by_value(change: &Change) -> Self {
        Self { change: change.clone(), label: shown(change) }
    }
}

/// A change in one line that is not too long to be shown.
fn shown(change: &Change) -> String {
    let text = change.to_string();
    let cut: String = text.chars().take(160).collect();
    let more = if cut.len() < text.len() { "..." } else { "" };
    escaped(&cut) + more
}

/// Where a change stands: behind the end of the text, so that its problems are told from those of the file.
pub(super) struct Mark {
    label: String,
    key: Range<usize>,
    value: Range<usize>,
    typed: String,
}

/// Marks for changes, one behind the other.
pub(super) fn marks(asked: &[Asked], text: &str) -> Vec<Mark> {
    let mut at = text.len() + 1;
    let mut all = Vec::new();
    for one in asked {
        let key = at..at + one.change.key.len() + 1;
        let value = key.end..key.end + one.change.value.len() + 1;
        at = value.end;
        all.push(Mark { label: one.label.clone(), key, value, typed: printable(&one.change.value) });
    }
    all
}

/// What a change comes to.
pub(super) enum Changed {
    /// Keys of the document.
    Keys(Vec<RawChange>),
    /// Values of the things typed in.
    Settings(Vec<Setting>),
}

/// What a change of a document comes to. `before` gives the job as it stands before it, for knobs.
pub(super) fn read(
    change: &Change,
    mark: &Mark,
    table: &Table,
    before: Option<&Before<'_>>,
) -> Read<Changed> {
    let place = Place { span: Some(mark.value.clone()), ..Place::default() };
    let node = match value(&change.value) {
        Ok(value) => Node { span: mark.value.clone(), typed: mark.typed.clone(), value: marked(value, mark) },
        Err(what) => {
            let right = "texts stand in quotes inside brackets, as in [ \"12:00-12:30\" ]";
            return Read::problem(&place, "", what, right);
        }
    };
    let key = match (Knob::of(&change.key), before) {
        (Knob::Key(key), _) => key,
        (knob, Some(before)) => {
            let item = Item { node: &node, place, around: Around::NOTHING };
            return turn(&knob, &item, before).map(Changed::Settings);
        }
        (_, None) => return Read::made(Changed::Settings(Vec::new())),
    };
    let place = Place { span: Some(mark.key.clone()), ..Place::default() };
    if let Some(right) = longer(&key, table) {
        return Read::problem(&place, "", "it is not said of what", right);
    }
    if let (false, false, Some(near)) =
        (key.contains('.'), top().any(|word| word == key), nearest(&key, Knob::WORDS))
    {
        let what = format!("\"{key}\" is not known");
        return Read::problem(&place, "", what, format!("the nearest is \"{near}\""));
    }
    let entry = Entry { key_span: mark.key.clone(), node };
    raw::changes(&Table { entries: [(key, entry)].into() }).map(Changed::Keys)
}

/// The value of a change: a TOML value if it is one, else a text.
fn value(typed: &str) -> Result<Value, String> {
    match document::alone(typed) {
        Ok(value) => Ok(value),
        Err(faults) if typed.starts_with(['"', '\'', '[', '{']) => {
            Err(faults.into_iter().next().map_or_else(|| "this is no value".into(), |fault| fault.what))
        }
        _ => Ok(Value::Text(typed.to_owned())),
    }
}

/// The same value with all that is in it standing at the mark.
fn marked(value: Value, mark: &Mark) -> Value {
    let node = |node: Node| Node { span: mark.value.clone(), value: marked(node.value, mark), ..node };
    match value {
        Value::List(list) => Value::List(list.into_iter().map(node).collect()),
        Value::Table(table) => {
            let entry = |(key, entry): (String, Entry)| {
                (key, Entry { key_span: mark.value.clone(), node: node(entry.node) })
            };
            Value::Table(Table { entries: table.entries.into_iter().map(entry).collect() })
        }
        plain => plain,
    }
}

/// What to write in place of a key that leaves out of which thing it is: `heaped`, `loader.heaped`.
fn longer(key: &str, table: &Table) -> Option<String> {
    let (kind, last) = key.rsplit_once('.').map_or((None, key), |(kind, last)| (Some(kind), last));
    let kind = raw::kind_of(kind, last)?;
    let names: Vec<String> = match table.get(kind).map(|node| &node.value) {
        Some(Value::List(list)) => list.iter().filter_map(name).collect(),
        _ => Vec::new(),
    };
    let first = names.first()?;
    if names.iter().any(|name| name == last) {
        return None;
    }
    let first = if first.contains('.') { format!("\"{first}\"") } else { first.clone() };
    Some(format!("write \"{kind}.{first}.{last}\""))
}

fn name(node: &Node) -> Option<String> {
    let Value::Table(thing) = &node.value else { return None };
    match &thing.get("name")?.value {
        Value::Text(name) => Some(name.trim().to_owned()),
        _ => None,
    }
}

/// Problems of a changed document, told at the changes: at the one concerned if that is known, else at all of them.
pub(super) fn told(problems: Vec<Problem>, marks: &[Mark]) -> Vec<Problem> {
    let mut told: Vec<Problem> = problems.into_iter().map(|problem| one(problem, marks)).collect();
    told.dedup();
    told
}

fn one(problem: Problem, marks: &[Mark]) -> Problem {
    let start = problem.span.as_ref().map(|span| span.start);
    let inside = |mark: &&Mark| start.is_some_and(|start| (mark.key.start..mark.value.end).contains(&start));
    let mark = marks.iter().find(inside);
    let label = match mark {
        Some(mark) => mark.label.clone(),
        None => marks.iter().map(|mark| mark.label.as_str()).collect::<Vec<_>>().join(", "),
    };
    // What concerns the change as a whole needs no second key and value beside those in its label.
    let whole = mark.is_some_and(|mark| problem.value == mark.typed || start == Some(mark.key.start));
    let (more, value) = match (whole, problem.key.is_empty()) {
        (true, _) => (String::new(), String::new()),
        (false, true) => (String::new(), problem.value),
        (false, false) => (format!(": {}", problem.key), problem.value),
    };
    let right = if problem.right == CHANGE_RIGHT { RIGHT.into() } else { problem.right };
    Problem { span: None, line: 0, column: 0, key: label + &more, value, right, ..problem }
}

#[cfg(test)]
mod tests;
