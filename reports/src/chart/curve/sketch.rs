//! Draws the figure.

use super::{CurveData, Scale, Spot, marks};
use crate::chart::axis::{Heading, MARGIN, Tick, grid, level, upright, with_room};
use crate::chart::legend::{Key, Legend, Sign};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::stroke::Stroke;
use crate::chart::ticks::{multiples, round_step, time_step};
use crate::chart::words::{tick_clock, tick_duration};
use crate::chart::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

/// Draws the figure.
pub(crate) fn draw(data: &CurveData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.spots.is_empty() {
        return Err(ChartError::Nothing("nothing was varied"));
    }
    let sketch = Sketch::new(data, size);
    let told = |spot: &Spot| {
        let [low, middle, plan, high] =
            [spot.low, spot.middle, spot.plan, spot.high].map(|v| sketch.exactly(v));
        format!("{}: {middle}, from {low} to {high}, 8 in 10 within {plan}", spot.label)
    };
    let each: Vec<String> = data.spots.iter().map(told).collect();
    let description = format!("{} over {}. {}.", data.y_name, data.x_name, each.join("; "));
    let about = About { figure: data.figure, title: &data.title, description: &description, fills: &[] };
    draw_on(size, &about, |paper| sketch.draw(paper))
}

/// Where everything stands.
struct Sketch<'a> {
    data: &'a CurveData,
    size: Size,
    heading: Heading,
    legend: Legend,
    y_name: Vec<String>,
    x_name: Vec<String>,
    area: Area,
    /// Where the labels of marked points stand \[px\].
    labels_top: f64,
    x_range: (f64, f64),
    y_range: (f64, f64),
    y_step: f64,
}

impl<'a> Sketch<'a> {
    fn new(data: &'a CurveData, size: Size) -> Self {
        let (soft, strong) = (Type::soft(size), Type::strong(size));
        let (width, height) = (f64::from(size.width), f64::from(size.height));
        let heading = Heading::new(&data.title, size);
        let legend = Legend::new(keys(data), width - 2.0 * MARGIN, size);
        let y_name = soft.wrap(&data.y_name, width - 2.0 * MARGIN, 2);
        let x_name = soft.wrap(&format!("{} ({})", data.x_name, data.note), width - 2.0 * MARGIN, 3);
        let labels_top =
            heading.height() + legend.height() + y_name.len() as f64 * soft.line() + soft.px * 0.3;
        let labels = if data.spots.iter().all(|spot| spot.marks.is_empty()) {
            0.0
        } else {
            marks::rows(data, size) * strong.line() + soft.px
        };
        let top = labels_top + labels;
        let bottom = height - soft.px * 0.65 - soft.line() * (1.0 + x_name.len() as f64) - MARGIN * 0.5;
        let area = Area { left: 0.0, top, right: width - MARGIN - soft.px, bottom: bottom.max(top + 60.0) };
        let mut sketch = Self {
            data,
            size,
            heading,
            legend,
            y_name,
            x_name,
            area,
            labels_top,
            x_range: x_range(data),
            y_range: (0.0, 1.0),
            y_step: 1.0,
        };
        sketch.set_heights(soft);
        let widest = sketch.heights().iter().map(|(_, label)| soft.width(label)).fold(0.0, f64::max);
        sketch.area.left = MARGIN + widest + soft.px * 0.6;
        sketch
    }

    /// From and to of the upright axis, with as many marks as have room.
    fn set_heights(&mut self, soft: Type) {
        let values = self.data.spots.iter().flat_map(|spot| [spot.low, spot.high]);
        let values = values.chain(self.data.line.iter().map(|(at, _)| *at));
        let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        let span = if high > low { high - low } else { (high.abs() * 0.1).max(60.0) };
        let marks = (self.area.height() / (soft.line() * 1.6)).clamp(2.0, 8.0);
        let step = match self.data.scale {
            Scale::Money => round_step(span / marks),
            Scale::Clock(_) | Scale::Duration => time_step((span / marks).max(1.0)),
        };
        let floor = ((low - span * 0.03) / step).floor() * step;
        // Nothing takes or costs less than nothing.
        let from = if low >= 0.0 { floor.max(0.0) } else { floor };
        self.y_range = (from, ((high + span * 0.03) / step).ceil() * step);
        self.y_step = step;
    }

    fn heights(&self) -> Vec<(f64, String)> {
        let all = multiples(self.y_range.0, self.y_range.1, self.y_step);
        all.into_iter().map(|value| (value, self.label(value))).collect()
    }

    fn label(&self, value: f64) -> String {
        match self.data.scale {
            Scale::Clock(units) => tick_clock(value, self.y_step, units),
            Scale::Duration => tick_duration(value),
            Scale::Money => money_tick(value, self.y_step),
        }
    }

    /// A height as closely as people say it.
    fn exactly(&self, value: f64) -> String {
        match self.data.scale {
            Scale::Clock(units) => scenarios::units::clock(value, units),
            Scale::Duration => scenarios::units::duration(value),
            Scale::Money => money_tick(value.round(), 1.0),
        }
    }

    fn x(&self, value: f64) -> f64 {
        self.area.x(value, self.x_range)
    }

