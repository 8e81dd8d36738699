//! Draws the figure.

use super::{Doing, ORDER, WaitingData};
use crate::chart::axis::{Heading, MARGIN, PERCENT, grid, level, percents};
use crate::chart::legend::{Key, Legend, Sign};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::rows::Names;
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

const AXIS: &str = "share of the time on the job, %";

/// Draws the figure. It grows higher than asked for where the crew is large.
pub(crate) fn draw(data: &WaitingData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.rows.iter().all(|row| row.parts.is_empty()) {
        return Err(ChartError::Nothing("nobody spends any time on the job"));
    }
    let fills: Vec<Doing> = ORDER
        .into_iter()
        .chain([Doing::Done])
        .filter(|d| data.rows.iter().any(|row| row.share(*d) > 0.0))
        .collect();
    let description = describe(data);
    let about = About { figure: "waiting", title: &data.title, description: &description, fills: &fills };
    let sketch = Sketch::new(data, size, &fills);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

fn describe(data: &WaitingData) -> String {
    let rows = data.rows.iter().map(|row| {
        let parts: Vec<String> =
            row.parts.iter().map(|(doing, share)| format!("{} {share:.0} %", doing.words())).collect();
        format!("{}: {}", row.name, parts.join(", "))
    });
    format!("Shares of the time on the job. {}.", rows.collect::<Vec<_>>().join("; "))
}

struct Sketch<'a> {
    data: &'a WaitingData,
    size: Size,
    heading: Heading,
    legend: Legend,
    names: Names,
    area: Area,
    pitch: f64,
    /// Free room between the loaders and the rakers \[px\].
    apart: f64,
}

impl<'a> Sketch<'a> {
    fn new(data: &'a WaitingData, size: Size, fills: &[Doing]) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let keys = fills.iter().map(|doing| Key::new(Sign::Doing(*doing), doing.words())).collect();
        let legend = Legend::new(keys, width - 2.0 * MARGIN, size);
        let names = Names::new(data.rows.iter().map(|row| row.name.as_str()), size);
        let apart = if data.loaders > 0 && data.loaders < data.rows.len() { soft.px * 0.8 } else { 0.0 };
        let top = heading.height() + legend.height() + soft.px * 0.3;
        let foot = soft.px * 0.65 + soft.line() * 2.0 + MARGIN * 0.5;
        let rows = data.rows.len() as f64;
        let room = (f64::from(size.height) - top - foot - apart) / rows;
        let pitch = room.clamp(names.row_height(), names.row_height().max(soft.px * 3.2));
        let bottom = top + rows * pitch + apart;
        let area = Area { left: names.right, top, right: width - MARGIN - soft.width("100") / 2.0, bottom };
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, legend, names, area, pitch, apart }
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area) = (Type::soft(self.size), self.area);
        self.heading.draw(paper)?;
        self.legend.draw(paper, MARGIN, self.heading.height())?;
        let step = if area.width() < 14.0 * soft.px { 50.0 } else { 20.0 };
        let ticks = percents(step, |percent| self.x(percent));
        grid(paper, area, &ticks)?;
        for row in 0..self.data.rows.len() {
            self.draw_row(paper, row)?;
        }
        let below = level(paper, area, &ticks, soft)?;
        let middle = f64::from(self.size.width) / 2.0;
        paper.text(AXIS, (middle, below), Side::Around, soft)
    }

    fn x(&self, percent: f64) -> f64 {
        self.area.x(percent, PERCENT)
    }

    fn draw_row(&self, paper: &Paper<'_>, row: usize) -> Done {
        let how = Type::soft(self.size).coloured(ink::TEXT);
        let apart = if row >= self.data.loaders { self.apart } else { 0.0 };
        let middle = self.area.top + (row as f64 + 0.5) * self.pitch + apart;
        let half = (self.pitch * 0.36).min(how.px * 1.1);
        self.names.draw(paper, row, middle)?;
        let mut from = 0.0;
        for (doing, percent) in &self.data.rows[row].parts {
            let (left, right) = (self.x(from), self.x(from + percent));
            from += percent;
            let bar = Area { left, top: middle - half, right, bottom: middle + half };
            let gap = (bar.width() * 0.2).min(1.0);
            paper.fill(Area { right: right - gap, ..bar }, ink::of(*doing).background)?;
            // Before a bar is named its number must have room, with some of the fill left to see on both sides.
            let label = format!("{percent:.0} %");
            let width = how.width(&label);
            if bar.width() >= width + how.px * 1.1 {
                let at = f64::midpoint(left, right);
                let (half_width, half_height) = (width / 2.0 + how.px * 0.25, how.px * 0.62);
                let plate = Area {
                    left: at - half_width,
                    top: middle - half_height,
                    right: at + half_width,
                    bottom: middle + half_height,
                };
                paper.fill(plate, ink::PAPER)?;
                paper.text_level(&label, (at, middle), Side::Around, how)?;
            }
        }
        Ok(())
    }
}
