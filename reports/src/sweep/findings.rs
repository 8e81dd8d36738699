//! What a sweep says: every point, where going on stops to pay in time, where money turns, and the cheapest point that is
//! done in time.

mod by;
mod knee;
mod left;
mod money;
mod points;
mod steps;
mod words;

#[cfg(test)]
pub(crate) mod tests;

pub use by::{DoneInTime, Keeps};
pub use knee::Knee;
pub use money::Money;
pub use points::{PointFindings, Range, SHARES, ValueFindings};
pub use steps::Saved;
pub(super) use steps::paired;

use crate::findings::{NO_PRICES, OrderFindings, is_priced, order_of};
use crate::sweep::{Point, Sweep};
use scenarios::units::figure;
use serde::Serialize;

/// Everything a sweep says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SweepFindings {
    /// The answer in a sentence or two.
    pub verdict: String,
    /// At how many points material is missing and what to order: said before anything is promised.
    pub short: Option<String>,
    /// What was varied and how many runs were made, in a sentence.
    pub how: String,
    /// What is varied.
    pub things: Vec<Thing>,
    /// Where going on stops to pay.
    pub knee: Knee,
    /// Steps that surely make it later, a sentence each.
    pub later: Vec<String>,
    /// Where money turns; `None` without prices.
    pub money: Option<Money>,
    /// What is missing to know the cost, where it is unknown.
    pub unpriced: Option<&'static str>,
    /// The cheapest point that is done in time, where a time was asked for.
    pub by: Option<DoneInTime>,
    /// Every point; values of the last thing change fastest.
    pub points: Vec<PointFindings>,
}

/// One thing varied.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Thing {
    /// As typed: `rakers`, or a key of the file.
    pub key: String,
    /// What stands at an axis: `mean haul`.
    pub words: String,
    /// Unit of its values in the system shown; empty for a count.
    pub unit: String,
    /// Its values with their units.
    pub labels: Vec<String>,
}

impl Thing {
    /// Above a column or at the beginning of a sentence: with a capital, unless it is a key of the file.
    pub fn heading(&self) -> String {
        if self.words.contains('.') { self.words.clone() } else { crate::findings::capital(&self.words) }
    }

    /// With its unit, as it stands at an axis: `mean haul, yd`.
    pub fn axis(&self) -> String {
        if self.unit.is_empty() { self.words.clone() } else { format!("{}, {}", self.words, self.unit) }
    }
}

/// A letter that marks points in tables and charts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// `K`: the knee.
    Knee,
    /// `C`: the cheapest.
    Cheapest,
    /// `T`: the cheapest that is done in time.
    InTime,
    /// `A`: the job as it stands.
    AsItStands,
}

impl Mark {
    /// All of them, in the order they are listed.
    pub const ALL: [Self; 4] = [Self::Knee, Self::Cheapest, Self::InTime, Self::AsItStands];

    /// The letter.
    pub fn letter(self) -> char {
        match self {
            Self::Knee => 'K',
            Self::Cheapest => 'C',
            Self::InTime => 'T',
            Self::AsItStands => 'A',
        }
    }
}

impl SweepFindings {
    /// The marks of a point.
    pub fn marks(&self, point: usize) -> Vec<Mark> {
        let is = |mark: &Mark| match mark {
            Mark::Knee => self.knee.at == Some(point) && !self.knee.open,
            Mark::Cheapest => self.money.as_ref().is_some_and(|money| money.at == point),
            Mark::InTime => self.by.as_ref().is_some_and(|by| by.at == Some(point)),
            Mark::AsItStands => self.points.get(point).is_some_and(|findings| findings.as_it_stands),
        };
        Mark::ALL.into_iter().filter(is).collect()
    }

    /// The letters of a point's marks.
    pub fn letters(&self, point: usize) -> String {
        self.marks(point).into_iter().map(Mark::letter).collect()
    }

