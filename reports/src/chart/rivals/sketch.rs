//! Draws the figure: a curve for each job, told apart by its dashes and its letter, with a dot at its P80.

use super::{Rank, Rival, RivalsData};
use crate::chart::axis::{Heading, MARGIN, PERCENT, Tick, grid, level, percents, upright};
use crate::chart::legend::{Key, Legend, Sign};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::stroke::Stroke;
use crate::chart::time_axis::TimeAxis;
use crate::chart::{ChartError, Size, ink};
use plotters::style::RGBColor;

type Done = Result<(), ChartError>;

/// Draws the figure.
pub(crate) fn draw(data: &RivalsData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.curves.iter().all(|curve| curve.points.is_empty()) {
        return Err(ChartError::Nothing("no run was made"));
    }
    let each: Vec<String> =
        data.curves.iter().map(|c| format!("{} {}: P80 {}", c.letter, c.name, c.when)).collect();
    let description = format!(
        "For each job the chance of being done, rising from 0 to 100 %, over the {} ({}). {}.",
        data.axis,
        data.note,
        each.join("; ")
    );
    let about = About { figure: "rivals", title: &data.title, description: &description, fills: &[] };
    let sketch = Sketch::new(data, size);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

struct Sketch<'a> {
    data: &'a RivalsData,
    size: Size,
    heading: Heading,
    legend: Legend,
    caption: Vec<String>,
    area: Area,
    axis: TimeAxis,
    ticks: Vec<(Tick, String)>,
    axis_name: Vec<String>,
}

/// Height of the curves themselves, at the least, in letters.
const LEAST_LETTERS: f64 = 15.0;

