//! Draws the figure: a band from the P10 to the P90, an upright line for the middle run, a dot for the mean.

use super::SavedData;
use crate::chart::axis::{Heading, MARGIN, grid, level, numbers, with_room};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::rows::Names;
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

/// Draws the figure. Its height follows from the number of rows.
pub(crate) fn draw(data: &SavedData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.rows.is_empty() {
        return Err(ChartError::Nothing("there is nothing to compare with the first job"));
    }
    let rows: Vec<String> = data.rows.iter().map(|row| format!("{}: {}", row.name, row.words)).collect();
    let description = format!("{}. {}.", data.note, rows.join("; "));
    let about = About { figure: data.figure, title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(data, size);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

struct Sketch<'a> {
    data: &'a SavedData,
    size: Size,
    heading: Heading,
    names: Names,
    note: Vec<String>,
    area: Area,
    pitch: f64,
    range: (f64, f64),
}

impl<'a> Sketch<'a> {
    fn new(data: &'a SavedData, size: Size) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let names = Names::new(data.rows.iter().map(|row| row.name.as_str()), size);
        // The words stand below the band.
        let pitch = (names.row_height() + soft.px * 0.6).max(soft.px * 2.4) + soft.line();
        let cut = if data.edge().is_some() { "; arrow: the loss goes on beyond the picture" } else { "" };
        let note = soft.wrap(&format!("{}{cut}", data.note), width - 2.0 * MARGIN, 6);
        let top = heading.height() + soft.px * 0.3;
        let bottom = top + data.rows.len() as f64 * pitch + soft.px * 0.2;
        let area = Area { left: names.right + soft.px * 0.4, top, right: width - MARGIN - soft.px, bottom };
        let foot = soft.px * 0.65 + soft.line() * (1.0 + note.len() as f64) + MARGIN * 0.5;
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, names, note, area, pitch, range: range(data) }
    }

    fn x(&self, value: f64) -> f64 {
        self.area.x(value, self.range)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area) = (Type::soft(self.size), self.area);
        self.heading.draw(paper)?;
        let ticks = numbers(area, self.range, soft.px * 4.2);
        grid(paper, area, &ticks)?;
        for row in 0..self.data.rows.len() {
            self.draw_band(paper, row)?;
        }
        paper.line(&[(self.x(0.0), area.top), (self.x(0.0), area.bottom)], ink::TEXT, 1.6)?;
        for row in 0..self.data.rows.len() {
            self.draw_row(paper, row)?;
        }
        let kept = with_room(ticks, soft, MARGIN * 0.5, f64::from(self.size.width) - MARGIN * 0.5);
        let below = level(paper, area, &kept, soft)?;
        paper.lines(&self.note, (f64::from(self.size.width) / 2.0, below), Side::Around, soft).map(|_| ())
    }

    fn middle(&self, row: usize) -> f64 {
        let soft = Type::soft(self.size);
        self.area.top + row as f64 * self.pitch + (self.pitch - soft.line()) / 2.0
    }

    fn draw_band(&self, paper: &Paper<'_>, row: usize) -> Done {
        let (data, middle) = (&self.data.rows[row], self.middle(row));
        let half = Type::soft(self.size).px * 0.5;
        if self.is_cut(data.band.1) {
            return Ok(());
        }
        let left = self.x(data.band.0.max(self.range.0));
        let right = self.x(data.band.1).max(left + 1.0);
        let lost = data.mean < 0.0;
        let frame = Area {
            left: left - 0.8,
            top: middle - half - 0.8,
            right: right + 0.8,
            bottom: middle + half + 0.8,
        };
        paper.fill(frame, ink::AXIS)?;
        let inside = Area { left, top: middle - half, right, bottom: middle + half };
        paper.fill(inside, if lost { ink::BREAK } else { ink::RANGE })
    }

    /// Whether a value lies beyond the edge of the picture.
    fn is_cut(&self, value: f64) -> bool {
        value < self.range.0
    }

    /// At the edge of the picture, for what goes on beyond it.
    fn draw_arrow(&self, paper: &Paper<'_>, middle: f64) -> Done {
        let half = Type::soft(self.size).px * 0.5;
        let tip = self.area.left - half * 0.2;
        paper.shape(
            &[(tip, middle), (tip + half * 1.6, middle - half), (tip + half * 1.6, middle + half)],
            ink::AGAINST,
        )
    }

    fn draw_row(&self, paper: &Paper<'_>, row: usize) -> Done {
        let (data, middle) = (&self.data.rows[row], self.middle(row));
        let soft = Type::soft(self.size);
        let how = soft.coloured(ink::TEXT);
        self.names.draw(paper, row, middle)?;
        if self.is_cut(data.band.0.min(data.mean)) {
            self.draw_arrow(paper, middle)?;
        }
        let half = soft.px * 0.5;
        let colour = if data.mean < 0.0 { ink::AGAINST } else { ink::MAIN };
        if !self.is_cut(data.median) {
            let median = self.x(data.median);
            paper.line(&[(median, middle - half * 1.35), (median, middle + half * 1.35)], ink::TEXT, 2.4)?;
        }
        if let Some((low, high)) = data.interval.filter(|(low, _)| !self.is_cut(*low)) {
            let (low, high) = (self.x(low), self.x(high));
            paper.line(&[(low, middle), (high, middle)], colour, 2.2)?;
            for end in [low, high] {
                paper.line(&[(end, middle - half * 0.7), (end, middle + half * 0.7)], colour, 1.6)?;
            }
        }
        let mean = self.x(data.mean.max(self.range.0));
        if !self.is_cut(data.mean) {
            paper.dot((mean, middle), soft.px * 0.3, colour)?;
        }
        let words = how.shorten(&data.words, f64::from(self.size.width) - 2.0 * MARGIN);
        let width = how.width(&words);
        let latest = f64::from(self.size.width) - MARGIN - width;
        let left = (mean - width / 2.0).max(self.area.left).min(latest).max(MARGIN);
        let at = self.area.top + (row + 1) as f64 * self.pitch - soft.line() * 0.75;
        let tall = how.px * 0.6;
        let background =
            Area { left: left - 2.0, top: at - tall, right: left + width + 2.0, bottom: at + tall };
        paper.fill(background, ink::PAPER)?;
        paper.text_level(&words, (left, at), Side::RightOf, how)
    }
}

/// From and to of the axis: the edge where losses are cut off, or all bands and intervals, zero, and some room.
fn range(data: &SavedData) -> (f64, f64) {
    let ends = data.rows.iter().flat_map(|row| {
        let (low, high) = row.interval.unwrap_or((row.mean, row.mean));
        [row.band.0, row.band.1, low, high]
    });
    let (low, high) = ends.fold((0.0_f64, 0.0_f64), |(low, high), v| (low.min(v), high.max(v)));
    if let Some(edge) = data.edge() {
        return (edge, high + (high - edge) * 0.05);
    }
    let span = if high > low { high - low } else { 1.0 };
    (if low < 0.0 { low - span * 0.05 } else { -span * 0.04 }, high + span * 0.05)
}
