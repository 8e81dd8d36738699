//! What only the log of a watched run tells: how long each count of waiting heaps or loaders was held, and how often a
//! loader had to wait.

use super::theory::UNIT_S;
use sim::*;
use std::ops::Range;

/// Runs of a job with a fixed seed, each with its log, one at a time.
pub(crate) fn replays(job: &Job, runs: u32) -> impl Iterator<Item = Replay> + use<> {
    let plan = Plan::new(job).unwrap();
    (0..runs).map(move |run| Replay::new(&plan, 20_260_418, run).unwrap())
}

/// Units of time as the log counts them.
pub(crate) fn units(units: f64) -> Duration {
    Duration::from_micros((units * UNIT_S * 1e6) as i64)
}

/// Share of the time from `from` to `to` in which each count was held; `count` is told every event and gives the count
/// from then on.
pub(crate) fn shares_of_time(
    log: &[Entry],
    from: Duration,
    to: Duration,
    mut count: impl FnMut(&Event) -> usize,
) -> Vec<f64> {
    assert!(log.last().is_some_and(|entry| entry.at >= to), "the run ends too early");
    let (mut held, mut now, mut level): (Vec<Duration>, _, _) = (Vec::new(), from, 0);
    for entry in log {
        let at = entry.at.clamp(from, to);
        if at > now {
            held.resize(held.len().max(level + 1), Duration::ZERO);
            held[level] += at - now;
            now = at;
        }
        level = count(&entry.event);
    }
    held.iter().map(|time| *time / (to - from)).collect()
}

/// The mean count, from the share of time each was held.
pub(crate) fn mean_count(shares: &[f64]) -> f64 {
    shares.iter().enumerate().map(|(count, share)| count as f64 * share).sum()
}

/// Follows how many loaders load or wait to.
pub(crate) fn loaders_at_the_face(loaders: usize) -> impl FnMut(&Event) -> usize {
    loaders_that(loaders, |activity| {
        matches!(activity, LoaderActivity::WaitingForFace | LoaderActivity::Loading)
    })
}

/// Follows how many loaders wait to load.
pub(crate) fn loaders_that_wait_at_the_face(loaders: usize) -> impl FnMut(&Event) -> usize {
    loaders_that(loaders, |activity| activity == LoaderActivity::WaitingForFace)
}

fn loaders_that(loaders: usize, does: fn(LoaderActivity) -> bool) -> impl FnMut(&Event) -> usize {
    let mut doing = vec![false; loaders];
    move |event| {
        if let Event::Loader { loader, activity, .. } = event {
            doing[*loader] = does(*activity);
        }
        doing.iter().filter(|d| **d).count()
    }
}

/// Share of the loads of these numbers before which a loader had to wait at the face.
pub(crate) fn waited(log: &[Entry], loaders: usize, numbers: Range<u32>) -> f64 {
    let mut since: Vec<Option<Duration>> = vec![None; loaders];
    let (mut loads, mut delayed) = (0, 0);
    for entry in log {
        match entry.event {
            Event::Loader { loader, activity: LoaderActivity::WaitingForFace, .. } => {
                since[loader] = Some(entry.at);
            }
            Event::Loader { loader, activity: LoaderActivity::Loading, load: Some(load), .. } => {
                let waited = since[loader].take().is_some_and(|at| at < entry.at);
                if numbers.contains(&load) {
                    loads += 1;
                    delayed += u32::from(waited);
                }
            }
            _ => {}
        }
    }
    f64::from(delayed) / f64::from(loads)
}
