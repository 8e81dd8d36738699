//! Sections: a heading on the left, what it says on the right.

use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width, presets::NOTHING};

/// Columns taken by the headings and the gap after them.
const MARGIN: u16 = 18;
/// Narrower than this nothing is laid out well; longer lines are left to the terminal.
const LEAST_WIDTH: u16 = 60;
/// Wider than this lines are hard to read.
const GREATEST_WIDTH: u16 = 100;

/// A screen under construction.
pub(crate) struct Layout {
    text: String,
    width: u16,
}

impl Layout {
    /// An empty one for a screen of this many columns.
    pub(crate) fn new(columns: u16) -> Self {
        Self { text: String::new(), width: columns.clamp(LEAST_WIDTH, GREATEST_WIDTH) }
    }

    /// Adds a section; its lines are folded where they are too long.
    pub(crate) fn section(&mut self, heading: &str, lines: impl IntoIterator<Item = String>) -> &mut Self {
        let body = keep_figures_whole(&lines.into_iter().collect::<Vec<_>>().join("\n"));
        let (heading, body) = (folded(heading, MARGIN), folded(&body, self.body_width()));
        let margin = " ".repeat(usize::from(MARGIN));
        for line in 0..heading.len().max(body.len()) {
            let heading = heading.get(line).map(|heading| format!("{BOLD}{heading}{PLAIN}"));
            let body = body.get(line).map_or("", String::as_str);
            self.line(&format!("{}{body}", heading.as_ref().unwrap_or(&margin)));
        }
        self
    }

    /// Adds an empty line.
    pub(crate) fn gap(&mut self) -> &mut Self {
        self.line("");
        self
    }

    /// Columns there are for what a section says.
    pub(crate) fn body_width(&self) -> u16 {
        self.width - MARGIN
    }

    /// The screen, without spaces at the ends of lines.
    pub(crate) fn text(&mut self) -> String {
        std::mem::take(&mut self.text)
    }

    fn line(&mut self, line: &str) {
        self.text.push_str(&line.trim_end().replace(NO_BREAK, " "));
        self.text.push('\n');
    }
}

/// How a terminal is told to write in bold (ECMA-48, select graphic rendition), and no longer.
const BOLD: &str = "\u{1b}[1m";
const PLAIN: &str = "\u{1b}[0m";

/// A screen without its styling.
pub fn plain(screen: &str) -> String {
    screen.replace(BOLD, "").replace(PLAIN, "")
}

/// A text in lines of this width, each filled up to it.
fn folded(text: &str, width: u16) -> Vec<String> {
    let mut table = Table::new();
    table.load_style(NOTHING).set_content_arrangement(ContentArrangement::Dynamic).set_width(width);
    table.add_row([text]);
    for column in table.column_iter_mut() {
        column.set_padding((0, 0)).set_constraint(ColumnConstraint::Absolute(Width::Fixed(width)));
    }
    table.lines().collect()
}

const NO_BREAK: char = '\u{a0}';

/// Holds a figure and its unit together where lines are folded.
fn keep_figures_whole(text: &str) -> String {
    let next = text.chars().skip(1).map(Some).chain([None]);
    let mut before = ' ';
    let mut held = String::with_capacity(text.len());
    for (c, next) in text.chars().zip(next) {
        let in_figure =
            before == '±' || before.is_ascii_digit() && next.is_some_and(|n| n.is_alphabetic() || n == '%');
        held.push(if c == ' ' && in_figure { NO_BREAK } else { c });
        before = c;
    }
    held
}

/// A small table as lines: first column to the left, those named to the right, two spaces between.
pub(crate) fn lines(
    header: &[&str],
    rows: Vec<Vec<String>>,
    to_the_right: &[usize],
    width: u16,
) -> Vec<String> {
    let mut table = Table::new();
    table.load_style(NOTHING).set_content_arrangement(ContentArrangement::Dynamic).set_width(width);
    if !header.is_empty() {
        table.set_header(header.to_vec());
    }
    table.add_rows(rows.iter().map(|row| row.iter().map(|cell| keep_figures_whole(cell))));
    let last = table.column_count().saturating_sub(1);
    for (i, column) in table.column_iter_mut().enumerate() {
        column.set_padding((0, if i == last { 0 } else { 2 }));
        if to_the_right.contains(&i) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table.lines().map(|line| line.trim_end().replace(NO_BREAK, " ")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_is_never_parted_from_its_unit() {
        let mut layout = Layout::new(60);
        let text = layout
            .section("Short", ["It takes all of forty words and even 2 h 33 min more".to_owned()])
            .text();
        let lines: Vec<&str> = text.lines().collect();
        assert!(lines.iter().all(|line| !line.ends_with(|c: char| c.is_ascii_digit())), "{text}");
        assert!(text.contains("33 min") && !text.contains(NO_BREAK), "{text}");
    }
}
