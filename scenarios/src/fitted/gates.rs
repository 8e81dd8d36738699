//! Whether a loader with a bucket gets through the passes it needs.

use crate::buckets::Bucket;
use crate::caution::entry::named;
use crate::clearance::{fits, micrometres};
use crate::scenario::Scenario;
use crate::units::{System, short_length};
use sim::{Job, Way};

/// Whether it gets through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Through {
    /// Through every pass on its ways, or there is none.
    Every,
    /// Not through every pass, but there are other ways, or other loaders go there.
    Around,
    /// Ground that needs material can no longer be reached by any loader, or this one gets nowhere: the job is refused.
    Refused,
    /// Neither the machine's nor the bucket's width is known.
    Unknown,
}

/// One pass on the ways.
#[derive(Clone, Debug, PartialEq)]
pub struct PassAnswer {
    /// Its name.
    pub name: String,
    /// Its clear width \[m\].
    pub clear_m: f64,
    /// What is to spare \[m\], both sides together; below 0 if it is too narrow.
    pub spare_m: f64,
    /// Whether loader and bucket fit through.
    pub passes: bool,
}

/// Whether a loader with a bucket gets through the passes it needs.
#[derive(Clone, Debug, PartialEq)]
pub struct GateAnswer {
    /// The answer.
    pub through: Through,
    /// The greater of machine and bucket \[m\]; 0 = unknown.
    pub width_m: f64,
    /// Every pass that lies on a way, in the job's order; empty if the width is unknown.
    pub passes: Vec<PassAnswer>,
    /// Names of the zones this loader does not reach with it.
    pub out_of_reach: Vec<String>,
    /// The answer in a sentence or two.
    pub words: String,
}

/// The greater of machine and bucket \[m\], in whole micrometres.
pub(super) fn width(machine_m: f64, bucket: &Bucket) -> f64 {
    micrometres(machine_m.max(bucket.width_m.unwrap_or(0.0)))
}

pub(super) fn answer(scenario: &Scenario, loader: usize, bucket: &Bucket) -> GateAnswer {
    let (job, system) = (&scenario.job, scenario.units);
    let machine_m = job.loaders.get(loader).map_or(0.0, |machine| machine.width_m);
    let width_m = width(machine_m, bucket);
    let passes = if width_m > 0.0 { on_ways(job, width_m) } else { Vec::new() };
    let open =
        |width: f64, way: &Way| way.passes.iter().all(|entry| fits(width, job.passes[entry.pass].width_m));
    let reaches = |width: f64, zone: &sim::Zone| zone.ways.iter().any(|way| open(width, way));
    let shut: Vec<&sim::Zone> = job.zones.iter().filter(|zone| !reaches(width_m, zone)).collect();
    let others = || job.loaders.iter().enumerate().filter(|(i, _)| *i != loader);
    let lost = shut.iter().any(|zone| !others().any(|(_, other)| reaches(other.width_m, zone)));
    let through = if width_m == 0.0 && !job.passes.is_empty() {
        Through::Unknown
    } else if lost || shut.len() == job.zones.len() {
        Through::Refused
    } else if passes.iter().any(|pass| !pass.passes) {
        Through::Around
    } else {
        Through::Every
    };
    let what = if width_m > micrometres(machine_m) { "bucket" } else { "machine" };
    let names: Vec<&str> = shut.iter().map(|zone| zone.name.as_str()).collect();
    let words = words(through, &passes, &names, (what, width_m), system);
    GateAnswer {
        through,
        width_m,
        passes,
        out_of_reach: names.into_iter().map(str::to_owned).collect(),
        words,
    }
}

fn on_ways(job: &Job, width_m: f64) -> Vec<PassAnswer> {
    let used = |i: usize| {
        job.zones.iter().flat_map(|zone| &zone.ways).any(|way| way.passes.iter().any(|entry| entry.pass == i))
    };
    let passes = job.passes.iter().enumerate().filter(|(i, _)| used(*i));
    let one = |(_, pass): (usize, &sim::Pass)| PassAnswer {
        name: pass.name.clone(),
        clear_m: pass.width_m,
        spare_m: micrometres(pass.width_m - width_m),
        passes: fits(width_m, pass.width_m),
    };
    passes.map(one).collect()
}

fn words(
    through: Through,
    passes: &[PassAnswer],
    shut: &[&str],
    (what, width_m): (&str, f64),
    system: System,
) -> String {
    let show = |metres| short_length(metres, system);
    let narrow: Vec<String> = passes
        .iter()
        .filter(|pass| !pass.passes)
        .map(|pass| format!("\"{}\": {} clear, {what} {}", pass.name, show(pass.clear_m), show(width_m)))
        .collect();
    let narrow = narrow.join("; ");
    match through {
        Through::Unknown => {
            "Neither the machine's nor the bucket's width is given, so passes are not checked.".into()
        }
        Through::Refused => format!("It does not pass {narrow}."),
        Through::Around if shut.is_empty() => format!("It does not pass {narrow}. It goes the ways around."),
        Through::Around => format!("It does not pass {narrow}. Other loaders serve {}.", named(shut)),
        Through::Every => match passes.iter().min_by(|a, b| a.spare_m.total_cmp(&b.spare_m)) {
            None => "There is no gate on its ways.".into(),
            Some(tightest) => {
                format!("It passes \"{}\" with {} to spare.", tightest.name, show(tightest.spare_m))
            }
        },
    }
}