    fn y(&self, value: f64) -> f64 {
        self.area.y(value, self.y_range)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let soft = Type::soft(self.size);
        self.heading.draw(paper)?;
        self.legend.draw(paper, MARGIN, self.heading.height())?;
        paper.lines(
            &self.y_name,
            (MARGIN, self.heading.height() + self.legend.height()),
            Side::RightOf,
            soft,
        )?;
        let ticks: Vec<Tick> = self
            .data
            .spots
            .iter()
            .map(|spot| Tick { at: self.x(spot.x), label: spot.label.clone() })
            .collect();
        let heights: Vec<Tick> =
            self.heights().into_iter().map(|(value, label)| Tick { at: self.y(value), label }).collect();
        self.draw_band(paper)?;
        upright(paper, self.area, &heights, soft)?;
        grid(paper, self.area, &ticks)?;
        self.draw_line(paper)?;
        self.draw_curves(paper)?;
        let at = |spot: &Spot| {
            let highest = if self.data.varies() { spot.plan } else { spot.middle };
            (self.x(spot.x), self.y(highest) - self.size.text() * 0.35)
        };
        marks::draw(paper, self.data, (self.labels_top, self.area.top), self.size, at)?;
        let width = f64::from(self.size.width);
        let kept = with_room(ticks, soft, MARGIN * 0.3, width - MARGIN * 0.3);
        let below = level(paper, self.area, &kept, soft)?;
        paper.lines(&self.x_name, (width / 2.0, below), Side::Around, soft).map(|_| ())
    }

    fn path(&self, height: fn(&Spot) -> f64) -> Vec<(f64, f64)> {
        self.data.spots.iter().map(|spot| (self.x(spot.x), self.y(height(spot)))).collect()
    }

    fn draw_band(&self, paper: &Paper<'_>) -> Done {
        if !self.data.varies() {
            return Ok(());
        }
        if let [only] = self.data.spots.as_slice() {
            let (x, half) = (self.x(only.x), Type::soft(self.size).px * 0.4);
            let area =
                Area { left: x - half, right: x + half, top: self.y(only.high), bottom: self.y(only.low) };
            return paper.fill(area, ink::RANGE);
        }
        let (low, high) = (self.path(|spot| spot.low), self.path(|spot| spot.high));
        let band: Vec<(f64, f64)> = low.iter().copied().chain(high.iter().rev().copied()).collect();
        paper.shape(&band, ink::RANGE)?;
        paper.line(&low, ink::AXIS, 0.8)?;
        paper.line(&high, ink::AXIS, 0.8)
    }

    /// The height to be compared with, its name where least is in the way.
    fn draw_line(&self, paper: &Paper<'_>) -> Done {
        let Some((at, name)) = &self.data.line else { return Ok(()) };
        let (soft, y) = (Type::soft(self.size).coloured(ink::AGAINST), self.y(*at));
        paper.dashes((self.area.left, y), (self.area.right, y), ink::AGAINST, 1.8)?;
        let width = soft.width(name);
        let lefts = [self.area.right - width, self.area.left + soft.px * 0.3];
        let tops = [y - soft.line(), y + soft.px * 0.35];
        let inside = |top: &f64| *top >= self.area.top && top + soft.px <= self.area.bottom;
        let places = tops.into_iter().filter(inside).flat_map(|top| lefts.map(|left| (left, top)));
        let free = |(left, top): &(f64, f64)| self.free(*left, left + width, top + soft.px / 2.0);
        let best = places.max_by(|a, b| free(a).total_cmp(&free(b)));
        let (left, top) = best.unwrap_or((lefts[0], tops[0]));
        let behind = Area { left: left - 2.0, right: left + width + 2.0, top, bottom: top + soft.px };
        paper.fill(behind, ink::PAPER)?;
        paper.text(name, (left, top), Side::RightOf, soft)
    }

    /// How far the lines stay away from a height between two places \[px\].
    fn free(&self, left: f64, right: f64, height: f64) -> f64 {
        let mut least = f64::INFINITY;
        for line in [self.path(|spot| spot.middle), self.path(|spot| spot.plan)] {
            for pair in line.windows(2) {
                for part in 0..=8 {
                    let share = f64::from(part) / 8.0;
                    let x = pair[0].0 + (pair[1].0 - pair[0].0) * share;
                    if (left..=right).contains(&x) {
                        least = least.min((pair[0].1 + (pair[1].1 - pair[0].1) * share - height).abs());
                    }
                }
            }
        }
        least
    }

    fn draw_curves(&self, paper: &Paper<'_>) -> Done {
        let (dot, many) = (self.size.text() * 0.3, self.data.spots.len() > 12);
        let plan = self.path(|spot| spot.plan);
        let middle = self.path(|spot| spot.middle);
        if self.data.varies() {
            if plan.len() > 1 {
                Stroke::Long.draw(paper, &plan, ink::TEXT, 2.0)?;
            }
            for (x, y) in &plan {
                let half = dot * if many { 0.6 } else { 0.8 };
                paper.fill(
                    Area { left: x - half, right: x + half, top: y - half, bottom: y + half },
                    ink::TEXT,
                )?;
            }
        }
        if middle.len() > 1 {
            paper.line(&middle, ink::MAIN, 2.6)?;
        }
        middle.iter().try_for_each(|at| paper.dot(*at, dot * if many { 0.75 } else { 1.0 }, ink::MAIN))
    }
}

fn keys(data: &CurveData) -> Vec<Key> {
    if !data.varies() {
        return vec![Key::new(Sign::Line(ink::MAIN), "every run")];
    }
    vec![
        Key::new(Sign::Line(ink::MAIN), "middle run (P50)"),
        Key::new(Sign::Stroke(Stroke::Long, ink::TEXT), "8 days in 10 (P80)"),
        Key::new(Sign::Shade(ink::RANGE), "eight runs of ten"),
    ]
}

fn x_range(data: &CurveData) -> (f64, f64) {
    let (first, last) = (data.spots.first().map_or(0.0, |s| s.x), data.spots.last().map_or(1.0, |s| s.x));
    let spare = if last > first { (last - first) * 0.05 } else { 1.0 };
    (first - spare, last + spare)
}

fn money_tick(value: f64, step: f64) -> String {
    if step < 1.0 { format!("{value:.2}") } else { scenarios::units::money(value, "") }
}
