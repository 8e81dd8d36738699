//! Draws the figure.

use super::TimelineData;
use super::cells::{Cell, Cells};
use crate::chart::axis::{Heading, MARGIN, grid, level};
use crate::chart::days::DayScale;
use crate::chart::doing::Doing;
use crate::chart::legend::{Key, Legend, Sign, arrival};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::rows::Names;
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};
use scenarios::units::duration;

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
///
/// # Errors
/// If nothing happens in the run, or the size has no room for a figure.
pub fn draw(data: &TimelineData, size: Size) -> Result<String, ChartError> {
    if data.rows.iter().all(|row| row.blocks.is_empty()) {
        return Err(ChartError::Nothing("nothing happens in this run"));
    }
    let width = f64::from(size.width);
    let names = Names::new(data.rows.iter().map(|row| row.name.as_str()), size);
    let soft = Type::soft(size);
    let scale = DayScale::new(&data.days, names.right, width - MARGIN - soft.px, soft.px);
    let cells = Cells::new(data, &scale);
    let drawn = |doing: &Doing| cells.rows.iter().flatten().any(|cell| cell.doing == *doing);
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
    area: Area,
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

impl<'a> Sketch<'a> {
    fn new(data: &'a TimelineData, size: Size, names: Names, cells: &'a Cells, fills: &[Doing]) -> Self {
        let soft = Type::soft(size);
        let width = f64::from(size.width);
        let heading = Heading::new(&data.title, size);
        let legend = Legend::new(keys(data, fills), width - 2.0 * MARGIN, size);
        let both = data.loaders > 0 && data.loaders < data.rows.len();
        let apart = if both { soft.px * 0.8 } else { 0.0 };
        let arrivals = if data.deliveries.is_empty() { 0.3 } else { 1.3 };
        let top = heading.height() + legend.height() + soft.px * arrivals;
        let clock = DayScale::new(&data.days, names.right, width, 0.0).name();
        let note = match cells.stretch_min {
            Some(min) => {
                format!("{clock}; each column is {} of time, split by its shares", duration(min * 60.0))
            }
            None => clock.to_owned(),
        };
        let note = soft.wrap(&note, width - 2.0 * MARGIN, 3);
        let days = if data.days.worked.len() > 1 { 1.0 } else { 0.0 };
        let foot = soft.px * 0.5 + soft.line() * (1.0 + days + note.len() as f64) + MARGIN * 0.5;
        let room = (f64::from(size.height) - top - foot - apart) / data.rows.len() as f64;
        let most = if cells.stretch_min.is_some() { 5.0 } else { 3.4 };
        let pitch = room.clamp(names.row_height(), names.row_height().max(soft.px * most));
        let bottom = top + data.rows.len() as f64 * pitch + apart;
        let area = Area { left: names.right, top, right: width - MARGIN - soft.px, bottom };
        let size = Size { height: (bottom + foot).ceil() as u32, ..size };
        Self { data, size, heading, legend, names, cells, note, area, pitch, apart }
    }

    fn draw(&self, paper: &Paper<'_>) -> Done {
        let (soft, area, width) = (Type::soft(self.size), self.area, f64::from(self.size.width));
        self.heading.draw(paper)?;
        self.legend.draw(paper, MARGIN, self.heading.height())?;
        let scale = DayScale::new(&self.data.days, area.left, area.right, soft.px);
        for (from, to) in &self.data.days.breaks {
            paper.fill(Area { left: scale.x(*from), right: scale.x(*to), ..area }, ink::BREAK)?;
        }
        let ticks = scale.ticks(soft, MARGIN * 0.5, width - MARGIN * 0.5);
        grid(paper, area, &ticks)?;
        for row in 0..self.data.rows.len() {
            self.draw_row(paper, row)?;
        }
        for (left, right) in scale.nights() {
            paper.fill(Area { left, right, ..area }, ink::NIGHT)?;
        }
        for at in self.data.deliveries.iter().map(|min| scale.x(*min)) {
            paper.dashes((at, area.top), (at, area.bottom), ink::DELIVERY, 1.2)?;
            arrival(paper, at, area.top - soft.px, soft.px * 0.9, ink::DELIVERY)?;
        }
        let mut below = level(paper, area, &ticks, soft)?;
        let days = scale.day_labels(soft, MARGIN * 0.5, width - MARGIN * 0.5);
        for day in &days {
            paper.text(&day.label, (day.at, below), Side::Around, soft.coloured(ink::TEXT))?;
        }
        if !days.is_empty() {
            below += soft.line();
        }
        paper.lines(&self.note, (width / 2.0, below), Side::Around, soft).map(|_| ())
    }

    fn draw_row(&self, paper: &Paper<'_>, row: usize) -> Done {
        let apart = if row >= self.data.loaders { self.apart } else { 0.0 };
        let middle = self.area.top + (row as f64 + 0.5) * self.pitch + apart;
        self.names.draw(paper, row, middle)?;
        let height = self.pitch * 0.8;
        let foot = middle + height / 2.0;
        self.cells.rows[row].iter().try_for_each(|cell: &Cell| {
            let area = Area {
                left: cell.left,
                right: cell.right,
                top: foot - cell.top * height,
                bottom: foot - cell.foot * height,
            };
            paper.fill(area, ink::of(cell.doing).ground)
        })
    }
}
