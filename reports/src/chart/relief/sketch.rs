//! Draws the figure: a dot for the mean, a line for its interval, the value in words behind it.

use super::ReliefData;
use crate::chart::axis::{Heading, MARGIN, grid, level, numbers, with_room};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::rows::Names;
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

/// Draws the figure. Its height follows from the number of rows.
pub(crate) fn draw(data: &ReliefData, size: Size) -> Result<String, ChartError> {
    draw_as("relief", data, size)
}

/// Draws other means with their lines in the same manner, under another name.
pub(crate) fn draw_as(figure: &'static str, data: &ReliefData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.rows.is_empty() {
        return Err(ChartError::Nothing("there was nothing to improve"));
    }
    let rows: Vec<String> = data.rows.iter().map(|row| format!("{}: {}", row.name, row.words)).collect();
    let description = format!("{}. {}.", data.note, rows.join("; "));
    let about = About { figure, title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(data, size);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

struct Sketch<'a> {
    data: &'a ReliefData,
    size: Size,
    heading: Heading,
    names: Names,
    note: Vec<String>,
    area: Area,
    /// Where the values in words begin, if they have a column of their own \[px\].
    column: Option<f64>,
    /// From the top of a row to the middle of its name, of its line, and of its words \[px\].
    levels: [f64; 3],
    pitch: f64,
    range: (f64, f64),
}

impl<'a> Sketch<'a> {
    fn new(data: &'a ReliefData, size: Size) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let names = Names::new(data.rows.iter().map(|row| row.name.as_str()), size);
        let words = data.rows.iter().map(|row| soft.width(&row.words)).fold(0.0, f64::max);
        let room = width - MARGIN - names.right;
        // On a narrow figure the words stand below the line instead of behind it.
        let column = (room - words >= 0.5 * words + 6.0 * soft.px).then_some(width - MARGIN - words);
        let row = (names.row_height() + soft.px * 0.6).max(soft.px * 2.2);
        let (pitch, levels) = if column.is_some() {
            (row, [row / 2.0; 3])
        } else if room - soft.px * 0.4 >= words {
            let pitch = row.max(soft.px * 3.2);
            (pitch, [0.5, 0.3, 0.72].map(|share| share * pitch))
        } else {
            // Words that reach below the names.
            (row + soft.line(), [row / 2.0, row / 2.0, row + soft.line() * 0.25])
        };
        let note = soft.wrap(&data.note, width - 2.0 * MARGIN, 4);
        let top = heading.height() + soft.px * 0.3;
        let bottom = top + data.rows.len() as f64 * pitch;
        let right = column.map_or(width - MARGIN - soft.px, |column| column - soft.px * 1.2);
        let area = Area { left: names.right + soft.px * 0.4, top, right, bottom };
        let foot = soft.px * 0.65 + soft.line() * (1.0 + note.len() as f64) + MARGIN * 0.5;
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, names, note, area, column, levels, pitch, range: range(data) }
    }

    fn x(&self, value: f64) -> f64 {
        self.area.x(value, self.range)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area) = (Type::soft(self.size), self.area);
        self.heading.draw(paper)?;
        let ticks = numbers(area, self.range, soft.px * 3.6);
        grid(paper, area, &ticks)?;
        paper.line(&[(self.x(0.0), area.top), (self.x(0.0), area.bottom)], ink::TEXT, 1.6)?;
        for row in 0..self.data.rows.len() {
            self.draw_row(paper, row)?;
        }
        let kept = with_room(ticks, soft, MARGIN * 0.5, f64::from(self.size.width) - MARGIN * 0.5);
        let below = level(paper, area, &kept, soft)?;
        paper.lines(&self.note, (f64::from(self.size.width) / 2.0, below), Side::Around, soft).map(|_| ())
    }

    fn draw_row(&self, paper: &Paper<'_>, row: usize) -> Done {
        let soft = Type::soft(self.size);
        let how = soft.coloured(ink::TEXT);
        let top = self.area.top + row as f64 * self.pitch;
        let [name, middle, at] = self.levels.map(|level| top + level);
        let data = &self.data.rows[row];
        self.names.draw(paper, row, name)?;
        let colour = if data.saved < 0.0 { ink::AGAINST } else { ink::MAIN };
        let bar = soft.px * 0.28;
        let (zero, saved) = (self.x(0.0), self.x(data.saved));
        let area =
            Area { left: zero.min(saved), right: zero.max(saved), top: middle - bar, bottom: middle + bar };
        paper.fill(area, if data.saved < 0.0 { ink::BREAK } else { ink::RANGE })?;
        if let Some((low, high)) = data.interval {
            let (low, high) = (self.x(low), self.x(high));
            paper.line(&[(low, middle), (high, middle)], colour, 2.2)?;
            for end in [low, high] {
                paper.line(&[(end, middle - bar * 1.3), (end, middle + bar * 1.3)], colour, 1.6)?;
            }
        }
        paper.dot((saved, middle), soft.px * 0.32, colour)?;
        match self.column {
            Some(column) => paper.text_level(&data.words, (column, middle), Side::RightOf, how),
            None => {
                let width = how.width(&data.words);
                let latest = f64::from(self.size.width) - MARGIN - width;
                let left =
                    (saved - width / 2.0).min(latest).max(self.area.left.min(latest)).max(MARGIN * 0.5);
                let half = how.px * 0.6;
                paper.fill(
                    Area { left: left - 2.0, top: at - half, right: left + width + 2.0, bottom: at + half },
                    ink::PAPER,
                )?;
                paper.text_level(&data.words, (left, at), Side::RightOf, how)
            }
        }
    }
}

/// From and to of the axis: all means and intervals, zero, and some room.
fn range(data: &ReliefData) -> (f64, f64) {
    let ends = data.rows.iter().flat_map(|row| {
        let (low, high) = row.interval.unwrap_or((row.saved, row.saved));
        [row.saved, low, high]
    });
    let (low, high) = ends.fold((0.0_f64, 0.0_f64), |(low, high), v| (low.min(v), high.max(v)));
    let span = if high > low { high - low } else { 1.0 };
    (if low < 0.0 { low - span * 0.06 } else { -span * 0.02 }, high + span * 0.06)
}
