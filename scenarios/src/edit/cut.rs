//! Values, entries of lists and tables taken out of a text.

use super::draft::{Draft, Step};
use super::fault::{Fault, by_hand};
use super::lines::{Form, form, indent, line_end, line_start, newline};
use crate::document::{Node, Value};
use std::ops::Range;

impl Draft {
    /// Takes a key with its value, or an entry of a list, out of the text. What is not there is left so.
    pub(super) fn cut(&mut self, path: &[Step]) -> Result<(), Fault> {
        let (Some(node), Some((last, above))) = (self.node(path), path.split_last()) else { return Ok(()) };
        match (form(self.text(), node), last) {
            (Form::Heading, _) => self.cut_blocks(path),
            (Form::Inline, Step::At(_)) => {
                let range = node.span.clone();
                self.cut_between(range.start, range.end)
            }
            (Form::Dotted, _) => {
                let inner: Vec<String> = self
                    .table_at(path)
                    .map_or_else(Vec::new, |table| table.entries.keys().cloned().collect());
                inner.into_iter().try_for_each(|key| {
                    let path: Vec<Step> = path.iter().cloned().chain([Step::Key(key)]).collect();
                    self.cut(&path)
                })
            }
            (Form::Inline, Step::Key(key)) => {
                let table = if above.is_empty() { Some(self.table()) } else { self.table_at(above) };
                let entry = table.and_then(|table| table.entries.get(key)).ok_or_else(by_hand)?;
                let (start, end) = (entry.key_span.start, node.span.end);
                match self.in_braces(above) {
                    true => self.cut_between(start, end),
                    false => self.cut_line(start, end),
                }
            }
        }
    }

    /// Whether a table, or one it is in, stands in braces.
    fn in_braces(&self, path: &[Step]) -> bool {
        (1..=path.len()).any(|length| {
            self.node(&path[..length]).is_some_and(|node| self.text()[node.span.start..].starts_with('{'))
        })
    }

    /// An entry between commas, with one of them.
    fn cut_between(&mut self, start: usize, end: usize) -> Result<(), Fault> {
        let text = self.text();
        let begin = text[..start].rfind(['{', ',', '[']).map_or(start, |at| at + 1);
        let begin = begin + (text[begin..start].len() - text[begin..start].trim_start().len());
        let rest = &text[end..];
        let range = if rest.trim_start().starts_with(',') {
            let comma = end + rest.find(',').unwrap_or(0) + 1;
            begin
                ..comma
                    + (text[comma..].len() - text[comma..].trim_start_matches([' ', '\t', '\r', '\n']).len())
        } else {
            let before = text[..begin].trim_end();
            if before.ends_with(',') { before.len() - 1..end } else { begin..end }
        };
        self.splice(range, "")
    }

    /// Whole lines; a comment behind them stays, on a line of its own.
    fn cut_line(&mut self, start: usize, end: usize) -> Result<(), Fault> {
        let text = self.text();
        let lines = line_start(text, start)..line_end(text, end);
        let rest = text[end..lines.end].trim();
        let kept = match rest.is_empty() {
            true => String::new(),
            false => format!("{}{rest}{}", indent(text, start), newline(text)),
        };
        self.splice(lines, &kept)
    }

    /// Tables under headings, each with the empty line behind it.
    fn cut_blocks(&mut self, path: &[Step]) -> Result<(), Fault> {
        let node = self.node(path).ok_or_else(by_hand)?;
        let nodes: Vec<&Node> = match &node.value {
            Value::List(list) => list.iter().collect(),
            _ => vec![node],
        };
        let mut ranges: Vec<Range<usize>> =
            nodes.into_iter().map(|node| self.with_gap(self.block(node))).collect();
        ranges.sort_by_key(|range| std::cmp::Reverse(range.start));
        ranges.into_iter().try_for_each(|range| self.splice(range, ""))
    }

    /// The empty line behind a block goes with it; at the end of the text the one before.
    fn with_gap(&self, block: Range<usize>) -> Range<usize> {
        let text = self.text();
        let empty = |at: usize| at < text.len() && text[at..line_end(text, at)].trim().is_empty();
        if empty(block.end) {
            return block.start..line_end(text, block.end);
        }
        let before = block.start.checked_sub(1).map_or(0, |end| line_start(text, end));
        match block.end == text.len() && before < block.start && empty(before) {
            true => before..block.end,
            false => block,
        }
    }
}
