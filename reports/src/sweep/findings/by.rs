//! The cheapest point that is done by a time of the clock as often as wanted.

use super::steps::more_is_better;
use super::words::{and_list, point_words};
use crate::findings::about_money;
use crate::findings::{Calendar, about_duration, capital, days_in, percent};
use crate::sweep::{Deadline, Point, Run, Sweep};
use serde::Serialize;
use sim::Share;

/// How sure it is that a point keeps the time of the clock as often as wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Keeps {
    /// The whole interval of its chance lies at or above what is wanted.
    Surely,
    /// What is wanted lies within the interval: more runs would tell.
    Perhaps,
    /// The whole interval lies below.
    Not,
}

/// The cheapest point that is done in time.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoneInTime {
    /// The time, in words.
    pub clock: String,
    /// The time \[s after midnight of the first day\].
    pub clock_s: f64,
    /// How often it is to be kept \[0 to 1\].
    pub wanted: f64,
    /// The cheapest point that surely keeps it; else the cheapest that perhaps does; else none. By its place in the list.
    pub at: Option<usize>,
    /// Whether that one does.
    pub keeps: Keeps,
    /// Cheaper points that perhaps keep it.
    pub perhaps: Vec<usize>,
    /// The point that comes nearest where none keeps it.
    pub nearest: Option<usize>,
    /// The answer in a sentence or two.
    pub sentence: String,
}

/// The chance of a point to be done in time.
pub(super) fn chance(point: &Point, deadline: Deadline) -> Share {
    point.share_done_by(deadline.by_s)
}

pub(super) fn keeps(chance: Share, wanted: f64) -> Keeps {
    match chance {
        Share { low, .. } if low >= wanted => Keeps::Surely,
        Share { high, .. } if high >= wanted => Keeps::Perhaps,
        _ => Keeps::Not,
    }
}

/// Points from the cheapest to the dearest: by median cost, or without prices by the number of people, then by steps from
/// the slow end.
fn order(sweep: &Sweep, priced: bool) -> Vec<usize> {
    let up: Vec<bool> = (0..sweep.things.len()).map(|thing| more_is_better(sweep, thing)).collect();
    let steps = |point: &Point| -> usize {
        let each = point.places.iter().enumerate().map(|(thing, place)| {
            if up[thing] { *place } else { sweep.things[thing].values.len() - 1 - place }
        });
        each.sum()
    };
    let people = |point: &Point| point.scenario.job.loaders.len() + point.scenario.job.rakers.len();
    let cost = |point: &Point| if priced { point.sorted(|run| run.cost).percentile(0.5).value } else { 0.0 };
    let mut order: Vec<(f64, usize, usize, usize)> =
        sweep.points.iter().enumerate().map(|(i, p)| (cost(p), people(p), steps(p), i)).collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0).then((a.1, a.2, a.3).cmp(&(b.1, b.2, b.3))));
    order.into_iter().map(|(_, _, _, point)| point).collect()
}

/// The cheapest point that is done in time.
pub(super) fn done_in_time(sweep: &Sweep, deadline: Deadline, priced: bool) -> DoneInTime {
    let order = order(sweep, priced);
    let chances: Vec<Share> = sweep.points.iter().map(|point| chance(point, deadline)).collect();
    let verdict = |point: usize| keeps(chances[point], deadline.chance);
    let surely = order.iter().position(|point| verdict(*point) == Keeps::Surely);
    let before = &order[..surely.unwrap_or(order.len())];
    let perhaps: Vec<usize> =
        before.iter().copied().filter(|point| verdict(*point) == Keeps::Perhaps).collect();
    let at = surely.map(|place| order[place]).or_else(|| perhaps.first().copied());
    let nearest = nearest(sweep, &order, &chances, deadline);
    let context = Context { sweep, deadline, chances: &chances, priced };
    let (keeps, sentence) = match (surely, at) {
        (Some(_), Some(at)) => (Keeps::Surely, context.surely(at, &perhaps)),
        (None, Some(at)) => (Keeps::Perhaps, context.perhaps(at)),
        _ => (Keeps::Not, nearest.map_or_else(String::new, |nearest| context.none(nearest))),
    };
    DoneInTime {
        clock: Calendar::of(&sweep.base, sweep.units).clock(deadline.by_s),
        clock_s: deadline.by_s,
        wanted: deadline.chance,
        at,
        keeps,
        perhaps: perhaps.into_iter().filter(|point| Some(*point) != at).collect(),
        nearest: nearest.filter(|_| at.is_none()),
        sentence,
    }
}

