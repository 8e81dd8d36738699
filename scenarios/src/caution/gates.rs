//! Machines and the passes they must get through.

use super::entry::{Caution, named};
use crate::clearance::fits;
use crate::units::{System, short_length};
use sim::{Job, Loader, Way};

/// Clearance below which a pass is called tight, both sides together \[m\].
const TIGHT: f64 = 0.15;

pub(super) fn cautions(job: &Job, system: System) -> Vec<Caution> {
    let mut all = Vec::new();
    let mut widths: Vec<f64> = job.loaders.iter().map(|loader| loader.width_m).filter(|w| *w > 0.0).collect();
    widths.sort_by(f64::total_cmp);
    widths.dedup();
    for width in widths {
        let loaders: Vec<&Loader> = job.loaders.iter().filter(|loader| loader.width_m == width).collect();
        for (i, pass) in job.passes.iter().enumerate() {
            let used = job.zones.iter().flat_map(|zone| &zone.ways).any(|way| goes_through(way, i));
            if !used {
                continue;
            }
            let gap = pass.width_m - width;
            let names: Vec<&str> = loaders.iter().map(|loader| loader.name.as_str()).collect();
            let sizes = format!(
                "{} {} {} wide, \"{}\" is {}",
                named(&names),
                if names.len() == 1 { "is" } else { "are" },
                short_length(width, system),
                pass.name,
                short_length(pass.width_m, system)
            );
            if !fits(width, pass.width_m) {
                let cause = format!("{sizes}: {} too narrow.", short_length(-gap, system));
                all.push(Caution::warning("machine-wider-than-gate", cause, around(job, width)));
            } else if gap < TIGHT {
                let cause = format!("{sizes}: only {} to spare.", short_length(gap, system));
                let remedy = "Measure both, go through slowly, and keep everybody away from the posts.";
                all.push(Caution::warning("gate-tight", cause, remedy));
            }
        }
    }
    let unused: Vec<&str> = (0..job.passes.len())
        .filter(|i| !job.zones.iter().flat_map(|zone| &zone.ways).any(|way| goes_through(way, *i)))
        .map(|i| job.passes[i].name.as_str())
        .collect();
    if !unused.is_empty() {
        let cause = format!("No way goes through {}.", named(&unused));
        all.push(Caution::warning(
            "pass-unused",
            cause,
            "Name it among the passes of a way, or leave it out.",
        ));
    }
    all
}

fn goes_through(way: &Way, pass: usize) -> bool {
    way.passes.iter().any(|entry| entry.pass == pass)
}

/// What a machine of this width does instead.
fn around(job: &Job, width: f64) -> String {
    let open = |way: &Way| way.passes.iter().all(|entry| fits(width, job.passes[entry.pass].width_m));
    let shut: Vec<&str> =
        job.zones.iter().filter(|zone| !zone.ways.iter().any(open)).map(|zone| zone.name.as_str()).collect();
    if shut.is_empty() {
        "It is taken to go the ways around. Widen the gate, or use a narrower machine, if they are long."
            .into()
    } else {
        format!("It does not get to {}. Widen the gate, or use a narrower machine there.", named(&shut))
    }
}
