//! The paper a figure is drawn on: plotters' SVG backend, in tenths of a pixel so that curves are smooth.

use super::letters::Weight;
use super::seal::{About, GRAIN, seal};
use super::{ChartError, Size, ink, letters};
use plotters::coord::Shift;
use plotters::prelude::{
    Circle, DrawingArea, DrawingAreaErrorKind, FontFamily, FontStyle, IntoDrawingArea, IntoFont, PathElement,
    Polygon, RGBColor, Rectangle, SVGBackend, ShapeStyle, Text, TextStyle,
};
use plotters::style::text_anchor::{HPos, Pos, VPos};

/// Where a text stands to its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    /// Begins there.
    RightOf,
    /// Has its middle there.
    Around,
    /// Ends there.
    LeftOf,
}

/// How text is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Type {
    /// Size of the letters \[px\].
    pub(super) px: f64,
    /// Their weight.
    pub(super) weight: Weight,
    /// Their colour.
    pub(super) colour: RGBColor,
}

impl Type {
    /// The title of a figure.
    pub(super) fn title(size: Size) -> Self {
        Self { px: size.text() * 1.12, weight: Weight::Bold, colour: ink::TEXT }
    }

    /// What is to be read first.
    pub(super) fn strong(size: Size) -> Self {
        Self { px: size.text(), weight: Weight::Bold, colour: ink::TEXT }
    }

    /// Labels.
    pub(super) fn plain(size: Size) -> Self {
        Self { px: size.text(), weight: Weight::Plain, colour: ink::TEXT }
    }

    /// Axes and notes.
    pub(super) fn soft(size: Size) -> Self {
        Self { px: size.text() * 0.94, weight: Weight::Plain, colour: ink::SOFT_TEXT }
    }

    /// The same in another colour.
    pub(super) fn coloured(self, colour: RGBColor) -> Self {
        Self { colour, ..self }
    }

    /// Width of a line of this text \[px\].
    pub(super) fn width(self, text: &str) -> f64 {
        letters::width(text, self.px, self.weight)
    }

    /// Height from one line to the next \[px\].
    pub(super) fn line(self) -> f64 {
        self.px * 1.25
    }

    /// As much of the text as fits.
    pub(super) fn shorten(self, text: &str, room: f64) -> String {
        letters::shorten(text, self.px, self.weight, room)
    }

    /// The text in lines that fit, as equal in length as may be.
    pub(super) fn wrap(self, text: &str, room: f64, most: usize) -> Vec<String> {
        letters::balance(text, self.px, self.weight, room, most)
    }
}

/// A rectangle \[px\].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Area {
    pub(super) fn width(self) -> f64 {
        self.right - self.left
    }

    pub(super) fn height(self) -> f64 {
        self.bottom - self.top
    }

    /// Where a value of a level axis stands.
    pub(super) fn x(self, value: f64, (from, to): (f64, f64)) -> f64 {
        self.left + (value - from) / (to - from) * self.width()
    }

    /// Where a value of an upright axis stands.
    pub(super) fn y(self, value: f64, (from, to): (f64, f64)) -> f64 {
        self.bottom - (value - from) / (to - from) * self.height()
    }
}

/// A sheet to draw on; all places in px from the upper left corner.
pub(super) struct Paper<'a> {
    sheet: DrawingArea<SVGBackend<'a>, Shift>,
}

type Done = Result<(), ChartError>;

impl From<DrawingAreaErrorKind<std::io::Error>> for ChartError {
    fn from(error: DrawingAreaErrorKind<std::io::Error>) -> Self {
        Self::Drawing(error.to_string())
    }
}

