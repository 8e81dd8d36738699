//! What is left to gain from a point of a sweep, and where that becomes little. The rule and its limits are our own.
//!
//! From a point to another something is *gained* where the time saved is surely above nothing (the 95 % interval of the
//! paired differences leaves out 0), worth naming, and, where there are prices, does not cost more for each hour saved than an
//! hour of the whole crew. What is *left* at a point is the most that is gained by going to any other. The knee is the
//! first point, counted in steps from the slow end (of two things: from the slow corner), at which little is left.

use super::steps::{Sure, job_s, more_is_better, paired, sure, time_saved};
use crate::findings::is_priced;
use crate::sweep::{Point, Run, Sweep};
use sim::Mean;

/// Little is left where it is at most this share of what the whole range saves ...
pub(super) const OF_WHOLE: f64 = 0.1;
/// ... and at most this share of the time that the job takes there.
pub(super) const OF_JOB: f64 = 0.03;
/// A range that saves less than this share of the job has no knee.
const LEAST_WHOLE: f64 = 0.01;

/// What going from one point to another brings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gain {
    /// The other point.
    pub(super) to: usize,
    /// Working time saved \[s\].
    pub(super) saved: Mean,
    /// What it costs more \[money\].
    pub(super) more: f64,
}

/// Where the knee is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Found {
    /// The point.
    pub(super) at: usize,
    /// What is still gained from there.
    pub(super) left: Option<Gain>,
    /// The quickest point that would save more than that, but costs too much for the time it saves.
    pub(super) dear: Option<Gain>,
    /// Whether runs are too few to leave out that more than a little is left.
    pub(super) doubtful: bool,
}

/// A sweep and the means of its points.
pub(super) struct Field<'a> {
    sweep: &'a Sweep,
    job_s: f64,
    times: Vec<f64>,
    costs: Vec<f64>,
    /// What an hour of the whole crew costs at each point.
    rates: Vec<f64>,
    priced: bool,
}

impl<'a> Field<'a> {
    pub(super) fn new(sweep: &'a Sweep) -> Self {
        let mean = |figure: fn(&Run) -> f64| -> Vec<f64> {
            let of =
                |point: &Point| point.runs.iter().map(figure).sum::<f64>() / point.runs.len().max(1) as f64;
            sweep.points.iter().map(of).collect()
        };
        let rate = |point: &Point| {
            let job = &point.scenario.job;
            let loaders = job.loaders.iter().map(|l| l.machine_cost_per_h + l.operator_cost_per_h);
            loaders.chain(job.rakers.iter().map(|r| r.cost_per_h)).sum()
        };
        Self {
            sweep,
            job_s: job_s(sweep),
            times: mean(Run::working_s),
            costs: mean(|run| run.cost),
            rates: sweep.points.iter().map(rate).collect(),
            priced: sweep.points.iter().any(|point| is_priced(&point.scenario.job)),
        }
    }

    /// All points by their steps from the slow end, those with as many by their time.
    pub(super) fn order(&self) -> Vec<usize> {
        let things = 0..self.sweep.things.len();
        let up: Vec<bool> = things.map(|thing| more_is_better(self.sweep, thing)).collect();
        let steps = |point: usize| -> usize {
            let places = self.sweep.points[point].places.iter().enumerate();
            places
                .map(
                    |(thing, place)| {
                        if up[thing] { *place } else { self.sweep.things[thing].values.len() - 1 - place }
                    },
                )
                .sum()
        };
        let mut order: Vec<usize> = (0..self.sweep.points.len()).collect();
        order.sort_by(|a, b| steps(*a).cmp(&steps(*b)).then(self.times[*a].total_cmp(&self.times[*b])));
        order
    }

    /// The most that is gained from a point, if it is more than so many seconds, and the quickest of those too dear for it.
    fn most(&self, from: usize, over_s: f64) -> (Option<Gain>, Option<Gain>) {
        let mut others: Vec<usize> =
            (0..self.times.len()).filter(|to| self.times[from] - self.times[*to] > over_s).collect();
        others.sort_by(|a, b| self.times[*a].total_cmp(&self.times[*b]));
        let mut dear = None;
        for to in others {
            let saved = time_saved(self.sweep, from, to);
            if sure(saved, self.job_s) != Sure::Saves {
                continue;
            }
            let gain = Gain { to, saved, more: self.costs[to] - self.costs[from] };
            if !self.priced || gain.more <= self.rates[from] * saved.value / 3_600.0 {
                return (Some(gain), dear);
            }
            dear = dear.or(Some(gain));
        }
        (None, dear)
    }

    /// The knee, the slow end where nothing is gained; what the whole range saves.
    pub(super) fn knee(&self) -> (Found, Option<Gain>) {
        let order = self.order();
        let slow = order.first().copied().unwrap_or_default();
        let (whole, dear) = self.most(slow, 0.0);
        let whole = whole.filter(|gain| gain.saved.value >= LEAST_WHOLE * self.times[slow]);
        let Some(all) = whole else {
            return (Found { at: slow, left: None, dear, doubtful: false }, None);
        };
        let little = |point: usize| (OF_WHOLE * all.saved.value).min(OF_JOB * self.times[point]);
        let at = order.iter().copied().find(|point| self.most(*point, little(*point)).0.is_none());
        let at = at.unwrap_or(all.to);
        let (left, _) = self.most(at, 0.0);
        let (_, dear) = self.most(at, little(at));
        (Found { at, left, dear, doubtful: self.doubtful(at, little(at)) }, whole)
    }

    /// Whether another point may save more than a little although it is not sure.
    fn doubtful(&self, at: usize, little_s: f64) -> bool {
        let quickest = (0..self.times.len()).min_by(|a, b| self.times[*a].total_cmp(&self.times[*b]));
        quickest.filter(|to| *to != at).is_some_and(|to| {
            let saved = paired(self.sweep, at, to, Run::working_s);
            saved.high > little_s && sure(saved, self.job_s) != Sure::Saves
        })
    }
}
