//! Draws the figure.

use super::TimelineData;
use super::cells::{Cell, Cells};
use crate::chart::axis::{Heading, MARGIN, Tick, grid, level};
use crate::chart::days::DayScale;
use crate::chart::doing::Doing;
use crate::chart::legend::{Key, Legend, Sign, arrival};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::rows::Names;
use crate::chart::seal::About;
use crate::chart::ticks::{multiples, time_step};
use crate::chart::{ChartError, Size, ink};
use scenarios::units::{clock, duration};

type Done = Result<(), ChartError>;

/// The order of the legend.
const ORDER: [Doing; 20] = [
    Doing::Working,
    Doing::Loading,
    Doing::Hauling,
    Doing::Passing,
    Doing::Dumping,
    Doing::Returning,
    Doing::Raking,
    Doing::Walking,
    Doing::WaitingForRoom,
    Doing::WaitingForFace,
    Doing::WaitingForPass,
    Doing::WaitingForDelivery,
    Doing::WaitingForHeap,
    Doing::StandingClear,
    Doing::Stopped,
    Doing::SetUpAndCleanUp,
    Doing::SetUp,
    Doing::CleanUp,
    Doing::OnBreak,
    Doing::Done,
];

/// Draws the figure. It grows higher than asked for where the crew is large.
pub(crate) fn draw(data: &TimelineData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.rows.iter().all(|row| row.blocks.is_empty()) {
        return Err(ChartError::Nothing("nothing happens in this run"));
    }
    let names = Names::new(data.rows.iter().map(|row| row.name.as_str()), size);
    let soft = Type::soft(size);
    let cells = Cells::new(data, names.right, f64::from(size.width) - MARGIN - soft.px, soft.px);
    let drawn = |doing: &Doing| cells.all().any(|cell| cell.doing == *doing);
    let fills: Vec<Doing> = ORDER.into_iter().filter(drawn).collect();
    let description = format!(
        "What {} loaders and {} rakers do over the time of the clock, one row each: {}.",
        data.loaders,
        data.rows.len() - data.loaders,
        fills.iter().map(|doing| doing.words()).collect::<Vec<_>>().join(", ")
    );
    let about = About { figure: "timeline", title: &data.title, description: &description, fills: &fills };
    let sketch = Sketch::new(data, size, names, &cells, &fills);
    draw_on(sketch.size, &about, |paper| sketch.draw(paper))
}

struct Sketch<'a> {
    data: &'a TimelineData,
    size: Size,
    heading: Heading,
    legend: Legend,
    names: Names,
    cells: &'a Cells,
    note: Vec<String>,
    /// Where the first line begins \[px\].
    top: f64,
    /// Room above the rows of a line, for the time it begins at and for deliveries \[px\].
    above: f64,
    pitch: f64,
    /// Free room between the loaders and the rakers \[px\].
    apart: f64,
}

fn keys(data: &TimelineData, fills: &[Doing]) -> Vec<Key> {
    let mut keys: Vec<Key> = fills.iter().map(|doing| Key::new(Sign::Doing(*doing), doing.words())).collect();
    if !data.deliveries.is_empty() {
        keys.push(Key::new(Sign::Arrival(ink::DELIVERY), "delivery"));
    }
    if data.days.worked.len() > 1 {
        keys.push(Key::new(Sign::Shade(ink::NIGHT), "night"));
    }
    keys
}

/// What the time axis shows, in words.
fn note(data: &TimelineData, cells: &Cells) -> String {
    let clock = DayScale::new(&data.days, 0.0, 1.0, 0.0).name();
    match (cells.line_min, cells.stretch_min) {
        (Some((min, _)), _) => {
            format!("minutes since the time above each line; a line is {}", duration(min * 60.0))
        }
        (_, Some(min)) => {
            format!("{clock}; each column is {} of time, split by its shares", duration(min * 60.0))
        }
        _ => clock.to_owned(),
    }
}

