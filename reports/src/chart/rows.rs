//! Figures with a row for each loader, raker or improvement: the column of names and the height it takes.

use super::axis::MARGIN;
use super::letters::wrap_name;
use super::paper::{Paper, Side, Type};
use super::{ChartError, Size};

/// Share of the width names may take.
const MOST: f64 = 0.3;

/// The names of the rows, broken into at most two lines.
pub(super) struct Names {
    lines: Vec<Vec<String>>,
    how: Type,
    /// Where what the rows show begins \[px\].
    pub(super) right: f64,
}

impl Names {
    pub(super) fn new<'a>(names: impl Iterator<Item = &'a str>, size: Size) -> Self {
        let how = Type::plain(size);
        let room = f64::from(size.width) * MOST;
        let lines: Vec<Vec<String>> = names.map(|name| wrap_name(name, how.px, room, 2)).collect();
        let widest = lines.iter().flatten().map(|line| how.width(line)).fold(0.0, f64::max);
        Self { lines, how, right: MARGIN + widest + how.px * 0.7 }
    }

    /// Least height of a row \[px\].
    pub(super) fn row_height(&self) -> f64 {
        let most = self.lines.iter().map(Vec::len).max().unwrap_or(1);
        self.pitch() * most as f64 + self.how.px * 0.5
    }

    fn pitch(&self) -> f64 {
        self.how.px * 1.12
    }

    /// Sets the name of a row before it, level with its middle.
    pub(super) fn draw(&self, paper: &Paper<'_>, row: usize, middle: f64) -> Result<(), ChartError> {
        let lines = self.lines.get(row).map_or(&[][..], Vec::as_slice);
        let top = middle - self.pitch() * (lines.len() as f64 - 1.0) / 2.0;
        for (i, line) in lines.iter().enumerate() {
            let at = (self.right - self.how.px * 0.7, top + i as f64 * self.pitch());
            paper.text_level(line, at, Side::LeftOf, self.how)?;
        }
        Ok(())
    }
}
