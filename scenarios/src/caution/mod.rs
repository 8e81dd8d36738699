//! What a person should know before the work begins: doubtful numbers and the usual cautions.

mod bucket;
pub(crate) mod entry;
mod gates;
mod ground;
mod hours;
mod room;
mod supply;
mod usual;

use crate::scenario::Stated;
use crate::units::System;
use entry::Caution;
use sim::Job;

/// All cautions of a job: warnings first, then the usual ones.
pub(crate) fn all(job: &Job, stated: &Stated, ordered_m3: f64, system: System) -> Vec<Caution> {
    let mut all = bucket::cautions(job, &stated.loaders, system);
    all.extend(gates::cautions(job, system));
    all.extend(room::cautions(job));
    all.extend(supply::cautions(job, ordered_m3, stated.truckload_m3, system));
    all.extend(hours::cautions(job, system));
    all.extend(ground::cautions(job, system));
    all.extend(usual::cautions());
    all
}

#[cfg(test)]
mod tests;