    /// What a mark means here, if any point bears it.
    pub fn meaning(&self, mark: Mark) -> Option<String> {
        let used = (0..self.points.len()).any(|point| self.marks(point).contains(&mark));
        used.then(|| match mark {
            Mark::Knee => "knee: beyond it hardly worth the trouble".into(),
            Mark::Cheapest => "cheapest".into(),
            Mark::AsItStands => "as it stands".into(),
            Mark::InTime => self.in_time(),
        })
    }

    fn in_time(&self) -> String {
        let Some(by) = &self.by else { return String::new() };
        let least = if self.money.is_some() { "cheapest" } else { "least" };
        let perhaps = if by.keeps == Keeps::Perhaps { "perhaps " } else { "" };
        format!("{least} that is {perhaps}done by {}", by.clock)
    }
}

/// Everything a sweep says.
pub fn sweep(sweep: &Sweep) -> SweepFindings {
    let priced = sweep.points.iter().any(|point| is_priced(&point.scenario.job));
    let knee = knee::knee(sweep);
    let by = sweep.deadline.map(|deadline| by::done_in_time(sweep, deadline, priced));
    let short = short(sweep);
    let answer = by.as_ref().map_or_else(
        || format!("{} {}", knee.steps, knee.sentence).trim().to_owned(),
        |by| by.sentence.clone(),
    );
    SweepFindings {
        verdict: short.iter().cloned().chain([answer]).collect::<Vec<_>>().join(" "),
        short,
        how: how(sweep),
        things: things(sweep),
        knee,
        later: steps::later(sweep),
        money: if priced { money::cheapest(sweep) } else { None },
        unpriced: (!priced).then_some(NO_PRICES),
        by,
        points: points::points(sweep, priced),
    }
}

/// Where material runs out at some of the points: how many of them, and what the worst of them needs.
fn short(sweep: &Sweep) -> Option<String> {
    let order =
        |point: &Point| order_of(point.runs.iter().map(|run| run.missing_m3), &point.scenario, sweep.units);
    let short: Vec<OrderFindings> = sweep.points.iter().map(order).filter(|order| !order.enough).collect();
    let worst = short.iter().max_by(|a, b| a.missing_m3.total_cmp(&b.missing_m3))?;
    Some(match short.len() {
        all if all == sweep.points.len() => worst.sentence.clone(),
        1 => format!("At one of the points material runs out. {}", worst.sentence),
        n => format!("At {n} of the points material runs out. {}", worst.sentence),
    })
}

fn how(sweep: &Sweep) -> String {
    let count = |n: u64, what: &str| format!("{} {what}{}", figure(n as f64), if n == 1 { "" } else { "s" });
    let runs = sweep.points.first().map_or(0, |point| point.runs.len() as u64);
    if sweep.points.len() == 1 {
        return format!("One point of {}.", count(runs, "run"));
    }
    let values: Vec<String> = sweep
        .things
        .iter()
        .map(|vary| format!("{} values of {}", vary.values.len(), vary.knob.words()))
        .collect();
    let grid = if values.len() > 1 { format!("{}: ", values.join(" with ")) } else { String::new() };
    let done = if sweep.deadline.is_some() { " Done means after clean-up." } else { "" };
    format!(
        "{grid}{} of {}, {} in all; the same days and loads at every point.{done}",
        count(sweep.points.len() as u64, "point"),
        count(runs, "run"),
        count(sweep.runs_in_all(), "run")
    )
}

fn things(sweep: &Sweep) -> Vec<Thing> {
    let thing = |vary: &scenarios::Vary| Thing {
        key: vary.knob.to_string(),
        words: vary.knob.words().to_owned(),
        unit: vary.values.first().map_or_else(String::new, |value| value.number(sweep.units).1),
        labels: vary.values.iter().map(|value| value.label(sweep.units)).collect(),
    };
    sweep.things.iter().map(thing).collect()
}
