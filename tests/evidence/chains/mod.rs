//! Finite jobs whose answer is worked out apart from heapcast, for features that no printed table covers: each table is made by
//! the Python programs of this folder (`README.md`), by two methods that must agree.

pub(super) mod crew;
pub(super) mod delivery;
pub(super) mod largest;
pub(super) mod layers;
pub(super) mod line;
pub(super) mod loads;
pub(super) mod pair;
pub(super) mod same_random_numbers;
pub(super) mod zones;

use super::comparison::{Comparison, Status};
use super::theory::*;
use sim::*;

/// Runs of every job here.
const RUNS: u32 = 100_000;

/// Standard errors allowed: some hundred figures a comparison, of which one in 150,000 lies further out by chance alone.
const MOST: f64 = 4.5;

/// What the tables are rounded to, and whole microseconds.
const ROUNDING: f64 = 1e-6;

/// How the chains were solved.
const CHAIN: &str = "Markov chain solved by uniformisation (Jensen 1953; Grassmann 1977), compared with a second chain that follows everybody \
     by number, solved by Laplace transform (Abate & Whitt 1995): they agree to 3e-9";

/// A table of this folder.
fn table(name: &str) -> Table {
    Table::read(&format!("chains/{name}"))
}

/// A loader's mean times, in units; all exponential.
#[derive(Clone, Copy, Default)]
struct Cycle {
    load: f64,
    haul: f64,
    dump: f64,
    back: f64,
}

/// Gives every loader these times. The way in needs no time of its own where only the way back takes any.
fn cycle(job: Job, times: Cycle) -> Job {
    let mut job = loading(job, times.load, exponential());
    let (distance, loaded, empty) = if times.haul > 0.0 {
        (times.haul, 1.0, if times.back > 0.0 { times.haul / times.back } else { 1e12 })
    } else {
        (times.back, 1e12, 1.0)
    };
    job.zones[0].ways[0].distance_m = distance * UNIT_S;
    for loader in &mut job.loaders {
        loader.dump_s = times.dump * UNIT_S;
        (loader.loaded_m_per_s, loader.empty_m_per_s) = (loaded, empty);
    }
    for law in [&mut job.chance.loads.haul, &mut job.chance.loads.dump, &mut job.chance.loads.return_leg] {
        *law = exponential();
    }
    job
}

/// Compares the time that all loaders, or all rakers, spend on each thing, mean over runs, wherever the table has any.
fn times(
    comparison: &mut Comparison,
    what: &str,
    study: &Study,
    truth: &dyn Fn(&str) -> f64,
    headings: &[&str],
) {
    use LoaderActivity as L;
    use RakerActivity as R;
    let units = |spent: Duration| spent.as_secs_f64() / UNIT_S;
    for heading in headings {
        let spent = |o: &Outcome| match *heading {
            "loading" => units(o.loaders.time(L::Loading)),
            "hauling" => units(o.loaders.time(L::Hauling)),
            "passing" => units(o.loaders.time(L::Passing)),
            "waiting_face" => units(o.loaders.time(L::WaitingForFace)),
            "waiting_pass" => units(o.loaders.time(L::WaitingForPass)),
            "waiting_room" => units(o.loaders.time(L::WaitingForRoom)),
            "dumping" => units(o.loaders.time(L::Dumping)),
            "returning" => units(o.loaders.time(L::Returning)),
            "waiting_delivery" => units(o.loaders.time(L::WaitingForDelivery)),
            "stopped" => units(o.loaders.time(L::Stopped)),
            "raking" => units(o.rakers.time(R::Raking)),
            "standing_clear" => units(o.rakers.time(R::StandingClear)),
            _ => panic!("no such time: {heading}"),
        };
        let (got, error) = mean_of(study, spent);
        if truth(heading) > 0.0 {
            comparison.compare(
                format!("{what}: {}", heading.replace('_', " ")),
                got,
                error,
                truth(heading),
                ROUNDING,
            );
        }
    }
}
