//! A text while it is changed: each change exchanges a stretch of it, and the result is read again at once.

use super::fault::{Fault, by_hand};
use super::lines::{
    Form, block_end, form, headings, indent, last_value, line_end, line_start, newline, section,
};
use super::written::key_text;
use crate::document::{self, Entry, Node, Table, Value};
use crate::files::Texts;
use crate::key::sections::order_of;
use crate::source::Source;
use std::ops::Range;

/// A piece of the way to a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// A key of a table.
    Key(String),
    /// An entry of a list, counted from 0.
    At(usize),
}

/// A key with its value as TOML.
pub(super) type Pair = (String, String);

/// A text while it is changed.
pub(super) struct Draft {
    text: String,
    table: Table,
    /// Those the text names.
    pub(super) files: Texts,
}

impl Draft {
    pub(super) fn of(text: &str, files: &Texts) -> Result<Self, Fault> {
        let table = document::parse(text).map_err(|faults| {
            let first = faults.into_iter().next();
            first.map_or_else(by_hand, |fault| Fault::new(fault.what, fault.right))
        })?;
        Ok(Self { text: text.to_owned(), table, files: files.clone() })
    }

    pub(super) fn into_text(self) -> String {
        self.text
    }

    pub(super) fn text(&self) -> &str {
        &self.text
    }

    pub(super) fn table(&self) -> &Table {
        &self.table
    }

