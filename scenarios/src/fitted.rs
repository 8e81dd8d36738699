//! A bucket on a loader: what it may lift, where it gets through, and the job with it.

mod gates;
mod lift;

pub use gates::{GateAnswer, PassAnswer, Through};
pub use lift::{Lift, LiftAnswer};

use crate::assumption::Assumption;
use crate::buckets::Bucket;
use crate::caution;
use crate::caution::entry::Caution;
use crate::clearance::micrometres;
use crate::scenario::Scenario;
use sim::Job;

/// A bucket on a loader.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// The job with this bucket; `None` if it cannot be done with it, which `lift` or `gates` then say.
    pub job: Option<Job>,
    /// All cautions of that job, warnings first; empty if there is none.
    pub cautions: Vec<Caution>,
    /// What is assumed of the bucket.
    pub assumptions: Vec<Assumption>,
    /// Whether a full bucket may be lifted.
    pub lift: LiftAnswer,
    /// Whether it gets through the passes.
    pub gates: GateAnswer,
}

/// Puts a bucket on one of the job's loaders (index in `scenario.job.loaders`; beyond them nothing is changed).
///
/// Heaped and struck capacity become the bucket's. The width is the greater of machine and bucket. What the loader may lift
/// is for the material and for what the bucket weighs more than today's: the row `today` of the
/// list, or what the file gives as `bucket_mass`. A lighter bucket is no credit, and where a mass is unknown none is
/// calculated with. Loading and dumping times stay.
///
/// ```
/// use scenarios::{Selection, Texts, Through, buckets_text, read_text, shipped, with_bucket};
/// let (name, text) = shipped().iter().find(|(name, _)| *name == "riding-arena").unwrap();
/// let arena = read_text(text, name, Texts::default(), &Selection::default()).unwrap();
/// let list = buckets_text("name,heaped,width\nseven feet,30 ft3,7 ft\n", "list.csv").unwrap();
/// let fitted = with_bucket(&arena, 0, &list.buckets[0], None);
/// assert!(fitted.job.is_none());
/// assert_eq!(fitted.gates.through, Through::Refused);
/// assert_eq!(fitted.gates.words, "It does not pass \"arena gate\": 72 in clear, bucket 84 in.");
/// ```
pub fn with_bucket(scenario: &Scenario, loader: usize, bucket: &Bucket, today: Option<&Bucket>) -> Fitted {
    let mut job = scenario.job.clone();
    let stated = scenario.stated.loaders.get(loader).and_then(|stated| stated.bucket_mass_kg);
    let today_kg = today.and_then(|today| today.mass_kg).or(stated);
    let lift = lift::answer(scenario, loader, bucket, today_kg);
    let gates = gates::answer(scenario, loader, bucket);
    if let Some(machine) = job.loaders.get_mut(loader) {
        machine.heaped_m3 = bucket.heaped_m3;
        machine.struck_m3 = bucket.struck_m3;
        machine.width_m = gates::width(machine.width_m, bucket);
        // What the bucket weighs more comes off what is left for the material.
        machine.lift_kg = lift.may_kg.filter(|may| *may > 0.0).or(machine.lift_kg);
    }
    let possible = gates.through != Through::Refused && lift.lift != Lift::Nothing;
    let job = Some(job).filter(|job| possible && sim::Plan::check(job).is_ok());
    let cautions = job.as_ref().map_or_else(Vec::new, |job| {
        caution::all(job, &scenario.stated, scenario.ordered_m3, scenario.units)
    });
    let assumptions = assumed(scenario, loader, bucket, today_kg);
    Fitted { job, cautions, assumptions, lift, gates }
}

const STAYS: &str = "nothing is known of it before the bucket is tried";

fn assumed(scenario: &Scenario, loader: usize, bucket: &Bucket, today_kg: Option<f64>) -> Vec<Assumption> {
    let Some(machine) = scenario.job.loaders.get(loader) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    let mut assume = |column: &str, words: String, from: &str| {
        let key = format!("bucket.{}.{column}", bucket.name);
        all.push(Assumption { key, words, from: from.into() });
    };
    let name = &bucket.name;
    assume("times", format!("{name}: loading and dumping it takes as long as today's bucket"), STAYS);
    match (bucket.mass_kg, today_kg) {
        (Some(_), Some(_)) => {}
        (mass, today) => {
            let unknown = match (mass, today) {
                (None, None) => "neither its weight nor that of today's bucket is known",
                (None, _) => "its weight is not known",
                _ => "what today's bucket weighs is not known",
            };
            let words = format!("{name}: {unknown}, so it is taken to weigh as much as today's");
            assume(
                "mass",
                words,
                "give the column mass, and bucket_mass of the loader or the row that is today's bucket",
            );
        }
    }
    if bucket.width_m.is_none() && micrometres(machine.width_m) > 0.0 {
        assume("width", format!("{name}: no wider than the machine"), crate::defaults::NOTHING_SAID);
    }
    all
}

#[cfg(test)]
mod tests;
