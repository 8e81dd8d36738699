//! Draws the figure: above the rising curve, below the histogram, on one axis of time.

use super::labels::{Labels, colour};
use super::{CompletionData, Mark, MarkKind};
use crate::chart::axis::{
    Heading, MARGIN, PERCENT, Tick, grid, level, percent_step, percents, ticks, upright,
};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::ticks::round_step;
use crate::chart::time_axis::TimeAxis;
use crate::chart::{ChartError, Size, ink};
use scenarios::units::{clock, duration};

type Done = Result<(), ChartError>;

/// Draws the figure.
pub(crate) fn draw(data: &CompletionData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.runs == 0 {
        return Err(ChartError::Nothing("no run was made"));
    }
    let say = |mark: &Mark| format!("{} {}, {}", mark.name, mark.when, mark.lines.join(", "));
    let marked: Vec<String> = data.marks.iter().map(say).collect();
    let description = format!(
        "A histogram of finishing times of {}, and above it the chance of being done, rising from 0 to {:.0} %. Marked: {}.",
        data.note,
        data.curve.last().map_or(0.0, |(_, percent)| *percent),
        marked.join("; ")
    );
    let about = About { figure: "completion", title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(data, size);
    draw_on(size, &about, |paper| sketch.draw(paper))
}

/// Where everything stands.
struct Sketch<'a> {
    data: &'a CompletionData,
    size: Size,
    heading: Heading,
    labels: Labels,
    curve: Area,
    bars: Area,
    ticks: Vec<(Tick, String)>,
    axis_name: Vec<String>,
}

impl<'a> Sketch<'a> {
    fn new(data: &'a CompletionData, size: Size) -> Self {
        let soft = Type::soft(size);
        let heading = Heading::new(&data.title, size);
        let (width, height) = (f64::from(size.width), f64::from(size.height));
        let left = MARGIN + soft.width("100") + soft.px * 0.6;
        let right = width - MARGIN - soft.px;
        let axis = time_axis(data);
        let at = |mark: &Mark| axis.x(left, right, mark.at);
        let labels = Labels::new(&data.marks, at, heading.height() + soft.line(), size);
        let curve_top = labels.bottom + size.text() * 0.9;
        let axis_name = axis_name(data, soft, width);
        let foot = soft.px * 0.65 + soft.line() * (axis_rows(data) + axis_name.len() as f64) + MARGIN * 0.5;
        let between = soft.px * 2.15;
        let room = (height - foot - curve_top - between).max(40.0);
        let curve = Area { left, top: curve_top, right, bottom: curve_top + room * 0.66 };
        let bars = Area { left, top: curve.bottom + between, right, bottom: height - foot };
        let ticks = axis.ticks(left, right, width, soft);
        Self { data, size, heading, labels, curve, bars, ticks, axis_name }
    }

    fn x(&self, min: f64) -> f64 {
        time_axis(self.data).x(self.curve.left, self.curve.right, min)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let soft = Type::soft(self.size);
        self.heading.draw(paper)?;
        paper.text(
            "chance of being done, clean-up included, %",
            (MARGIN, self.heading.height()),
            Side::RightOf,
            soft,
        )?;
        let marks: Vec<Tick> = self.ticks.iter().map(|(tick, _)| tick.clone()).collect();
        grid(paper, self.curve, &marks)?;
        grid(paper, self.bars, &marks)?;
        self.draw_curve(paper)?;
        self.draw_bars(paper)?;
        self.draw_marks(paper)?;
        let below = level(paper, self.bars, &marks, soft)?;
        let mut y = below - soft.line() * 0.08;
        if self.data.one_day_from_s.is_some() {
            for (tick, after) in &self.ticks {
                paper.text(after, (tick.at, y), Side::Around, soft)?;
            }
            y += soft.line();
        }
        let middle = f64::from(self.size.width) / 2.0;
        paper.lines(&self.axis_name, (middle, y), Side::Around, soft).map(|_| ())
    }

