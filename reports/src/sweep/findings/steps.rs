//! What a step from one point to another saves, and which way of a range is the better one.

use super::words::{Saying, bracketed, give_or_take, step_words};
use crate::findings::relief::worth_naming;
use crate::sweep::{Run, Sweep};
use scenarios::Knob;
use serde::Serialize;
use sim::{Mean, Paired};

/// What one point saves against another: mean of the paired differences, run by run on the same days and loads.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Saved {
    /// The point it is compared with, by its place in the list.
    pub against: usize,
    /// Minutes saved in words: `38 min`, `nothing`, `4 min lost`.
    pub words: String,
    /// The 95 % interval in words: `± 1 min`.
    pub known: String,
    /// Working time to the finish saved \[min\].
    pub min: f64,
    /// Lower end of its 95 % interval \[min\].
    pub min_low: Option<f64>,
    /// Upper end of its 95 % interval \[min\].
    pub min_high: Option<f64>,
    /// Cost saved, below 0 where it costs more \[money\]; `None` without prices.
    pub cost: Option<f64>,
    /// Lower end of its 95 % interval \[money\].
    pub cost_low: Option<f64>,
    /// Upper end of its 95 % interval \[money\].
    pub cost_high: Option<f64>,
}

/// What is certain of a difference: its interval leaves out 0, and it is worth naming.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sure {
    Saves,
    Loses,
    Neither,
}

/// Mean of what a point saves against another in one figure.
pub(in crate::sweep) fn paired(sweep: &Sweep, before: usize, after: usize, figure: fn(&Run) -> f64) -> Mean {
    let (before, after) = (&sweep.points[before].runs, &sweep.points[after].runs);
    Paired::of(before.iter().zip(after).map(|(b, a)| figure(b) - figure(a)).collect()).mean
}

/// Working time saved by going from one point to another \[s\].
pub(super) fn time_saved(sweep: &Sweep, before: usize, after: usize) -> Mean {
    paired(sweep, before, after, Run::working_s)
}

/// What is certain of it, for a job that takes about so long \[s\].
pub(super) fn sure(saved: Mean, job_s: f64) -> Sure {
    match saved {
        _ if !worth_naming(saved.value, job_s) => Sure::Neither,
        Mean { low, .. } if low > 0.0 => Sure::Saves,
        Mean { high, .. } if high < 0.0 => Sure::Loses,
        _ => Sure::Neither,
    }
}

/// About how long the job takes: the median of the quickest point \[s\].
pub(super) fn job_s(sweep: &Sweep) -> f64 {
    let medians = sweep.points.iter().map(|point| point.sorted(Run::working_s).percentile(0.5).value);
    medians.fold(f64::INFINITY, f64::min)
}

/// The point one place further along a thing, upwards or downwards.
pub(super) fn neighbour(sweep: &Sweep, point: usize, thing: usize, up: bool) -> Option<usize> {
    let place = *sweep.points[point].places.get(thing)?;
    let stride: usize = sweep.things[thing + 1..].iter().map(|vary| vary.values.len()).product();
    if up {
        (place + 1 < sweep.things[thing].values.len()).then(|| point + stride)
    } else {
        (place > 0).then(|| point - stride)
    }
}

/// Whether one goes upwards along a thing in the hope of saving time: people, machines, buckets and room are added, hauls
/// are shortened; of a key of the file the end that is quicker over all lines along it is the goal.
pub(super) fn more_is_better(sweep: &Sweep, thing: usize) -> bool {
    match sweep.things[thing].knob {
        Knob::Rakers | Knob::Loaders | Knob::Bucket | Knob::Room => return true,
        Knob::Haul => return false,
        Knob::Key(_) => {}
    }
    let last = sweep.things[thing].values.len() - 1;
    let firsts = (0..sweep.points.len()).filter(|point| sweep.points[*point].places[thing] == 0);
    let stride: usize = sweep.things[thing + 1..].iter().map(|vary| vary.values.len()).product();
    let saved: f64 = firsts.map(|first| time_saved(sweep, first, first + last * stride).value).sum();
    saved >= 0.0
}

/// What each point saves against the one before it along a thing.
pub(super) fn against_before(sweep: &Sweep, point: usize, thing: usize, priced: bool) -> Option<Saved> {
    let before = neighbour(sweep, point, thing, false)?;
    let time = time_saved(sweep, before, point);
    let cost = priced.then(|| paired(sweep, before, point, |run| run.cost));
    let bound = |value: f64| Some(value).filter(|v| v.is_finite());
    Some(Saved {
        against: before,
        words: crate::findings::relief::saved(time.value),
        known: give_or_take(time),
        min: time.value / 60.0,
        min_low: bound(time.low / 60.0),
        min_high: bound(time.high / 60.0),
        cost: cost.map(|c| c.value),
        cost_low: cost.and_then(|c| bound(c.low)),
        cost_high: cost.and_then(|c| bound(c.high)),
    })
}

/// Steps that surely make it later although on the whole they lead the better way; the greatest losses first.
pub(super) fn later(sweep: &Sweep) -> Vec<String> {
    // In a grid the same step comes back on many lines.
    let most = if sweep.things.len() > 1 { 1 } else { 3 };
    let job_s = job_s(sweep);
    let mut losses: Vec<(f64, String)> = Vec::new();
    for thing in 0..sweep.things.len() {
        let up = more_is_better(sweep, thing);
        for point in 0..sweep.points.len() {
            let Some(next) = neighbour(sweep, point, thing, up) else { continue };
            let saved = time_saved(sweep, point, next);
            if sure(saved, job_s) == Sure::Loses {
                losses.push((saved.value, loss_words(sweep, thing, point, next, saved)));
            }
        }
    }
    losses.sort_by(|a, b| a.0.total_cmp(&b.0));
    let more = losses.len().saturating_sub(most);
    let mut words: Vec<String> = losses.into_iter().take(most).map(|(_, words)| words).collect();
    if more > 0 {
        let steps =
            if more == 1 { "One more step makes".to_owned() } else { format!("{more} more steps make") };
        words.push(format!("{steps} it later too."));
    }
    words
}

fn loss_words(sweep: &Sweep, thing: usize, from: usize, to: usize, saved: Mean) -> String {
    let place = |point: usize| sweep.points[point].places[thing];
    let step = step_words(&sweep.things[thing], place(from), place(to), sweep.units, Saying::InFull);
    let with = if sweep.things.len() > 1 {
        let other = 1 - thing;
        let vary = &sweep.things[other];
        format!(
            ", with {}",
            super::words::value_words(vary, &vary.values[sweep.points[from].places[other]], sweep.units)
        )
    } else {
        String::new()
    };
    format!(
        "Not every step helps: {step} makes the job {} longer{}{with}.",
        scenarios::units::duration(-saved.value),
        bracketed(saved)
    )
}
