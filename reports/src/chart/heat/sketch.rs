//! Draws the field.

use super::{Cell, HeatData};
use crate::chart::axis::{Heading, MARGIN};
use crate::chart::letters::Weight;
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};
use plotters::style::RGBColor;

type Done = Result<(), ChartError>;

/// Draws the field. Its height follows from the number of rows, and it is wider than asked for where the numbers would
/// not fit.
pub(crate) fn draw(data: &HeatData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.cells.is_empty() {
        return Err(ChartError::Nothing("nothing was varied"));
    }
    let data = data.upright();
    let rows = data.cells.chunks(data.across.1.len()).zip(&data.down.1);
    let told: Vec<String> = rows
        .map(|(cells, label)| {
            let words: Vec<&str> = cells.iter().map(|cell| cell.words.as_str()).collect();
            format!("{label}: {}", words.join(", "))
        })
        .collect();
    let description = format!(
        "{}. Across {}: {}. Down {}: {}.",
        data.what,
        data.across.0,
        data.across.1.join(", "),
        data.down.0,
        told.join("; ")
    );
    let about = About { figure: data.figure, title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(&data, size);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

struct Sketch<'a> {
    data: &'a HeatData,
    size: Size,
    /// How axes and notes are set: as for the size asked for, however wide the field became.
    soft: Type,
    heading: Heading,
    what: Vec<String>,
    keys: Vec<String>,
    across: Vec<String>,
    down: Vec<String>,
    area: Area,
    /// How numbers in cells are set.
    number: Type,
    /// How letters in cells are set.
    letter: Type,
}

impl<'a> Sketch<'a> {
    fn new(data: &'a HeatData, asked: Size) -> Self {
        let soft = Type::soft(asked);
        let number = Type { px: (asked.text() * 0.92).max(11.0), weight: Weight::Plain, colour: BLACK };
        let letter = Type { weight: Weight::Bold, ..number };
        let columns = data.across.1.len() as f64;
        let widest = data.cells.iter().map(|cell| number.width(&cell.words).max(letter.width(&cell.letters)));
        let labels = data.across.1.iter().map(|label| soft.width(label));
        let least = widest.chain(labels).fold(0.0, f64::max) + number.px * 0.7;
        let down_labels = data.down.1.iter().map(|label| soft.width(label)).fold(0.0, f64::max);
        let left = MARGIN + down_labels + soft.px * 0.7;
        let width = f64::from(asked.width).max(left + columns * least + MARGIN).ceil();
        let size = Size { width: width as u32, height: asked.height };
        // Text keeps to the width asked for, so that a field that is pushed sideways on a phone begins with it.
        let room = f64::from(asked.width) - 2.0 * MARGIN;
        let heading = Heading::new(&data.title, asked);
        let what = soft.wrap(&format!("In each cell: {}. The darker, the worse.", data.what), room, 3);
        let across = soft.wrap(&format!("across: {}", data.across.0), room, 2);
        let down = soft.wrap(&format!("down: {}", data.down.0), room, 2);
        let keys = soft.wrap(&data.keys.join(";  "), room, 4);
        let lines = (what.len() + across.len() + down.len() + 1) as f64;
        let top = heading.height() + lines * soft.line() + soft.px * 0.6;
        let any_letters = data.cells.iter().any(|cell| !cell.letters.is_empty());
        let pitch = number.px * if any_letters { 2.7 } else { 2.0 };
        let bottom = top + data.down.1.len() as f64 * pitch;
        let area = Area { left, top, right: width - MARGIN, bottom };
        let height = bottom + soft.px * 0.8 + keys.len() as f64 * soft.line() + MARGIN;
        let size = Size { height: height.ceil() as u32, ..size };
        Self { data, size, soft, heading, what, keys, across, down, area, number, letter }
    }

    fn place(&self, row: usize, column: usize) -> Area {
        let wide = self.area.width() / self.data.across.1.len() as f64;
        let high = self.area.height() / self.data.down.1.len() as f64;
        let (left, top) = (self.area.left + column as f64 * wide, self.area.top + row as f64 * high);
        Area { left, top, right: left + wide, bottom: top + high }
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let soft = self.soft;
        self.heading.draw(paper)?;
        let mut y = paper.lines(&self.what, (MARGIN, self.heading.height()), Side::RightOf, soft)?;
        y = paper.lines(&self.down, (MARGIN, y), Side::RightOf, soft)?;
        y = paper.lines(&self.across, (MARGIN, y), Side::RightOf, soft)?;
        let columns = self.data.across.1.len();
        for (column, label) in self.data.across.1.iter().enumerate() {
            let place = self.place(0, column);
            let middle = f64::midpoint(place.left, place.right);
            paper.text(label, (middle, y + soft.px * 0.2), Side::Around, soft.coloured(ink::TEXT))?;
        }
        for (row, label) in self.data.down.1.iter().enumerate() {
            let place = self.place(row, 0);
            let middle = f64::midpoint(place.top, place.bottom);
            paper.text_level(
                label,
                (self.area.left - soft.px * 0.5, middle),
                Side::LeftOf,
                soft.coloured(ink::TEXT),
            )?;
        }
        for (at, cell) in self.data.cells.iter().enumerate() {
            self.draw_cell(paper, self.place(at / columns, at % columns), cell)?;
        }
        for (at, _) in self.data.cells.iter().enumerate().filter(|(_, cell)| !cell.letters.is_empty()) {
            outline(paper, self.place(at / columns, at % columns))?;
        }
        paper.lines(&self.keys, (MARGIN, self.area.bottom + soft.px * 0.8), Side::RightOf, soft).map(|_| ())
    }

    fn draw_cell(&self, paper: &Paper<'_>, place: Area, cell: &Cell) -> Done {
        let dark = self.data.darkness(cell.value);
        let colour = shade(dark);
        paper.fill(Area { right: place.right - 1.0, bottom: place.bottom - 1.0, ..place }, colour)?;
        let on = if dark > DARK { WHITE } else { BLACK };
        let centre = f64::midpoint(place.left, place.right) - 0.5;
        let middle = f64::midpoint(place.top, place.bottom) - 0.5;
        let line = self.number.px * 0.56;
        let (number_y, letters_y) =
            if cell.letters.is_empty() { (middle, middle) } else { (middle + line, middle - line) };
        if !cell.letters.is_empty() {
            paper.text_level(&cell.letters, (centre, letters_y), Side::Around, self.letter.coloured(on))?;
        }
        paper.text_level(&cell.words, (centre, number_y), Side::Around, self.number.coloured(on))
    }
}

/// Cells darker than this bear white numbers: where white reads as well as black.
const DARK: f64 = 0.71;
/// Numbers in light cells: on a middle blue only black reads well.
const BLACK: RGBColor = RGBColor(0, 0, 0);
/// Numbers in dark cells, on a dark screen too.
const WHITE: RGBColor = RGBColor(255, 255, 254);

/// From nearly white to a dark blue, even in lightness.
fn shade(dark: f64) -> RGBColor {
    const STOPS: [RGBColor; 5] = [
        RGBColor(240, 245, 249),
        RGBColor(190, 213, 230),
        RGBColor(133, 177, 208),
        RGBColor(58, 112, 156),
        // No colour that a page has a name for: a cell keeps its shade on a dark screen.
        RGBColor(16, 52, 85),
    ];
    let at = dark.clamp(0.0, 1.0) * (STOPS.len() - 1) as f64;
    let below = (at.floor() as usize).min(STOPS.len() - 2);
    let share = at - below as f64;
    let (RGBColor(r, g, b), RGBColor(r2, g2, b2)) = (STOPS[below], STOPS[below + 1]);
    let mix = |a: u8, b: u8| (f64::from(a) + (f64::from(b) - f64::from(a)) * share).round() as u8;
    RGBColor(mix(r, r2), mix(g, g2), mix(b, b2))
}

/// A frame that shows on light cells and on dark ones.
fn outline(paper: &Paper<'_>, place: Area) -> Done {
    let frame = |inset: f64| {
        let (l, r) = (place.left + inset - 0.5, place.right - inset - 0.5);
        let (t, b) = (place.top + inset - 0.5, place.bottom - inset - 0.5);
        [(l, t), (r, t), (r, b), (l, b), (l, t)]
    };
    paper.line(&frame(0.0), ink::TEXT, 2.4)?;
    paper.line(&frame(2.0), ink::PAPER, 1.4)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance of WCAG 2.2.
    fn luminance(RGBColor(r, g, b): RGBColor) -> f64 {
        let linear = |c: u8| {
            let c = f64::from(c) / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)
    }

    #[test]
    fn darker_cells_are_darker_in_grey_too() {
        let lights: Vec<f64> = (0..=40).map(|i| luminance(shade(f64::from(i) / 40.0))).collect();
        assert!(lights.windows(2).all(|pair| pair[1] < pair[0]), "{lights:?}");
    }

    #[test]
    fn the_number_in_a_cell_can_be_read_whatever_its_shade() {
        // WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1.
        for i in 0..=100 {
            let dark = f64::from(i) / 100.0;
            let (background, on) =
                (luminance(shade(dark)), luminance(if dark > DARK { WHITE } else { BLACK }));
            let contrast = (background.max(on) + 0.05) / (background.min(on) + 0.05);
            assert!(contrast >= 4.5, "{dark}: {contrast}");
        }
    }
}