impl<'a> Sketch<'a> {
    fn new(data: &'a RivalsData, size: Size) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let keys = data.curves.iter().enumerate().map(|(i, curve)| {
            Key::new(
                Sign::Stroke(stroke(data, i), colour(curve.rank)),
                format!("{} {}: {}{}", curve.letter, curve.name, curve.when, beyond(data, curve)),
            )
        });
        let legend = Legend::new(keys.collect(), width - 2.0 * MARGIN, size);
        let axis = TimeAxis { range: data.range, one_day_from_s: data.one_day_from_s, units: data.units };
        let (left, right) = (MARGIN + soft.width("100") + soft.px * 0.6, width - MARGIN - soft.px);
        let ticks = axis.ticks(left, right, width, soft);
        let axis_name = soft.wrap(&format!("{} ({})", data.axis, data.note), width - 2.0 * MARGIN, 4);
        let rows = if data.one_day_from_s.is_some() { 2.0 } else { 1.0 };
        let foot = soft.px * 0.65 + soft.line() * (rows + axis_name.len() as f64) + MARGIN * 0.5;
        let caption = soft.wrap(
            "chance of being done, clean-up included, %; dot and time: 8 days in 10",
            width - 2.0 * MARGIN,
            2,
        );
        let top = heading.height() + legend.height() + soft.line() * (caption.len() as f64 + 0.4);
        let bottom = (f64::from(size.height) - foot).max(top + LEAST_LETTERS * soft.px);
        let area = Area { left, top, right, bottom };
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, legend, caption, area, axis, ticks, axis_name }
    }

    fn x(&self, min: f64) -> f64 {
        self.axis.x(self.area.left, self.area.right, min)
    }

    fn y(&self, percent: f64) -> f64 {
        self.area.y(percent, PERCENT)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area) = (Type::soft(self.size), self.area);
        self.heading.draw(paper)?;
        self.legend.draw(paper, MARGIN, self.heading.height())?;
        let below = self.heading.height() + self.legend.height();
        paper.lines(&self.caption, (MARGIN, below), Side::RightOf, soft)?;
        let marks: Vec<Tick> = self.ticks.iter().map(|(tick, _)| tick.clone()).collect();
        grid(paper, area, &marks)?;
        upright(paper, area, &percents(20.0, |percent| self.y(percent)), soft)?;
        paper.line(&[(area.left, self.y(80.0)), (area.right, self.y(80.0))], ink::AXIS, 1.4)?;
        for rank in [Rank::Other, Rank::First, Rank::Best] {
            for (i, curve) in
                self.data.curves.iter().enumerate().filter(|(_, c)| c.rank == rank && !self.data.is_beyond(c))
            {
                self.draw_curve(paper, i, curve)?;
            }
        }
        for (i, curve) in self.data.curves.iter().enumerate().filter(|(_, c)| !self.data.is_beyond(c)) {
            self.draw_marks(paper, i, curve)?;
        }
        let below = level(paper, area, &marks, soft)?;
        let mut y = below - soft.line() * 0.08;
        if self.data.one_day_from_s.is_some() {
            for (tick, after) in &self.ticks {
                paper.text(after, (tick.at, y), Side::Around, soft)?;
            }
            y += soft.line();
        }
        paper.lines(&self.axis_name, (f64::from(self.size.width) / 2.0, y), Side::Around, soft).map(|_| ())
    }

    fn draw_curve(&self, paper: &Paper<'_>, place: usize, curve: &Rival) -> Done {
        let inside = curve.points.iter().filter(|(min, _)| *min >= self.data.range.0);
        let points: Vec<(f64, f64)> = inside.map(|(min, percent)| (self.x(*min), self.y(*percent))).collect();
        let px = if curve.rank == Rank::Best { 3.2 } else { 2.4 };
        stroke(self.data, place).draw(paper, &points, colour(curve.rank), px)
    }

    /// The dot at the P80 with a line down to the axis, and the letter on the curve.
    fn draw_marks(&self, paper: &Paper<'_>, place: usize, curve: &Rival) -> Done {
        let strong = Type::strong(self.size).coloured(colour(curve.rank));
        let (x, y) = (self.x(curve.p80), self.y(80.0));
        paper.dashes((x, y), (x, self.area.bottom), colour(curve.rank), 0.9)?;
        paper.dot((x, y), strong.px * 0.32, colour(curve.rank))?;
        // Letters of curves that lie close stand at heights of their own.
        let others = (self.data.curves.len() - 1).max(1) as f64;
        let at = 10.0 + 60.0 * place as f64 / others;
        let half = strong.px * 0.62;
        let x = self.x(time_at(curve, at)).clamp(self.area.left + half, self.area.right - half);
        paper.dot((x, self.y(at)), half, ink::PAPER)?;
        paper.text_level(&curve.letter, (x, self.y(at)), Side::Around, strong)
    }
}

/// What the legend says of a job whose curve is not drawn.
fn beyond(data: &RivalsData, curve: &Rival) -> &'static str {
    if data.is_beyond(curve) { " (beyond the picture)" } else { "" }
}

/// When a job's chance reaches so much \[%\].
fn time_at(curve: &Rival, percent: f64) -> f64 {
    let after = curve.points.partition_point(|(_, p)| *p < percent);
    match (curve.points.get(after.saturating_sub(1)), curve.points.get(after)) {
        (Some(a), Some(b)) if b.1 > a.1 => {
            a.0 + (b.0 - a.0) * ((percent - a.1) / (b.1 - a.1)).clamp(0.0, 1.0)
        }
        (_, Some(b)) => b.0,
        (Some(a), None) => a.0,
        (None, None) => 0.0,
    }
}

/// The best is drawn through, the others in dashes of their own.
fn stroke(data: &RivalsData, place: usize) -> Stroke {
    if data.curves[place].rank == Rank::Best {
        return Stroke::Solid;
    }
    let before = data.curves[..place].iter().filter(|curve| curve.rank != Rank::Best).count();
    Stroke::ALL[1 + before % (Stroke::ALL.len() - 1)]
}

fn colour(rank: Rank) -> RGBColor {
    match rank {
        Rank::Best => ink::MAIN,
        Rank::First => ink::AGAINST,
        Rank::Other => ink::TEXT,
    }
}