/// Draws a figure on a sheet of its own and returns it as SVG.
pub(super) fn draw_on(
    size: Size,
    about: &About<'_>,
    picture: impl Fn(&Paper<'_>) -> Done,
) -> Result<String, ChartError> {
    let mut drawn = String::new();
    let sheet =
        SVGBackend::with_string(&mut drawn, (size.width * GRAIN, size.height * GRAIN)).into_drawing_area();
    let paper = Paper { sheet };
    let whole = Area { left: 0.0, top: 0.0, right: f64::from(size.width), bottom: f64::from(size.height) };
    paper.fill(whole, ink::PAPER)?;
    picture(&paper)?;
    paper.sheet.present()?;
    drop(paper);
    Ok(seal(&drawn, size, about))
}

fn grain(px: f64) -> i32 {
    (px * f64::from(GRAIN)).round() as i32
}

fn point((x, y): (f64, f64)) -> (i32, i32) {
    (grain(x), grain(y))
}

impl Paper<'_> {
    /// Fills a rectangle.
    pub(super) fn fill(&self, area: Area, colour: RGBColor) -> Done {
        let corners = [point((area.left, area.top)), point((area.right, area.bottom))];
        Ok(self.sheet.draw(&Rectangle::new(corners, ShapeStyle::from(&colour).filled()))?)
    }

    /// Draws a line through points.
    pub(super) fn line(&self, points: &[(f64, f64)], colour: RGBColor, px: f64) -> Done {
        let points: Vec<_> = points.iter().copied().map(point).collect();
        let style = ShapeStyle::from(&colour).stroke_width(grain(px).unsigned_abs());
        Ok(self.sheet.draw(&PathElement::new(points, style))?)
    }

    /// Draws a straight line of dashes.
    pub(super) fn dashes(&self, from: (f64, f64), to: (f64, f64), colour: RGBColor, px: f64) -> Done {
        let length = (to.0 - from.0).hypot(to.1 - from.1);
        let (dash, pitch) = (px * 4.0, px * 6.5);
        let at = |d: f64| (from.0 + (to.0 - from.0) * d / length, from.1 + (to.1 - from.1) * d / length);
        for i in 0..(length / pitch).ceil().min(2_000.0) as usize {
            let start = i as f64 * pitch;
            self.line(&[at(start), at((start + dash).min(length))], colour, px)?;
        }
        Ok(())
    }

    /// Fills a closed shape.
    pub(super) fn shape(&self, points: &[(f64, f64)], colour: RGBColor) -> Done {
        let points: Vec<_> = points.iter().copied().map(point).collect();
        Ok(self.sheet.draw(&Polygon::new(points, ShapeStyle::from(&colour).filled()))?)
    }

    /// Fills a circle.
    pub(super) fn dot(&self, at: (f64, f64), radius: f64, colour: RGBColor) -> Done {
        let radius = grain(radius).unsigned_abs();
        Ok(self.sheet.draw(&Circle::new(point(at), radius, ShapeStyle::from(&colour).filled()))?)
    }

    /// Sets a line of text with the top of its letters at `y`.
    pub(super) fn text(&self, text: &str, (x, y): (f64, f64), side: Side, how: Type) -> Done {
        if text.is_empty() {
            return Ok(());
        }
        let clean: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
        // The SVG backend divides the size it is given by 1.24.
        let px = how.px * 1.24 * f64::from(GRAIN);
        let style = match how.weight {
            Weight::Plain => FontStyle::Normal,
            Weight::Bold => FontStyle::Bold,
        };
        let anchor = match side {
            Side::RightOf => HPos::Left,
            Side::Around => HPos::Center,
            Side::LeftOf => HPos::Right,
        };
        let mut style = TextStyle::from((FontFamily::SansSerif, px, style).into_font()).color(&how.colour);
        style.pos = Pos::new(anchor, VPos::Top);
        Ok(self.sheet.draw(&Text::new(clean, point((x, y)), style))?)
    }

    /// Sets a line of text whose capitals have their middle at `y`.
    pub(super) fn text_level(&self, text: &str, (x, y): (f64, f64), side: Side, how: Type) -> Done {
        self.text(text, (x, y - 0.395 * how.px), side, how)
    }

    /// Sets lines below one another, beginning at `top`; returns where the next would begin.
    pub(super) fn lines(
        &self,
        lines: &[String],
        (x, top): (f64, f64),
        side: Side,
        how: Type,
    ) -> Result<f64, ChartError> {
        let mut y = top;
        for line in lines {
            self.text(line, (x, y), side, how)?;
            y += how.line();
        }
        Ok(y)
    }
}
