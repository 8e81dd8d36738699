//! What is known at every point.

use super::by::{self, Keeps};
use super::steps::{Saved, against_before};
use super::words::point_words;
use crate::findings::{Calendar, about_duration, about_money};
use crate::findings::{Estimate, PLAN_SHARE, hours_and_minutes, percent, who_waits_by};
use crate::sweep::{Point, Run, Sweep};
use serde::Serialize;
use sim::Sorted;

/// Percentiles told of every point.
pub const SHARES: [f64; 4] = [0.1, 0.5, PLAN_SHARE, 0.9];

/// A figure at a point: P10, P50, P80 and P90 with their intervals.
pub type Range = [Estimate; 4];

/// What is known at a point.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PointFindings {
    /// `2 rakers and a bucket of 14 ft3`.
    pub words: String,
    /// The value of each thing.
    pub values: Vec<ValueFindings>,
    /// Whether this is the job before anything is varied.
    pub as_it_stands: bool,
    /// Working time to the finish \[s\].
    pub finish_working_s: Range,
    /// Time of the finish \[s after midnight of the first day\].
    pub finish_clock_s: Range,
    /// Working time of the four percentiles in words.
    pub takes: [String; 4],
    /// Clock times of the four percentiles in words.
    pub done_by: [String; 4],
    /// From P10 to P90, in hours and minutes: `3:56 to 5:41`; in words where minutes are too coarse.
    pub range: String,
    /// How closely the P80 of the working time is known: `± 1 min`.
    pub known: String,
    /// Chance of being done in time \[0 to 1\], where a time was asked for.
    pub chance: Option<Estimate>,
    /// The same in words.
    pub chance_words: Option<String>,
    /// Whether it is done in time as often as wanted.
    pub keeps: Option<Keeps>,
    /// Loads.
    pub loads: Range,
    /// Labour \[h\].
    pub labour_h: Range,
    /// Cost \[money\]; `None` without prices.
    pub cost: Option<Range>,
    /// The same in words.
    pub cost_words: Option<[String; 4]>,
    /// Who waits, in a few words.
    pub who_waits: String,
    /// The same in a sentence.
    pub who_waits_in_full: String,
    /// What it saves against the point before it along each thing; none at its first value.
    pub saved: Vec<Option<Saved>>,
}

/// A value of a thing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ValueFindings {
    /// As it would be typed.
    pub typed: String,
    /// With its unit, in the system shown.
    pub label: String,
    /// As a number, in the system shown.
    pub number: f64,
    /// Its unit, in the system shown; empty for a count.
    pub unit: String,
}

/// What is known at every point, in the order of the points.
pub(super) fn points(sweep: &Sweep, priced: bool) -> Vec<PointFindings> {
    (0..sweep.points.len()).map(|point| findings(sweep, point, priced)).collect()
}

fn findings(sweep: &Sweep, at: usize, priced: bool) -> PointFindings {
    let (point, units) = (&sweep.points[at], sweep.units);
    let start_s = point.start_s();
    let range = |sample: &Sorted| SHARES.map(|share| Estimate::from(sample.percentile(share)));
    let finish_working_s = range(&point.sorted(Run::working_s));
    let finish_clock_s = range(&point.sorted(|run| start_s + run.clock_s()));
    let cost = priced.then(|| range(&point.sorted(|run| run.cost)));
    let chance = sweep.deadline.map(|deadline| (by::chance(point, deadline), deadline.chance));
    let waits = who_waits_by(&point.scenario.job, &point.accounts, point.runs.len() as u32);
    let calendar = Calendar::of(&point.scenario, units);
    let done = |i: usize| calendar.done(finish_working_s[i].value, finish_clock_s[i].value);
    PointFindings {
        words: point_words(&sweep.things, &point.places, units),
        values: values(sweep, point),
        as_it_stands: point.scenario.job == sweep.base.job,
        takes: [0, 1, 2, 3].map(|i| done(i).duration),
        range: range_words(&finish_working_s),
        done_by: [0, 1, 2, 3].map(|i| done(i).clock),
        known: finish_working_s[2].known(),
        finish_working_s,
        finish_clock_s,
        chance_words: chance.map(|(share, _)| percent(share.value)),
        keeps: chance.map(|(share, wanted)| by::keeps(share, wanted)),
        chance: chance.map(|(share, _)| share.into()),
        loads: range(&point.sorted(|run| f64::from(run.loads))),
        labour_h: range(&point.sorted(|run| run.labour_h)),
        cost_words: cost.map(|cost| cost.map(|sum| about_money(sum.value, &sweep.base.currency))),
        cost,
        who_waits: waits.short,
        who_waits_in_full: waits.title,
        saved: (0..sweep.things.len()).map(|thing| against_before(sweep, at, thing, priced)).collect(),
    }
}

fn range_words(time: &Range) -> String {
    const SHORT_S: f64 = 900.0;
    let short = time[3].value < SHORT_S;
    // Later, never earlier, as the clock times beside it are.
    let said = |i: usize| {
        let takes_s = crate::findings::done_s(time[i].value, time[i].value).0;
        if short { about_duration(takes_s) } else { hours_and_minutes(takes_s) }
    };
    if said(0) == said(3) { said(1) } else { format!("{} to {}", said(0), said(3)) }
}

fn values(sweep: &Sweep, point: &Point) -> Vec<ValueFindings> {
    let each = sweep.things.iter().zip(&point.places).map(|(vary, place)| {
        let value = &vary.values[*place];
        let (number, unit) = value.number(sweep.units);
        ValueFindings { typed: value.to_string(), label: value.label(sweep.units), number, unit }
    });
    each.collect()
}
