//! Buckets: what a full one weighs against what the loader may lift.

use super::entry::{Caution, named};
use crate::lift::{HAND_M3, LiftFigure, StatedLift};
use crate::materials;
use crate::scenario::StatedLoader;
use crate::units::{System, bucket, density, figure, mass};
use sim::{Job, Loader};

/// Heaped capacity over struck capacity above which one of the two is doubtful.
const HEAPED_OVER_STRUCK: f64 = 1.7;

pub(super) fn cautions(job: &Job, stated: &[StatedLoader], system: System) -> Vec<Caution> {
    let mut all = Vec::new();
    for loader in kinds(job, stated) {
        all.extend(lift(job, &loader, system));
        all.extend(struck(&loader, system));
    }
    all
}

/// Loaders that differ in more than their name, with the names of those that do not.
struct Kind<'j> {
    loader: &'j Loader,
    /// The figure that decides what they may lift.
    lift: Option<StatedLift>,
    names: Vec<&'j str>,
}

fn kinds<'j>(job: &'j Job, stated: &[StatedLoader]) -> Vec<Kind<'j>> {
    let mut kinds: Vec<Kind<'_>> = Vec::new();
    for (number, loader) in job.loaders.iter().enumerate() {
        let lift = stated.get(number).and_then(|stated| stated.lift);
        let same = |kind: &&mut Kind<'_>| {
            kind.lift == lift
                && Loader { name: String::new(), ..kind.loader.clone() }
                    == Loader { name: String::new(), ..loader.clone() }
        };
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.names.push(&loader.name),
            None => kinds.push(Kind { loader, lift, names: vec![&loader.name] }),
        }
    }
    kinds
}

fn lift(job: &Job, kind: &Kind<'_>, system: System) -> Option<Caution> {
    let loader = kind.loader;
    let name = named(&kind.names);
    let volume = loader.heaped_m3 * job.material.fill_factor;
    let load = volume * job.material.density_kg_per_m3;
    let Some(may) = loader.lift_kg else {
        let cause = format!(
            "A usual bucket of {name} holds {} and weighs about {}, but what the machine may lift is not given.",
            bucket(volume, system),
            mass(load, system)
        );
        let [first, second, third] = LiftFigure::ALL.map(LiftFigure::words);
        let remedy = format!(
            "Give its {first}, {second} or {third}, whichever stands in the machine's manual; loads are then cut to what may be \
             lifted."
        );
        return (loader.heaped_m3 > HAND_M3).then(|| Caution::warning("lift-not-given", cause, remedy));
    };
    // A barrow takes what a person wheels: no machine, nothing to warn of.
    let by = by_which(kind.lift?, may, system);
    if load > may {
        let cut = may / job.material.density_kg_per_m3;
        let cause = format!(
            "A usual bucket of {name} weighs about {}, but it may lift {} ({by}).",
            mass(load, system),
            mass(may, system)
        );
        let remedy = format!(
            "Loads are cut to {} here, {} % of a usual one. Load no more than that, and follow the machine's manual.",
            bucket(cut, system),
            figure(cut / volume * 100.0)
        );
        return Some(Caution::warning("bucket-over-lift", cause, remedy));
    }
    let wettest = materials::find(&job.material.name)?.density_kg_per_m3[2];
    let wet = volume * wettest;
    (wet > may).then(|| {
        let cause = format!(
            "At {}, the heaviest met, a usual bucket of {name} weighs {}, but it may lift {} ({by}).",
            density(wettest, system),
            mass(wet, system),
            mass(may, system)
        );
        let remedy =
            "If the material is wet or packed, weigh a bucket or load less, and follow the machine's manual.";
        Caution::warning("bucket-over-lift-when-heavy", cause, remedy)
    })
}

/// The figure by which so much may be lifted, in words.
fn by_which(lift: StatedLift, may_kg: f64, system: System) -> String {
    let less = if may_kg < lift.may_kg() { ", less what this bucket weighs more than today's" } else { "" };
    format!("{}{less}", lift.words(system))
}

fn struck(kind: &Kind<'_>, system: System) -> Option<Caution> {
    let struck = kind.loader.struck_m3?;
    let ratio = kind.loader.heaped_m3 / struck;
    (ratio > HEAPED_OVER_STRUCK).then(|| {
        let cause = format!(
            "The bucket of {} holds {} heaped but only {} struck; heaped is usually a fifth to a half more.",
            named(&kind.names),
            bucket(kind.loader.heaped_m3, system),
            bucket(struck, system)
        );
        Caution::warning(
            "bucket-figures",
            cause,
            "Check both figures; the heaped one decides how many loads there are.",
        )
    })
}
