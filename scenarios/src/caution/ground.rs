//! Distances, speeds and loaders with nothing to do.

use super::entry::{Caution, named};
use crate::clearance::fits;
use crate::units::{System, speed};
use sim::Job;

/// Speed loaded above which a figure is doubtful near people \[m/s\], 15 km/h.
const FAST: f64 = 15.0 / 3.6;

pub(super) fn cautions(job: &Job, system: System) -> Vec<Caution> {
    let mut all = Vec::new();
    let near: Vec<&str> = job
        .zones
        .iter()
        .filter(|zone| zone.ways.iter().any(|way| way.distance_m == 0.0))
        .map(|zone| zone.name.as_str())
        .collect();
    if !near.is_empty() {
        let cause = format!(
            "The distance to {} is zero, so driving takes no more than starting and stopping.",
            named(&near)
        );
        all.push(Caution::warning(
            "distance-zero",
            cause,
            "Measure from the pile to the middle of the zone, as driven.",
        ));
    }
    let fast: Vec<&str> =
        job.loaders.iter().filter(|l| l.loaded_m_per_s > FAST).map(|l| l.name.as_str()).collect();
    if let Some(first) = job.loaders.iter().find(|loader| loader.loaded_m_per_s > FAST) {
        let cause = format!("{} is to drive {} loaded.", named(&fast), speed(first.loaded_m_per_s, system));
        let remedy = "Time a few trips: over short ways and near people a walking pace is usual.";
        all.push(Caution::warning("speed-high", cause, remedy));
    }
    let idle: Vec<&str> =
        job.loaders.iter().filter(|l| !has_work(job, l.width_m)).map(|l| l.name.as_str()).collect();
    if !idle.is_empty() {
        let cause = format!("{} can get to no pile and zone where there is work.", named(&idle));
        let remedy = "Leave it out, or give it a way from a pile that has material.";
        all.push(Caution::warning("loader-without-work", cause, remedy));
    }
    all
}

fn has_work(job: &Job, width: f64) -> bool {
    let stocked = |pile: usize| {
        job.stockpiles.get(pile).is_some_and(|pile| pile.on_hand_m3 > 0.0 || !pile.deliveries.is_empty())
    };
    let needed = job.zones.iter().any(|zone| zone.need_m3 > 0.0);
    job.zones.iter().filter(|zone| !needed || zone.need_m3 > 0.0).flat_map(|zone| &zone.ways).any(|way| {
        stocked(way.stockpile) && way.passes.iter().all(|entry| fits(width, job.passes[entry.pass].width_m))
    })
}