impl<'a> Sketch<'a> {
    fn new(data: &'a TimelineData, size: Size, names: Names, cells: &'a Cells, fills: &[Doing]) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let mut keys = keys(data, fills);
        if cells.line_min.is_some() {
            keys.retain(|key| key.sign != Sign::Shade(ink::NIGHT));
        }
        let legend = Legend::new(keys, width - 2.0 * MARGIN, size);
        let both = data.loaders > 0 && data.loaders < data.rows.len();
        let apart = if both && cells.line_min.is_none() { soft.px * 0.8 } else { 0.0 };
        let above = match (cells.line_min.is_some(), data.deliveries.is_empty()) {
            (true, _) => soft.line() * 1.2,
            (false, false) => soft.px * 1.3,
            (false, true) => soft.px * 0.3,
        };
        let top = heading.height() + legend.height();
        let note = soft.wrap(&note(data, cells), width - 2.0 * MARGIN, 3);
        let days = if cells.line_min.is_none() && data.days.worked.len() > 1 { 1.0 } else { 0.0 };
        let foot = soft.px * 0.65 + soft.line() * (1.0 + days + note.len() as f64) + MARGIN * 0.5;
        let (rows, lines) = (data.rows.len() as f64, cells.lines.len() as f64);
        let room = (f64::from(size.height) - top - foot - lines * (above + apart)) / (rows * lines);
        let most = if cells.stretch_min.is_some() { 5.0 } else { 3.4 };
        let pitch = room.clamp(names.row_height(), names.row_height().max(soft.px * most));
        let bottom = top + lines * (above + apart + rows * pitch);
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, legend, names, cells, note, top, above, pitch, apart }
    }

    /// The rows of a line.
    fn area(&self, line: usize) -> Area {
        let rows = self.data.rows.len() as f64 * self.pitch + self.apart;
        let top = self.top + line as f64 * (self.above + rows) + self.above;
        Area { left: self.names.right, top, right: self.cells.lines[line].right, bottom: top + rows }
    }

    fn scale(&self, line: usize) -> DayScale<'_> {
        let area = self.area(line);
        DayScale::new(&self.cells.lines[line].days, area.left, area.right, Type::soft(self.size).px)
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, width) = (Type::soft(self.size), f64::from(self.size.width));
        self.heading.draw(paper)?;
        self.legend.draw(paper, MARGIN, self.heading.height())?;
        for line in 0..self.cells.lines.len() {
            self.draw_line(paper, line)?;
        }
        let below = match self.cells.line_min {
            Some((_, longest)) => self.minutes(paper, longest)?,
            None => self.clock(paper)?,
        };
        paper.lines(&self.note, (width / 2.0, below), Side::Around, soft).map(|_| ())
    }

    fn draw_line(&self, paper: &Paper<'_>, line: usize) -> Done {
        let (soft, area, scale) = (Type::soft(self.size), self.area(line), self.scale(line));
        let days = &self.cells.lines[line].days;
        for (from, to) in &days.breaks {
            paper.fill(Area { left: scale.x(*from), right: scale.x(*to), ..area }, ink::BREAK)?;
        }
        let grid_at: Vec<Tick> = match self.cells.line_min {
            Some((_, longest)) => self.minute_ticks(longest, area.right),
            None => scale.ticks(soft, MARGIN * 0.5, f64::from(self.size.width) - MARGIN * 0.5),
        };
        grid(paper, area, &grid_at)?;
        for row in 0..self.data.rows.len() {
            self.draw_row(paper, line, row)?;
        }
        for (left, right) in scale.nights() {
            paper.fill(Area { left, right, ..area }, ink::NIGHT)?;
        }
        let (from, to) = (days.worked.first().map_or(0.0, |w| w.0), days.until());
        // A delivery at night stands in the squeezed night, or, where each day has lines of its own, before the next.
        let before =
            line.checked_sub(1).map_or(f64::NEG_INFINITY, |line| self.cells.lines[line].days.until());
        for at in self.data.deliveries.iter().filter(|at| **at > before && **at <= to) {
            let x = scale.x(at.max(from));
            paper.dashes((x, area.top), (x, area.bottom), ink::DELIVERY, 1.2)?;
            arrival(paper, x, area.top - soft.px, soft.px * 0.9, ink::DELIVERY)?;
        }
        if self.cells.line_min.is_some() {
            let label = clock(days.start_s + from * 60.0, days.units);
            let room = self.names.right - MARGIN - soft.px;
            let label = soft.shorten(&label, room.max(soft.width("day 2 10:30 am")));
            paper.text(
                &label,
                (MARGIN, area.top - soft.line() * 1.02),
                Side::RightOf,
                soft.coloured(ink::TEXT),
            )?;
        }
        Ok(())
    }

    fn minute_ticks(&self, longest: f64, until: f64) -> Vec<Tick> {
        let soft = Type::soft(self.size);
        let width = f64::from(self.size.width) - MARGIN - soft.px - self.names.right;
        let step = time_step(longest * 60.0 * soft.width("000") * 1.5 / width) / 60.0;
        let all = multiples(0.0, longest, step).into_iter();
        all.map(|min| Tick { at: self.names.right + min / longest * width, label: format!("{min:.0}") })
            .filter(|tick| tick.at <= until + 0.5)
            .collect()
    }

    /// The axis below the last of several lines.
    fn minutes(&self, paper: &Paper<'_>, longest: f64) -> Result<f64, ChartError> {
        let soft = Type::soft(self.size);
        let right = f64::from(self.size.width) - MARGIN - soft.px;
        let area = Area { right, ..self.area(self.cells.lines.len() - 1) };
        level(paper, area, &self.minute_ticks(longest, right), soft)
    }

    /// The axis below a single line.
    fn clock(&self, paper: &Paper<'_>) -> Result<f64, ChartError> {
        let (soft, scale, width) = (Type::soft(self.size), self.scale(0), f64::from(self.size.width));
        let (from, to) = (MARGIN * 0.5, width - MARGIN * 0.5);
        let below = level(paper, self.area(0), &scale.ticks(soft, from, to), soft)?;
        let days = scale.day_labels(soft, from, to);
        for day in &days {
            paper.text(&day.label, (day.at, below), Side::Around, soft.coloured(ink::TEXT))?;
        }
        Ok(if days.is_empty() { below } else { below + soft.line() })
    }

    fn draw_row(&self, paper: &Paper<'_>, line: usize, row: usize) -> Done {
        let apart = if row >= self.data.loaders { self.apart } else { 0.0 };
        let middle = self.area(line).top + (row as f64 + 0.5) * self.pitch + apart;
        self.names.draw(paper, row, middle)?;
        let height = self.pitch * 0.8;
        let foot = middle + height / 2.0;
        self.cells.lines[line].rows[row].iter().try_for_each(|cell: &Cell| {
            let area = Area {
                left: cell.left,
                right: cell.right,
                top: foot - cell.top * height,
                bottom: foot - cell.foot * height,
            };
            paper.fill(area, ink::of(cell.doing).background)
        })
    }
}
