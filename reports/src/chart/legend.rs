//! Legends: what a line, a shade or a fill means, in as many rows as needed.

use super::doing::Doing;
use super::paper::{Area, Paper, Side, Type};
use super::stroke::Stroke;
use super::{ChartError, Size, ink};
use plotters::style::RGBColor;

/// The sign that is explained.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Sign {
    /// The fill of an activity.
    Doing(Doing),
    /// An area of one colour.
    Shade(RGBColor),
    /// A line.
    Line(RGBColor),
    /// A line with dashes.
    Stroke(Stroke, RGBColor),
    /// A triangle pointing down with a dashed line below it.
    Arrival(RGBColor),
}

/// A sign and what it means.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Key {
    pub(super) sign: Sign,
    pub(super) words: String,
}

impl Key {
    pub(super) fn new(sign: Sign, words: impl Into<String>) -> Self {
        Self { sign, words: words.into() }
    }
}

/// A legend laid out in rows.
pub(super) struct Legend {
    places: Vec<(f64, usize, Key)>,
    rows: usize,
    how: Type,
}

impl Legend {
    /// Lays keys out in rows no wider than `room`.
    pub(super) fn new(keys: Vec<Key>, room: f64, size: Size) -> Self {
        let how = Type::soft(size);
        let (mut places, mut x, mut row) = (Vec::new(), 0.0, 0);
        for mut key in keys {
            key.words = how.shorten(&key.words, room - sign_width(how));
            let width = sign_width(how) + how.width(&key.words);
            if x > 0.0 && x + width > room {
                (x, row) = (0.0, row + 1);
            }
            places.push((x, row, key));
            x += width + how.px * 1.1;
        }
        let rows = if places.is_empty() { 0 } else { row + 1 };
        Self { places, rows, how }
    }

    fn pitch(&self) -> f64 {
        self.how.px * 1.45
    }

    /// Height with the space below it \[px\].
    pub(super) fn height(&self) -> f64 {
        if self.rows == 0 { 0.0 } else { self.rows as f64 * self.pitch() + self.how.px * 0.4 }
    }

    pub(super) fn draw(&self, paper: &Paper<'_>, left: f64, top: f64) -> Result<(), ChartError> {
        for (x, row, key) in &self.places {
            let middle = top + (*row as f64 + 0.5) * self.pitch();
            draw_sign(paper, key.sign, left + x, middle, self.how)?;
            paper.text_level(
                &key.words,
                (left + x + sign_width(self.how), middle),
                Side::RightOf,
                self.how,
            )?;
        }
        Ok(())
    }
}

fn sign_width(how: Type) -> f64 {
    how.px * 2.0
}

fn draw_sign(paper: &Paper<'_>, sign: Sign, left: f64, middle: f64, how: Type) -> Result<(), ChartError> {
    let (right, half) = (left + how.px * 1.6, how.px * 0.45);
    let area = Area { left, top: middle - half, right, bottom: middle + half };
    match sign {
        Sign::Doing(doing) => {
            framed(paper, area, ink::of(doing).background)?;
        }
        Sign::Shade(colour) => framed(paper, area, colour)?,
        Sign::Line(colour) => paper.line(&[(left, middle), (right, middle)], colour, 2.6)?,
        Sign::Stroke(stroke, colour) => {
            stroke.draw(paper, &[(left, middle), (right, middle)], colour, 2.4)?;
        }
        Sign::Arrival(colour) => {
            arrival(paper, f64::midpoint(left, right), middle - half, how.px * 0.9, colour)?
        }
    }
    Ok(())
}

fn framed(paper: &Paper<'_>, area: Area, colour: RGBColor) -> Result<(), ChartError> {
    paper.fill(
        Area {
            left: area.left - 0.8,
            top: area.top - 0.8,
            right: area.right + 0.8,
            bottom: area.bottom + 0.8,
        },
        ink::AXIS,
    )?;
    paper.fill(area, colour)
}

/// A triangle that points down to its tip at `top + size`.
pub(super) fn arrival(
    paper: &Paper<'_>,
    x: f64,
    top: f64,
    size: f64,
    colour: RGBColor,
) -> Result<(), ChartError> {
    paper.shape(&[(x - size / 2.0, top), (x + size / 2.0, top), (x, top + size)], colour)
}