/// The cheapest of those that come nearest: whose chance cannot be told from the best one, or who are the least late where
/// no run of any is in time.
fn nearest(sweep: &Sweep, order: &[usize], chances: &[Share], deadline: Deadline) -> Option<usize> {
    let best = chances.iter().map(|chance| chance.value).fold(0.0, f64::max);
    if best > 0.0 {
        return order.iter().copied().find(|point| chances[*point].high >= best);
    }
    let late = |point: &usize| sweep.points[*point].sorted(Run::clock_s).percentile(deadline.chance).value;
    order.iter().copied().min_by(|a, b| late(a).total_cmp(&late(b)))
}

/// What is needed to say it.
struct Context<'a> {
    sweep: &'a Sweep,
    deadline: Deadline,
    chances: &'a [Share],
    priced: bool,
}

impl Context<'_> {
    fn words(&self, point: usize) -> String {
        point_words(&self.sweep.things, &self.sweep.points[point].places, self.sweep.units)
    }

    /// `done by 1:00 pm 8 days in 10`.
    fn wanted(&self) -> String {
        let clock = Calendar::of(&self.sweep.base, self.sweep.units).clock(self.deadline.by_s);
        format!("done by {clock} {}", days_in(self.deadline.chance))
    }

    fn superlative(&self) -> &'static str {
        if self.priced { "cheapest" } else { "least" }
    }

    /// `93 %, interval 92 % to 94 %`.
    fn chance(&self, point: usize) -> String {
        let Share { value, low, high } = self.chances[point];
        format!("{} ({} to {})", percent(value), percent(low), percent(high))
    }

    fn cost(&self, point: usize) -> String {
        if !self.priced {
            return String::new();
        }
        let median = self.sweep.points[point].sorted(|run| run.cost).percentile(0.5).value;
        format!(", for {} in the middle", about_money(median, &self.sweep.base.currency))
    }

    fn surely(&self, at: usize, perhaps: &[usize]) -> String {
        let mut sentence = format!(
            "{}, surely: the {} that is {}; its chance is {}{}.",
            capital(&self.words(at)),
            self.superlative(),
            self.wanted(),
            self.chance(at),
            self.cost(at)
        );
        let cheaper: Vec<String> = perhaps
            .iter()
            .take(2)
            .map(|point| format!("{}, {}", self.words(*point), self.chance(*point)))
            .collect();
        if !cheaper.is_empty() {
            let less = if self.priced { "cheaper" } else { "less" };
            sentence += &format!(" Perhaps enough and {less}: {}; more runs would tell.", and_list(&cheaper));
        }
        sentence
    }

    fn perhaps(&self, at: usize) -> String {
        format!(
            "Perhaps {}: the {} that may be {}; its chance is {}{}. More runs would tell; nothing here does it surely.",
            self.words(at),
            self.superlative(),
            self.wanted(),
            self.chance(at),
            self.cost(at)
        )
    }

    fn none(&self, nearest: usize) -> String {
        let point = &self.sweep.points[nearest];
        let done_s = point.start_s() + point.sorted(Run::clock_s).percentile(self.deadline.chance).value;
        let calendar = Calendar::of(&point.scenario, self.sweep.units);
        if done_s <= self.deadline.by_s {
            return format!(
                "Nothing here is {}: too many runs end short of material. Nearest is {}: its chance is {}.",
                self.wanted(),
                self.words(nearest),
                self.chance(nearest)
            );
        }
        format!(
            "Nothing here is {}. Nearest is {}: its chance is {}, and {} it is done by {}, {} too late.",
            self.wanted(),
            self.words(nearest),
            self.chance(nearest),
            days_in(self.deadline.chance),
            calendar.done(done_s - point.start_s(), done_s).clock,
            about_duration(done_s - self.deadline.by_s)
        )
    }
}
