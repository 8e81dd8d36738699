//! What a person should know before the work begins: doubtful numbers and the usual cautions.

mod bucket;
mod gates;
mod ground;
mod hours;
mod room;
mod supply;
mod usual;

use crate::scenario::Stated;
use crate::units::System;
use sim::Job;

/// How much a caution weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A number that is doubtful or will hold the job up.
    Warning,
    /// A standing caution that belongs to every such job.
    Usual,
}

/// Something to heed, with its cause and remedy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// How much it weighs.
    pub weight: Weight,
    /// A stable name for programs, such as `bucket-over-lift`.
    pub kind: &'static str,
    /// What is the matter, with figures.
    pub cause: String,
    /// What to do about it.
    pub remedy: String,
}

impl Caution {
    fn warning(kind: &'static str, cause: impl Into<String>, remedy: impl Into<String>) -> Self {
        Self { weight: Weight::Warning, kind, cause: cause.into(), remedy: remedy.into() }
    }
}

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

/// A name in quotes; copies of one thing share a caution.
pub(crate) fn named(names: &[&str]) -> String {
    let quoted: Vec<String> = names.iter().take(6).map(|name| format!("\"{name}\"")).collect();
    let more = names.len().saturating_sub(quoted.len());
    match (quoted.split_last(), more) {
        (Some((last, [])), 0) => last.clone(),
        (Some((last, first)), 0) => format!("{} and {last}", first.join(", ")),
        _ => format!("{} and {more} more", quoted.join(", ")),
    }
}

#[cfg(test)]
mod tests;
