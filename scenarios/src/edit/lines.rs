//! Where lines and blocks of a text begin and end.

use crate::document::{Node, Table, Value};
use std::ops::Range;

/// How a table or list is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// Under a heading in brackets.
    Heading,
    /// In braces or brackets, behind its key.
    Inline,
    /// By keys with dots in them, without a place of its own.
    Dotted,
}

/// The form of a value; plain ones are inline.
pub(super) fn form(text: &str, node: &Node) -> Form {
    let begins = |sign| text[node.span.start..].starts_with(sign);
    match &node.value {
        Value::Table(_) if begins("[") => Form::Heading,
        Value::Table(_) if begins("{") => Form::Inline,
        Value::Table(_) => Form::Dotted,
        Value::List(list) => list.first().map_or(Form::Inline, |first| match &first.value {
            Value::Table(_) => form(text, first),
            _ => Form::Inline,
        }),
        _ => Form::Inline,
    }
}

pub(super) fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(0, |end| end + 1)
}

/// Behind the end of the line, the sign that ends it included.
pub(super) fn line_end(text: &str, at: usize) -> usize {
    text[at..].find('\n').map_or(text.len(), |end| at + end + 1)
}

/// How lines end in a text.
pub(super) fn newline(text: &str) -> &'static str {
    if text.contains("\r\n") { "\r\n" } else { "\n" }
}

/// The spaces a line begins with.
pub(super) fn indent(text: &str, at: usize) -> &str {
    let line = &text[line_start(text, at)..];
    &line[..line.len() - line.trim_start_matches([' ', '\t']).len()]
}

/// Where the headings of a text stand.
pub(super) fn headings(text: &str, table: &Table) -> Vec<usize> {
    let mut all = Vec::new();
    visit(table, &mut |node| {
        if form(text, node) == Form::Heading && matches!(node.value, Value::Table(_)) {
            all.push(line_start(text, node.span.start));
        }
    });
    all.sort_unstable();
    all
}

/// From a heading to the next, whatever stands between.
pub(super) fn section(text: &str, headings: &[usize], at: usize) -> Range<usize> {
    let next = headings.iter().copied().find(|heading| *heading > at);
    at..next.unwrap_or(text.len())
}

/// The end of the last value that begins in a stretch of the text.
pub(super) fn last_value(text: &str, table: &Table, within: &Range<usize>) -> Option<usize> {
    let mut last = None;
    visit(table, &mut |node| {
        let is_value = match &node.value {
            Value::Table(_) => form(text, node) == Form::Inline,
            Value::List(_) => form(text, node) == Form::Inline,
            _ => true,
        };
        if is_value && within.contains(&node.span.start) {
            last = last.max(Some(node.span.end));
        }
    });
    last
}

/// Every value of a table and of the tables and lists in it.
fn visit(table: &Table, see: &mut impl FnMut(&Node)) {
    for entry in table.entries.values() {
        visit_node(&entry.node, see);
    }
}

fn visit_node(node: &Node, see: &mut impl FnMut(&Node)) {
    see(node);
    match &node.value {
        Value::Table(table) => visit(table, see),
        Value::List(list) => list.iter().for_each(|node| visit_node(node, see)),
        _ => {}
    }
}

/// Where a block ends: behind its last value or heading and the lines of comment that follow without an empty line.
pub(super) fn block_end(text: &str, table: &Table, section: &Range<usize>) -> usize {
    let last = last_value(text, table, section).unwrap_or(section.start);
    let mut end = line_end(text, last);
    while end < section.end && text[end..].trim_start_matches([' ', '\t']).starts_with('#') {
        end = line_end(text, end);
    }
    end
}
