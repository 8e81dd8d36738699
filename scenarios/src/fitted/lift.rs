//! Whether a loader may lift a bucket full of the job's material.

use crate::buckets::Bucket;
use crate::scenario::Scenario;
use crate::units::{bucket as in_bucket, figure, mass};

/// Whether a full bucket may be lifted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lift {
    /// Within what the loader may lift.
    Within,
    /// Beyond it: loads are cut.
    Cut,
    /// The bucket alone weighs so much more than today's that nothing is left for material.
    Nothing,
    /// What may be lifted is not given.
    Unknown,
}

/// What a loader may lift against what a full bucket weighs. It calculates with the figures given and settles nothing: the
/// machine's manual does.
#[derive(Clone, Debug, PartialEq)]
pub struct LiftAnswer {
    /// The answer.
    pub lift: Lift,
    /// Weight of a heaped bucket of this material at its mean fill \[kg\].
    pub load_kg: f64,
    /// What may be lifted of material, less what the bucket weighs more than today's \[kg\], 0 or more; `None` if it is not
    /// given.
    pub may_kg: Option<f64>,
    /// `load_kg` over `may_kg`; `None` if it is not given or nothing may be lifted.
    pub share: Option<f64>,
    /// What the bucket weighs more than today's \[kg\], below 0 if less; `None` if one of the two is unknown.
    pub extra_kg: Option<f64>,
    /// The load that may be lifted, if it is less than a full bucket \[m3\].
    pub cut_to_m3: Option<f64>,
    /// The answer in one or two sentences.
    pub words: String,
}

const MANUAL: &str = "The machine's manual decides";

pub(super) fn answer(
    scenario: &Scenario,
    loader: usize,
    bucket: &Bucket,
    today_kg: Option<f64>,
) -> LiftAnswer {
    let (material, system) = (&scenario.job.material, scenario.units);
    let density = material.density_kg_per_m3;
    let full_m3 = bucket.heaped_m3 * material.fill_factor;
    let load_kg = full_m3 * density;
    let extra_kg = bucket.mass_kg.zip(today_kg).map(|(new, today)| new - today);
    let allowed = scenario.job.loaders.get(loader).and_then(|machine| machine.lift_kg);
    let stated = scenario.stated.loaders.get(loader).and_then(|stated| stated.lift);
    let by = stated.map_or_else(String::new, |lift| format!(" ({})", lift.words(system)));
    let may_kg = allowed.map(|allowed| (allowed - extra_kg.unwrap_or(0.0).max(0.0)).max(0.0));
    let load = mass(load_kg, system);
    let (lift, words) = match (allowed.zip(may_kg), extra_kg.filter(|extra| *extra > 0.0)) {
        (None, _) => {
            let words = format!(
                "Full it carries about {load}; what the machine may lift is not given. Look it up in its manual."
            );
            (Lift::Unknown, words)
        }
        (Some((_, may)), Some(extra)) if may <= 0.0 => {
            let words = format!(
                "It weighs {} more than today's bucket, which leaves nothing to lift material with. {MANUAL}.",
                mass(extra, system)
            );
            (Lift::Nothing, words)
        }
        (Some((_, may)), extra) => {
            let of = extra.map_or_else(String::new, |extra| {
                format!(", as it weighs {} more than today's", mass(extra, system))
            });
            let share = format!(
                "Full it carries about {load}, {} % of the {} that may be lifted{by}{of}.",
                figure(load_kg / may * 100.0),
                mass(may, system)
            );
            if load_kg > may {
                let cut = in_bucket(may / density, system);
                (Lift::Cut, format!("{share} Loads are cut to {cut}; load no more than that. {MANUAL}."))
            } else {
                (Lift::Within, format!("{share} {MANUAL}."))
            }
        }
    };
    LiftAnswer {
        lift,
        load_kg,
        may_kg,
        share: may_kg.filter(|may| *may > 0.0).map(|may| load_kg / may),
        extra_kg,
        cut_to_m3: may_kg.filter(|may| *may < load_kg).map(|may| may / density),
        words,
    }
}
