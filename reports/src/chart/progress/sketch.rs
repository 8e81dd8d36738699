//! Draws the figure.

use super::ProgressData;
use crate::chart::axis::{Heading, MARGIN, PERCENT, level, percents, upright};
use crate::chart::days::DayScale;
use crate::chart::legend::{Key, Legend, Sign, arrival};
use crate::chart::paper::{Area, Paper, Side, Type, draw_on};
use crate::chart::seal::About;
use crate::chart::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

const NAME: &str = "raked out, % of the volume";

/// Draws the figure.
pub(crate) fn draw(data: &ProgressData, size: Size) -> Result<String, ChartError> {
    size.check()?;
    if data.runs == 0 {
        return Err(ChartError::Nothing("no run was made"));
    }
    let description = format!(
        "Share of the volume raked out over the time of the clock, from 0 to 100 %: the middle of {} runs as a line, the \
         range from the 10th to the 90th percentile as a band; {} breaks and {} deliveries are marked.",
        data.runs,
        data.days.breaks.len(),
        data.deliveries.len()
    );
    let about = About { figure: "progress", title: &data.title, description: &description, fills: &[] };
    draw_on(size, &about, |paper| sketch(paper, data, size))
}

/// Whether the band has any width.
fn varies(data: &ProgressData) -> bool {
    data.steps.iter().any(|step| step.early < step.late)
}

fn keys(data: &ProgressData) -> Vec<Key> {
    let mut keys = Vec::new();
    match (data.runs, varies(data)) {
        (1, _) => keys.push(Key::new(Sign::Line(ink::MAIN), "the one run")),
        (_, false) => keys.push(Key::new(Sign::Line(ink::MAIN), "every run")),
        (_, true) => {
            keys.push(Key::new(Sign::Line(ink::MAIN), "half of the runs are earlier, half later"));
            keys.push(Key::new(Sign::Shade(ink::RANGE), "eight runs of ten"));
        }
    }
    if !data.days.breaks.is_empty() {
        keys.push(Key::new(Sign::Shade(ink::BREAK), "break"));
    }
    if data.days.worked.len() > 1 {
        keys.push(Key::new(Sign::Shade(ink::NIGHT), "night"));
    }
    if !data.deliveries.is_empty() {
        keys.push(Key::new(Sign::Arrival(ink::DELIVERY), "delivery promised"));
    }
    keys
}

fn sketch(paper: &Paper<'_>, data: &ProgressData, size: Size) -> Done {
    let soft = Type::soft(size);
    let (width, height) = (f64::from(size.width), f64::from(size.height));
    let heading = Heading::new(&data.title, size);
    let legend = Legend::new(keys(data), width - 2.0 * MARGIN, size);
    heading.draw(paper)?;
    legend.draw(paper, MARGIN, heading.height())?;
    let name_top = heading.height() + legend.height();
    paper.text(NAME, (MARGIN, name_top), Side::RightOf, soft)?;
    let day_row = if data.days.worked.len() > 1 { 1.0 } else { 0.0 };
    let area = Area {
        left: MARGIN + soft.width("100") + soft.px * 0.6,
        top: name_top + soft.line() * 1.25 + soft.px * 0.5,
        right: width - MARGIN - soft.px,
        bottom: height - soft.px * 0.65 - soft.line() * (2.0 + day_row) - MARGIN * 0.5,
    };
    let scale = DayScale::new(&data.days, area.left, area.right, soft.px);
    let y = |percent: f64| area.y(percent, PERCENT);
    shade(paper, data, &scale, area)?;
    upright(paper, area, &percents(25.0, y), soft)?;
    draw_band(paper, data, &scale, y)?;
    for at in data.deliveries.iter().map(|min| scale.x(*min)) {
        paper.dashes((at, area.top), (at, area.bottom), ink::DELIVERY, 1.2)?;
        arrival(paper, at, area.top - soft.px * 0.5, soft.px * 0.9, ink::DELIVERY)?;
    }
    foot(paper, &scale, area, size)
}

/// Breaks, and nights between the days.
fn shade(paper: &Paper<'_>, data: &ProgressData, scale: &DayScale<'_>, area: Area) -> Done {
    for (from, to) in &data.days.breaks {
        paper.fill(Area { left: scale.x(*from), right: scale.x(*to), ..area }, ink::BREAK)?;
    }
    scale
        .nights()
        .into_iter()
        .try_for_each(|(left, right)| paper.fill(Area { left, right, ..area }, ink::NIGHT))
}

fn draw_band(paper: &Paper<'_>, data: &ProgressData, scale: &DayScale<'_>, y: impl Fn(f64) -> f64) -> Done {
    // A straight step across a night would show work in the dark: it stands still there, at the share reached before.
    let path = |time: fn(&super::Step) -> f64| -> Vec<(f64, f64)> {
        let mut points = Vec::new();
        for pair in data.steps.windows(2) {
            let (from, to) = (time(&pair[0]), time(&pair[1]));
            points.push((scale.x(from), y(pair[0].percent)));
            let worked: f64 = worked_between(data, from, to);
            for night in data.days.worked.windows(2) {
                let (dusk, dawn) = (night[0].1, night[1].0);
                if from < dusk && to > dawn && worked > 0.0 {
                    let share = worked_between(data, from, dusk) / worked;
                    let height = y(pair[0].percent + share * (pair[1].percent - pair[0].percent));
                    points.extend([(scale.x(dusk), height), (scale.x(dawn), height)]);
                }
            }
        }
        points.extend(data.steps.last().map(|step| (scale.x(time(step)), y(step.percent))));
        points
    };
    let mut band = path(|step| step.early);
    band.extend(path(|step| step.late).into_iter().rev());
    if varies(data) {
        paper.shape(&band, ink::RANGE)?;
        paper.line(&path(|step| step.early), ink::AXIS, 0.8)?;
        paper.line(&path(|step| step.late), ink::AXIS, 0.8)?;
    }
    paper.line(&path(|step| step.middle), ink::MAIN, 2.6)
}

/// Working time between two moments, nights left out \[min\].
fn worked_between(data: &ProgressData, from: f64, to: f64) -> f64 {
    data.days.worked.iter().map(|(a, b)| (to.min(*b) - from.max(*a)).max(0.0)).sum()
}

/// The time axis with its days and its name.
fn foot(paper: &Paper<'_>, scale: &DayScale<'_>, area: Area, size: Size) -> Done {
    let (soft, width) = (Type::soft(size), f64::from(size.width));
    let mut below = level(paper, area, &scale.ticks(soft, MARGIN * 0.5, width - MARGIN * 0.5), soft)?;
    let days = scale.day_labels(soft, MARGIN * 0.5, width - MARGIN * 0.5);
    for day in &days {
        paper.text(&day.label, (day.at, below), Side::Around, soft.coloured(ink::TEXT))?;
    }
    if !days.is_empty() {
        below += soft.line();
    }
    paper.text(&soft.shorten(scale.name(), width - 2.0 * MARGIN), (width / 2.0, below), Side::Around, soft)
}