    pub(super) fn source(&self) -> Source<'_> {
        Source::new("", &self.text)
    }

    /// The value a way leads to.
    pub(super) fn node(&self, path: &[Step]) -> Option<&Node> {
        let (first, rest) = path.split_first()?;
        let Step::Key(key) = first else { return None };
        let mut node = self.table.get(key)?;
        for step in rest {
            node = match (step, &node.value) {
                (Step::Key(key), Value::Table(table)) => table.get(key)?,
                (Step::At(at), Value::List(list)) => list.get(*at)?,
                _ => return None,
            };
        }
        Some(node)
    }

    /// The table a way leads to.
    pub(super) fn table_at(&self, path: &[Step]) -> Option<&Table> {
        match &self.node(path)?.value {
            Value::Table(table) => Some(table),
            _ => None,
        }
    }

    /// A value as it stands in the text.
    pub(super) fn written(&self, node: &Node) -> &str {
        &self.text[node.span.clone()]
    }

    /// Exchanges a stretch of the text.
    pub(super) fn splice(&mut self, range: Range<usize>, new: &str) -> Result<(), Fault> {
        let mut text = self.text.clone();
        text.replace_range(range, new);
        self.table = document::parse(&text).map_err(|_| by_hand())?;
        self.text = text;
        Ok(())
    }

    /// Sets a value, written as TOML; what is missing on the way is made.
    pub(super) fn put(&mut self, path: &[Step], value: &str) -> Result<(), Fault> {
        if let Some(node) = self.node(path) {
            if form(&self.text, node) == Form::Inline {
                return self.splice(node.span.clone(), value);
            }
            self.cut(path)?;
        }
        let Some((Step::Key(key), above)) = path.split_last() else { return Err(by_hand()) };
        let pair = format!("{} = {value}", key_text(key));
        match above {
            [] => self.put_at_top(&pair)?,
            _ => match self.node(above) {
                Some(Node { value: Value::Table(_), .. }) => self.put_in_table(above, key, &pair)?,
                Some(_) => return self.put(above, &format!("{{ {pair} }}")),
                None => match above {
                    [Step::Key(table)] => {
                        self.put_block(table, &format!("[{}]", key_text(table)), &[pair])?
                    }
                    _ => return self.put(above, &format!("{{ {pair} }}")),
                },
            },
        }
        self.node(path).map(|_| ()).ok_or_else(by_hand)
    }

    fn put_at_top(&mut self, pair: &str) -> Result<(), Fault> {
        let top = 0..headings(&self.text, &self.table).first().copied().unwrap_or(self.text.len());
        let (at, nl) = match last_value(&self.text, &self.table, &top) {
            Some(last) => (line_end(&self.text, last), newline(&self.text)),
            None => (0, newline(&self.text)),
        };
        self.put_line(at, &format!("{pair}{nl}"))
    }

    /// Inserts whole lines at the beginning of a line, or behind a last one that does not end.
    fn put_line(&mut self, at: usize, lines: &str) -> Result<(), Fault> {
        let open = at > 0 && !self.text[..at].ends_with('\n');
        let before = if open { newline(&self.text) } else { "" };
        self.splice(at..at, &format!("{before}{lines}"))
    }

    fn put_in_table(&mut self, above: &[Step], key: &str, pair: &str) -> Result<(), Fault> {
        let (Some(node), Some(table)) = (self.node(above), self.table_at(above)) else {
            return Err(by_hand());
        };
        let nl = newline(&self.text);
        match form(&self.text, node) {
            Form::Inline => {
                let last = table.entries.values().map(|entry| last_of(&entry.node)).max();
                match last {
                    Some(last) => self.splice(last..last, &format!(", {pair}")),
                    None => self.splice(node.span.clone(), &format!("{{ {pair} }}")),
                }
            }
            Form::Heading => {
                let heading = line_start(&self.text, node.span.start);
                let within = section(&self.text, &headings(&self.text, &self.table), heading);
                let last = last_value(&self.text, &self.table, &within);
                let at = self.left_out(&within, key).or(last).unwrap_or(node.span.start);
                let indent = last.map_or("", |_| first_indent(&self.text, table, &within)).to_owned();
                self.put_line(line_end(&self.text, at), &format!("{indent}{pair}{nl}"))
            }
            Form::Dotted => {
                let entry = table.in_order().pop().map(|(_, entry)| entry).ok_or_else(by_hand)?;
                let start = line_start(&self.text, entry.key_span.start);
                let before = self.text[start..entry.key_span.start].to_owned();
                self.put_line(line_end(&self.text, last_of(&entry.node)), &format!("{before}{pair}{nl}"))
            }
        }
    }

    /// Where the line stands by which a key is left out: `# room = 3`.
    fn left_out(&self, within: &Range<usize>, key: &str) -> Option<usize> {
        let mut at = within.start;
        while at < within.end {
            let line = self.text[at..].lines().next().unwrap_or_default().trim_start();
            let rest = line.strip_prefix('#').map(str::trim_start).and_then(|line| line.strip_prefix(key));
            if rest.is_some_and(|rest| rest.trim_start().starts_with('=')) {
                return Some(at);
            }
            at = line_end(&self.text, at);
        }
        None
    }

    /// Writes a table under a heading of its own, after those that usually stand before it.
    pub(super) fn put_block(&mut self, kind: &str, heading: &str, pairs: &[String]) -> Result<(), Fault> {
        let all = headings(&self.text, &self.table);
        let before = |entry: &&(&String, &Entry)| order_of(entry.0) <= order_of(kind);
        let starts = self.table.entries.iter().collect::<Vec<_>>();
        let starts =
            starts.iter().filter(before).filter_map(|(_, entry)| last_heading(&self.text, &entry.node));
        let within = match starts.max() {
            Some(start) => section(&self.text, &all, line_start(&self.text, start)),
            None => 0..all.first().copied().unwrap_or(self.text.len()),
        };
        let at = match starts_with_value(&self.text, &self.table, &within) {
            true => block_end(&self.text, &self.table, &within),
            false => within.end,
        };
        let nl = newline(&self.text);
        let lines = pairs.join(nl);
        let after = if self.text[at..].starts_with(['\n', '\r']) || at == self.text.len() { "" } else { nl };
        let gap = if at == 0 { "" } else { nl };
        self.put_line(at, &format!("{gap}{heading}{nl}{lines}{nl}{after}"))
    }

    /// Adds an entry to a list of tables, behind the last.
    pub(super) fn push(&mut self, path: &[Step], pairs: &[Pair]) -> Result<(), Fault> {
        let lines: Vec<String> =
            pairs.iter().map(|(key, value)| format!("{} = {value}", key_text(key))).collect();
        let heading = match path {
            [Step::Key(kind)] => Some((kind, format!("[[{}]]", key_text(kind)))),
            _ => None,
        };
        let inline = format!("{{ {} }}", lines.join(", "));
        match (self.node(path), heading) {
            (None, Some((kind, heading))) => self.put_block(&kind.clone(), &heading, &lines),
            (Some(node), _) if form(&self.text, node) == Form::Heading => self.push_block(path, &lines),
            _ => self.push_inline(path, &inline),
        }
    }

    /// Adds a value to a list in brackets; one that is not there is made.
    pub(super) fn push_inline(&mut self, path: &[Step], value: &str) -> Result<(), Fault> {
        let Some(node) = self.node(path) else { return self.put(path, &format!("[ {value} ]")) };
        let Value::List(list) = &node.value else { return Err(by_hand()) };
        let (Some(first), Some(last)) = (list.first(), list.last()) else {
            return self.splice(node.span.clone(), &format!("[ {value} ]"));
        };
        let lined = self.text[node.span.start..first.span.start].contains('\n');
        let gap = match lined {
            true => format!("{}{}", newline(&self.text), indent(&self.text, last.span.start)),
            false => " ".to_owned(),
        };
        let (at, rest) = (last.span.end, &self.text[last.span.end..node.span.end]);
        match rest.trim_start().starts_with(',') {
            true => {
                let comma = at + rest.find(',').unwrap_or(0) + 1;
                self.splice(comma..comma, &format!("{gap}{value},"))
            }
            false => self.splice(at..at, &format!(",{gap}{value}")),
        }
    }

    fn push_block(&mut self, path: &[Step], lines: &[String]) -> Result<(), Fault> {
        let Some(Value::List(list)) = self.node(path).map(|node| &node.value) else { return Err(by_hand()) };
        let last = list.last().ok_or_else(by_hand)?;
        let (nl, heading) = (newline(&self.text), self.text[last.span.clone()].to_owned());
        let (at, indent) = (self.block(last).end, indent(&self.text, last.span.start));
        let body = lines.iter().map(|line| format!("{indent}{line}{nl}")).collect::<String>();
        let block = format!("{nl}{indent}{heading}{nl}{body}");
        self.put_line(at, &block)
    }

    /// The lines of a table under a heading, with those of the tables in it.
    pub(super) fn block(&self, node: &Node) -> Range<usize> {
        let start = line_start(&self.text, node.span.start);
        let last = last_heading(&self.text, node).unwrap_or(node.span.start);
        let within = section(&self.text, &headings(&self.text, &self.table), line_start(&self.text, last));
        start..block_end(&self.text, &self.table, &within)
    }
}

/// Behind the last value in it.
pub(super) fn last_of(node: &Node) -> usize {
    match &node.value {
        Value::Table(table) => {
            table.entries.values().map(|entry| last_of(&entry.node)).max().unwrap_or(0).max(node.span.end)
        }
        _ => node.span.end,
    }
}

/// The last heading of a table or list and of all in it.
fn last_heading(text: &str, node: &Node) -> Option<usize> {
    let own = (form(text, node) == Form::Heading).then_some(node.span.start);
    let below = match &node.value {
        Value::Table(table) => table.entries.values().filter_map(|e| last_heading(text, &e.node)).max(),
        Value::List(list) => list.iter().filter_map(|node| last_heading(text, node)).max(),
        _ => None,
    };
    own.max(below)
}

fn first_indent<'t>(text: &'t str, table: &Table, within: &Range<usize>) -> &'t str {
    let first = table.in_order().into_iter().find(|(_, entry)| within.contains(&entry.key_span.start));
    first.map_or("", |(_, entry)| indent(text, entry.key_span.start))
}

fn starts_with_value(text: &str, table: &Table, within: &Range<usize>) -> bool {
    within.start > 0 || last_value(text, table, within).is_some()
}
