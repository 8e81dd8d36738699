//! One run, minute by minute: what each loader and raker does.

mod cells;
mod sketch;

pub(crate) use sketch::draw;

use super::days::Days;
use super::doing::Doing;
use super::words::short_name;
use crate::findings::{Calendar, about_duration};
use sim::{Duration, Event, Job, Replay};

/// A replayed run, ready to be drawn. Times are on the clock, from the start of the first day \[min\].
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct TimelineData {
    /// The finding.
    pub title: String,
    /// One for each loader, then one for each raker.
    pub rows: Vec<Row>,
    /// How many of the rows are loaders.
    pub loaders: usize,
    /// The days shown, with their breaks.
    pub days: Days,
    /// When trucks tipped \[min\], in order.
    pub deliveries: Vec<f64>,
}

/// What one of the crew does.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Row {
    /// Name in the job.
    pub name: String,
    /// In order, never overlapping; nothing at night.
    pub blocks: Vec<Block>,
}

/// A stretch of one activity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Block {
    /// The activity.
    pub doing: Doing,
    /// From \[min\].
    pub from: f64,
    /// To \[min\], after `from`.
    pub to: f64,
}

/// Prepares the figure.
pub(crate) fn prepare(job: &Job, replay: &Replay, calendar: Calendar) -> TimelineData {
    let end = minutes(replay.outcome.finish.clock);
    let mut rows = Vec::new();
    for (i, loader) in job.loaders.iter().enumerate() {
        let changes = replay.log.iter().filter_map(|entry| match entry.event {
            Event::Loader { loader, activity, .. } if loader == i => {
                Some((minutes(entry.at), Doing::of_loader(activity)))
            }
            _ => None,
        });
        rows.push(Row { name: loader.name.clone(), blocks: blocks(changes, end) });
    }
    for (i, raker) in job.rakers.iter().enumerate() {
        let changes = replay.log.iter().filter_map(|entry| match entry.event {
            Event::Raker { raker, activity, .. } if raker == i => {
                Some((minutes(entry.at), Doing::of_raker(activity)))
            }
            _ => None,
        });
        rows.push(Row { name: raker.name.clone(), blocks: blocks(changes, end) });
    }
    let deliveries = replay.log.iter().filter(|entry| matches!(entry.event, Event::Delivered { .. }));
    let working = rows.iter().flat_map(|row| &row.blocks);
    let seen = working.filter(|b| !matches!(b.doing, Doing::Done | Doing::OnBreak)).map(|b| b.to - 1e-6);
    let days = Days::new(&job.shift, end, seen, calendar.units);
    TimelineData {
        title: title(&rows, replay, job.shift.start_s, calendar),
        loaders: job.loaders.len(),
        deliveries: deliveries.map(|entry| minutes(entry.at)).filter(|at| *at <= end).collect(),
        rows,
        days,
    }
}

fn minutes(time: Duration) -> f64 {
    time.as_secs_f64() / 60.0
}

/// Blocks from the changes of one of the crew; an activity lasts until the next, the last until `end`.
fn blocks(changes: impl Iterator<Item = (f64, Option<Doing>)>, end: f64) -> Vec<Block> {
    let changes: Vec<_> = changes.collect();
    let ends = changes.iter().skip(1).map(|(at, _)| *at).chain([end]);
    let mut blocks: Vec<Block> = Vec::new();
    for ((from, doing), to) in changes.iter().zip(ends) {
        let Some(doing) = *doing else { continue };
        match blocks.last_mut() {
            Some(last) if last.doing == doing && last.to == *from => last.to = to.max(last.to),
            _ if to > *from => blocks.push(Block { doing, from: *from, to }),
            _ => {}
        }
    }
    blocks
}

/// Waits shorter than this share of the run are not worth a title (our own choice).
const HARDLY: f64 = 0.02;

fn title(rows: &[Row], replay: &Replay, start_s: f64, calendar: Calendar) -> String {
    let outcome = &replay.outcome;
    let working_s = minutes(outcome.finish.working) * 60.0;
    let done = calendar.done(working_s, start_s + minutes(outcome.finish.clock) * 60.0).clock;
    let ends = if outcome.ends_short { "stops short of material at" } else { "done by" };
    let loads = match outcome.loads {
        1 => "1 load".to_owned(),
        n => format!("{n} loads"),
    };
    let waits = rows.iter().flat_map(|row| waits(row).into_iter().map(move |(doing, min)| (row, doing, min)));
    let longest = waits.fold(None, |best: Option<(&Row, Doing, f64)>, wait| match best {
        Some(best) if best.2 >= wait.2 => Some(best),
        _ => Some(wait),
    });
    let waiting = match longest {
        Some((row, doing, min)) if min >= HARDLY * minutes(outcome.finish.working) => {
            format!("{} spends {} {}", short_name(&row.name), about_duration(min * 60.0), doing.words())
        }
        _ => "nobody waits for long".into(),
    };
    format!("Run {}: {loads}, {ends} {done}; {waiting}", outcome.run)
}

/// How long one of the crew waits in all, by what for, in the order it first comes to that \[min\].
fn waits(row: &Row) -> Vec<(Doing, f64)> {
    let mut waits: Vec<(Doing, f64)> = Vec::new();
    for block in row.blocks.iter().filter(|block| block.doing.is_waiting()) {
        let min = block.to - block.from;
        match waits.iter_mut().find(|(doing, _)| *doing == block.doing) {
            Some((_, total)) => *total += min,
            None => waits.push((block.doing, min)),
        }
    }
    waits
}

#[cfg(test)]
mod tests;
