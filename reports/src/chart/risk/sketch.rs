//! Draws the figure: the curve over its band, the marks with their labels above it.

use super::RiskData;
use crate::chart::axis::{
    Heading, MARGIN, PERCENT, Tick, grid, level, percent_step, percents, ticks, upright, with_room,
};
use crate::chart::completion::labels::{Labels, colour};
use crate::chart::completion::{Mark, MarkKind};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::ticks::round_step;
use crate::chart::{ChartError, Size, ink};
use scenarios::units::money;

type Done = Result<(), ChartError>;

const UPRIGHT: &str = "chance of losing money, %";

/// Draws the figure; it grows higher than asked for where its labels need the room.
pub(crate) fn draw(data: &RiskData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.runs == 0 {
        return Err(ChartError::Nothing("no run was made"));
    }
    let say = |mark: &Mark| format!("{} {}, {}", mark.name, mark.when, mark.lines.join(", "));
    let marked: Vec<String> = data.marks.iter().map(say).collect();
    let description = format!(
        "The chance of losing money, falling from 100 to 0 % as the price rises ({}). Marked: {}.",
        data.note,
        marked.join("; ")
    );
    let about = About { figure: "risk", title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(data, size);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

/// Where everything stands.
struct Sketch<'a> {
    data: &'a RiskData,
    size: Size,
    heading: Heading,
    labels: Labels,
    area: Area,
    axis_name: Vec<String>,
}

impl<'a> Sketch<'a> {
    fn new(data: &'a RiskData, size: Size) -> Self {
        let soft = Type::soft(size);
        let heading = Heading::new(&data.title, size);
        let (width, height) = (f64::from(size.width), f64::from(size.height));
        let left = MARGIN + soft.width("100") + soft.px * 0.6;
        let right = width - MARGIN - soft.px;
        let at = |mark: &Mark| x(data, left, right, mark.at);
        let labels = Labels::new(&data.marks, at, heading.height() + soft.line(), size);
        let name = format!("price ({})", data.note);
        let axis_name = soft.wrap(&name, width - 2.0 * MARGIN, 4);
        let foot = soft.px * 0.65 + soft.line() * (1.0 + axis_name.len() as f64) + MARGIN * 0.5;
        let top = labels.bottom + size.text() * 0.9;
        // Where labels had to be stacked the figure grows rather than losing its curve.
        let area = Area { left, top, right, bottom: (height - foot).max(top + 9.0 * size.text()) };
        let size = Size { height: (area.bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, labels, area, axis_name }
    }

    fn x(&self, price: f64) -> f64 {
        x(self.data, self.area.left, self.area.right, price)
    }

    fn y(&self, percent: f64) -> f64 {
        self.area.y(percent, PERCENT)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area) = (Type::soft(self.size), self.area);
        self.heading.draw(paper)?;
        paper.text(UPRIGHT, (MARGIN, self.heading.height()), Side::RightOf, soft)?;
        if let Some((from, to)) = self.data.band {
            paper.fill(Area { left: self.x(from), right: self.x(to), ..area }, ink::RANGE)?;
        }
        let ticks = self.price_ticks();
        grid(paper, area, &ticks)?;
        let shares = percents(percent_step(area, soft), |percent| self.y(percent));
        upright(paper, area, &shares, soft)?;
        self.draw_curve(paper)?;
        self.draw_marks(paper)?;
        let below = level(paper, area, &ticks, soft)?;
        let middle = f64::from(self.size.width) / 2.0;
        paper.lines(&self.axis_name, (middle, below), Side::Around, soft).map(|_| ())
    }

    fn draw_curve(&self, paper: &Paper<'_>) -> Done {
        let curve = &self.data.curve;
        let mut points = vec![(self.area.left, self.y(100.0))];
        points.extend(curve.first().map(|(price, _)| (self.x(*price), self.y(100.0))));
        points.extend(curve.iter().map(|(price, percent)| (self.x(*price), self.y(*percent))));
        let last = curve.last().map_or(0.0, |(_, percent)| *percent);
        points.push((self.area.right, self.y(last)));
        paper.line(&points, ink::MAIN, 2.6)
    }

    fn draw_marks(&self, paper: &Paper<'_>) -> Done {
        let area = self.area;
        for mark in &self.data.marks {
            let (colour, at) = (colour(mark.kind), self.x(mark.at));
            let (top, foot) = ((at, area.top), (at, area.bottom));
            match mark.kind {
                MarkKind::Quote => paper.line(&[top, foot], colour, 2.4)?,
                MarkKind::Percentile | MarkKind::Handbook => paper.dashes(top, foot, colour, 1.4)?,
            }
            paper.dot((at, self.y(mark.chance)), self.size.text() * 0.3, colour)?;
        }
        self.labels.draw(paper, &self.data.marks, |mark| (self.x(mark.at), area.top))
    }

    /// Round prices, as many as have room.
    fn price_ticks(&self) -> Vec<Tick> {
        let (from, to) = self.data.range;
        let soft = Type::soft(self.size);
        let widest = [from, to].map(|price| soft.width(&money(price, &self.data.currency)));
        let room = self.area.width() / (widest[0].max(widest[1]) + soft.px * 1.5);
        let step = round_step((to - from) / room.max(1.0));
        let ticks = ticks((from, to), step, |price| self.x(price), |price| money(price, &self.data.currency));
        with_room(ticks, soft, MARGIN * 0.3, f64::from(self.size.width) - MARGIN * 0.3)
    }
}

fn x(data: &RiskData, left: f64, right: f64, price: f64) -> f64 {
    left + (price - data.range.0) / (data.range.1 - data.range.0) * (right - left)
}