    fn draw_curve(&self, paper: &Paper<'_>) -> Done {
        let area = self.curve;
        let (y, soft) = (|percent: f64| area.y(percent, PERCENT), Type::soft(self.size));
        upright(paper, area, &percents(percent_step(area, soft), y), soft)?;
        let mut points = vec![(area.left, y(0.0))];
        points.extend(self.data.curve.first().map(|(min, _)| (self.x(*min), y(0.0))));
        points.extend(self.data.curve.iter().map(|(min, percent)| (self.x(*min), y(*percent))));
        let last = self.data.curve.last().map_or(0.0, |(_, percent)| *percent);
        points.push((area.right, y(last)));
        paper.line(&points, ink::MAIN, 2.6)?;
        paper.line(&[(area.left, area.bottom), (area.right, area.bottom)], ink::AXIS, 1.2)
    }

    fn draw_bars(&self, paper: &Paper<'_>) -> Done {
        let (area, data, soft) = (self.bars, self.data, Type::soft(self.size));
        let most = data.bars.iter().map(|(_, share)| *share).fold(0.0, f64::max).max(1e-9);
        let lines = (area.height() / (soft.line() * 1.1)).floor().clamp(1.0, 4.0);
        let step = round_step(most / lines);
        let top = (most / step).ceil() * step;
        let y = |share: f64| area.y(share, (0.0, top));
        let digits = usize::from(step < 1.0);
        upright(paper, area, &ticks((0.0, top), step, y, |share| format!("{share:.digits$}")), soft)?;
        for (from, share) in &data.bars {
            let (left, right) = (self.x(*from), self.x(from + data.bar_min));
            let gap = ((right - left) * 0.08).min(1.0);
            let bar = Area {
                left: left.max(area.left),
                top: y(*share),
                right: right.min(area.right) - gap,
                bottom: area.bottom,
            };
            if bar.right > bar.left && *share > 0.0 {
                paper.fill(bar, ink::BAR)?;
            }
        }
        let name = format!("share of the runs, %: one bar is {}", duration(data.bar_min * 60.0));
        let name = if data.bars.len() > 1 { name } else { "share of the runs, %".into() };
        paper.text(&name, (MARGIN, self.curve.bottom + soft.px * 0.62), Side::RightOf, soft)
    }

    fn draw_marks(&self, paper: &Paper<'_>) -> Done {
        for mark in &self.data.marks {
            let (colour, at) = (colour(mark.kind), self.x(mark.at));
            for area in [self.curve, self.bars] {
                match mark.kind {
                    MarkKind::Percentile | MarkKind::Quote => {
                        paper.line(&[(at, area.top), (at, area.bottom)], colour, 1.6)?
                    }
                    MarkKind::Handbook => paper.dashes((at, area.top), (at, area.bottom), colour, 1.8)?,
                }
            }
            let y = self.curve.y(mark.chance, PERCENT);
            paper.dot((at, y), self.size.text() * 0.3, colour)?;
        }
        self.labels.draw(paper, &self.data.marks, |mark| (self.x(mark.at), self.curve.top))
    }
}

fn time_axis(data: &CompletionData) -> TimeAxis {
    TimeAxis { range: data.range, one_day_from_s: data.one_day_from_s, units: data.units }
}

fn axis_rows(data: &CompletionData) -> f64 {
    if data.one_day_from_s.is_some() { 2.0 } else { 1.0 }
}

fn axis_name(data: &CompletionData, soft: Type, width: f64) -> Vec<String> {
    let name = match data.one_day_from_s {
        Some(start_s) => format!("clock time, and time since the start at {}", clock(start_s, data.units)),
        None => "working time from the start to the end of the job, nights left out".into(),
    };
    soft.wrap(&format!("{name} ({})", data.note), width - 2.0 * MARGIN, 4)
}
