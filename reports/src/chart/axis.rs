//! Headings, grids and axes that figures share.

use super::paper::{Area, Paper, Side, Type};
use super::relief::minus;
use super::ticks::{multiples, round_step};
use super::{ChartError, Size, ink};

type Done = Result<(), ChartError>;

/// Most lines a title may take.
const TITLE_LINES: usize = 4;

/// Room left free around a figure \[px\].
pub(super) const MARGIN: f64 = 10.0;

/// The title of a figure, broken into lines.
pub(super) struct Heading {
    lines: Vec<String>,
    how: Type,
}

impl Heading {
    pub(super) fn new(title: &str, size: Size) -> Self {
        let how = Type::title(size);
        Self { lines: how.wrap(title, f64::from(size.width) - 2.0 * MARGIN, TITLE_LINES), how }
    }

    /// Height with the space below it \[px\].
    pub(super) fn height(&self) -> f64 {
        MARGIN + self.lines.len() as f64 * self.how.line() + self.how.px * 0.35
    }

    pub(super) fn draw(&self, paper: &Paper<'_>) -> Done {
        paper.lines(&self.lines, (MARGIN, MARGIN), Side::RightOf, self.how).map(|_| ())
    }
}

/// A mark of an axis.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tick {
    /// Where on the axis \[px\].
    pub(super) at: f64,
    /// What it says.
    pub(super) label: String,
}

/// Marks at the multiples of a step.
pub(super) fn ticks(
    (from, to): (f64, f64),
    step: f64,
    at: impl Fn(f64) -> f64,
    label: impl Fn(f64) -> String,
) -> Vec<Tick> {
    multiples(from, to, step).into_iter().map(|v| Tick { at: at(v), label: label(v) }).collect()
}

/// From nothing to all \[%\].
pub(super) const PERCENT: (f64, f64) = (0.0, 100.0);

/// Marks at round per cents.
pub(super) fn percents(step: f64, at: impl Fn(f64) -> f64) -> Vec<Tick> {
    ticks(PERCENT, step, at, |percent| format!("{percent:.0}"))
}

/// Marks at round numbers, no closer than so many px.
pub(super) fn numbers(area: Area, range: (f64, f64), least_px: f64) -> Vec<Tick> {
    let step = round_step((range.1 - range.0) / (area.width() / least_px));
    let digits = if step < 1.0 { (-step.log10()).ceil() as usize } else { 0 };
    ticks(range, step, |value| area.x(value, range), |value| minus(&format!("{value:.digits$}")))
}

/// The step of an upright axis in per cent that has room for its labels.
pub(super) fn percent_step(area: Area, how: Type) -> f64 {
    if area.height() / 5.0 > how.line() { 20.0 } else { 50.0 }
}

/// An upright axis in per cent (or another unit told elsewhere): level grid lines with labels left of them.
pub(super) fn upright(paper: &Paper<'_>, area: Area, ticks: &[Tick], how: Type) -> Done {
    for tick in ticks {
        paper.line(&[(area.left, tick.at), (area.right, tick.at)], ink::GRID, 1.0)?;
        paper.text_level(&tick.label, (area.left - how.px * 0.4, tick.at), Side::LeftOf, how)?;
    }
    Ok(())
}

/// Upright grid lines.
pub(super) fn grid(paper: &Paper<'_>, area: Area, ticks: &[Tick]) -> Done {
    ticks.iter().try_for_each(|t| paper.line(&[(t.at, area.top), (t.at, area.bottom)], ink::GRID, 1.0))
}

/// A level axis at the foot of `area`: line, marks, labels below. Returns where the labels end.
pub(super) fn level(paper: &Paper<'_>, area: Area, ticks: &[Tick], how: Type) -> Result<f64, ChartError> {
    paper.line(&[(area.left, area.bottom), (area.right, area.bottom)], ink::AXIS, 1.2)?;
    let foot = area.bottom + how.px * 0.3;
    for tick in ticks {
        paper.line(&[(tick.at, area.bottom), (tick.at, foot)], ink::AXIS, 1.2)?;
        paper.text(&tick.label, (tick.at, foot + how.px * 0.35), Side::Around, how)?;
    }
    Ok(foot + how.px * 0.35 + how.line())
}

/// Those ticks whose labels neither touch one another nor leave the room between `from` and `to`.
pub(super) fn with_room(ticks: Vec<Tick>, how: Type, from: f64, to: f64) -> Vec<Tick> {
    let mut end = from;
    let gap = how.px * 0.6;
    let mut kept = Vec::new();
    for tick in ticks {
        let half = how.width(&tick.label) / 2.0;
        if tick.at - half >= end && tick.at + half <= to {
            end = tick.at + half + gap;
            kept.push(tick);
        }
    }
    kept
}
