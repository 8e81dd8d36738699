//! Buckets: what a full one weighs against what the loader may lift.

use super::{Caution, named};
use crate::materials;
use crate::units::{System, bucket, density, figure, mass};
use sim::{Job, Loader};

/// Heaped capacity over struck capacity above which one of the two is doubtful.
const HEAPED_OVER_STRUCK: f64 = 1.7;
/// Buckets below this are hand barrows and the like \[m3\].
const HAND: f64 = 0.15;

pub(super) fn cautions(job: &Job, system: System) -> Vec<Caution> {
    let mut all = Vec::new();
    for loader in kinds(job) {
        all.extend(lift(job, &loader, system));
        all.extend(struck(&loader, system));
    }
    all
}

/// Loaders that differ in more than their name, with the names of those that do not.
struct Kind<'j> {
    loader: &'j Loader,
    names: Vec<&'j str>,
}

fn kinds(job: &Job) -> Vec<Kind<'_>> {
    let mut kinds: Vec<Kind<'_>> = Vec::new();
    for loader in &job.loaders {
        let same = |kind: &&mut Kind<'_>| {
            Loader { name: String::new(), ..kind.loader.clone() }
                == Loader { name: String::new(), ..loader.clone() }
        };
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.names.push(&loader.name),
            None => kinds.push(Kind { loader, names: vec![&loader.name] }),
        }
    }
    kinds
}

fn lift(job: &Job, kind: &Kind<'_>, system: System) -> Option<Caution> {
    let loader = kind.loader;
    let name = named(&kind.names);
    let volume = loader.heaped_m3 * job.material.fill_factor;
    let load = volume * job.material.density_kg_per_m3;
    let Some(rated) = loader.rated_lift_kg else {
        let cause = format!(
            "A usual bucket of {name} holds {} and weighs about {}, but what the machine may lift is not given.",
            bucket(volume, system),
            mass(load, system)
        );
        let remedy =
            "Look it up in the machine's manual and give it as rated_lift; loads are then cut to it.";
        return (loader.heaped_m3 > HAND).then(|| Caution::warning("lift-not-given", cause, remedy));
    };
    let may = rated * loader.lift_share;
    let share = figure(loader.lift_share * 100.0);
    if load > may {
        let cut = may / job.material.density_kg_per_m3;
        let cause = format!(
            "A usual bucket of {name} weighs about {}, but it may lift {} ({share} % of its rated {}).",
            mass(load, system),
            mass(may, system),
            mass(rated, system)
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
            "At {}, the heaviest met, a usual bucket of {name} weighs {}, but it may lift {} ({share} % of its rated {}).",
            density(wettest, system),
            mass(wet, system),
            mass(may, system),
            mass(rated, system)
        );
        let remedy = "If the material is wet or packed, weigh a bucket or load less, and follow the machine's manual.";
        Caution::warning("bucket-over-lift-when-heavy", cause, remedy)
    })
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
