//! The handbook figure, and what a bucket may weigh, against worked production examples.
//!
//! Sources, from memory (inputs and answers), arithmetic computed: Peurifoy et al., Construction Planning, Equipment, and
//! Methods, loader chapter (4 yd3 wheel loader, fill 0.85, cycle 0.50 min, 50-minute hour, 3100 lb a loose yd3: 527 short
//! tons an hour; a bucket load of 10,540 lb against half of the static tipping load; load and carry, 220 ft one way at 80 %
//! of 4.3 mph loaded and 60 % of 7.7 mph empty: 0.73 + 0.54 + 0.50 min, 149 tons an hour); Nunnally, Construction Methods
//! and Management, loader example (3.5 yd3, fill 1.00, basic cycle 0.50 min, travel 0.30 min, 50-minute hour: 219 loose yd3
//! an hour). A gravel haul (12 loose yd3, swell 15 %, loaded at 40 bank yd3 an hour, 20 min each way, 5 min to unload) and
//! the statement of a problem of Nunnally's are SEEN, their last step computed.

use super::comparison::{Comparison, Status};
use super::theory::job;
use sim::{Event, Handbook, LoaderActivity, Plan, Replay};

const YD3: f64 = 0.764_554_857_984;
const POUND: f64 = 0.453_592_37;
const FEET_A_MINUTE: f64 = 0.3048 / 60.0;

/// Loose cubic yards in an hour by the handbook figure.
fn yards_an_hour(job: &sim::Job) -> f64 {
    let handbook = Handbook::new(job);
    handbook.volume_m3 / YD3 / (handbook.time_s / 3600.0)
}

fn four_yard_loader() -> sim::Job {
    let mut job = job(1_000, 1);
    job.material.fill_factor = 0.85;
    job.material.density_kg_per_m3 = 3100.0 * POUND / YD3;
    job.loaders[0].heaped_m3 = 4.0 * YD3;
    job.loaders[0].load_s = 30.0;
    job
}

pub(super) fn production() -> Comparison {
    let mut comparison = Comparison::new(
        "The handbook figure is that of worked production examples",
        "Peurifoy et al., Construction Planning, Equipment, and Methods, loader chapter; Nunnally, Construction Methods and \
         Management, loader example (worked_examples.csv, P1, P2, N1)",
        Status::Memory,
        0.0,
    );
    let beside = four_yard_loader();
    let tons = |job: &sim::Job| yards_an_hour(job) * 3100.0 / 2000.0;
    comparison.exact("beside its pile: short tons an hour", tons(&beside), 527.0, 0.5);
    let mut carry = four_yard_loader();
    carry.zones[0].ways[0].distance_m = 220.0 * 0.3048;
    carry.loaders[0].loaded_m_per_s = 0.8 * 4.3 * 88.0 * FEET_A_MINUTE;
    carry.loaders[0].empty_m_per_s = 0.6 * 7.7 * 88.0 * FEET_A_MINUTE;
    let cycle_min = Handbook::new(&carry).cycle_s[0].unwrap() / 60.0;
    comparison.exact("carrying 220 ft: cycle, minutes", cycle_min, 1.7679, 1e-3);
    comparison.exact("carrying 220 ft: short tons an hour", tons(&carry), 149.05, 0.1);
    let mut job = job(1_000, 1);
    job.loaders[0].heaped_m3 = 3.5 * YD3;
    job.loaders[0].load_s = 30.0;
    job.zones[0].ways[0].distance_m = 18.0;
    comparison.exact("cycle of 48 s: loose yd3 an hour", yards_an_hour(&job), 218.75, 0.01);
    comparison
}

pub(super) fn hauls() -> Comparison {
    let mut comparison = Comparison::new(
        "So are the cycle of a gravel haul and the hours of a loader for 3000 yd3, whatever its basic and travel times",
        "worked answer on a study site; statement of Nunnally's end-of-chapter problem, hours = 3000 / (4 f) (0.35 + t) / 50 \
         (worked_examples.csv, W1 and N2); inputs seen, last step computed",
        Status::Seen,
        0.0,
    );
    let mut truck = job(1_000, 1);
    truck.loaders[0].heaped_m3 = 12.0 * YD3;
    // 12 loose yd3 are 12 / 1.15 bank yd3; ten miles at thirty miles an hour are twenty minutes.
    truck.loaders[0].load_s = 12.0 / 1.15 / 40.0 * 3600.0;
    truck.loaders[0].dump_s = 300.0;
    truck.zones[0].ways[0].distance_m = 16_093.44;
    truck.loaders[0].loaded_m_per_s = 13.4112;
    truck.loaders[0].empty_m_per_s = 13.4112;
    let cycle_min = Handbook::new(&truck).cycle_s[0].unwrap() / 60.0;
    comparison.exact("gravel haul: cycle, minutes", cycle_min, 60.65, 0.005);
    truck.zones[0].need_m3 = 10.0 * 12.0 * YD3;
    truck.stockpiles[0].on_hand_m3 = truck.zones[0].need_m3;
    let run = Replay::new(&Plan::new(&truck).unwrap(), 1, 0).unwrap();
    let minutes = run.outcome.completion.working.as_mins_f64() + 20.0;
    comparison.exact("gravel haul: ten trips in a run, minutes", minutes, 606.52, 0.005);
    for (fill, travel) in [(1.0, 0.30), (0.95, 0.55), (0.85, 1.20)] {
        let mut gravel = job(1, 1);
        gravel.material.fill_factor = fill;
        gravel.zones[0].need_m3 = 3000.0 * YD3;
        gravel.stockpiles[0].on_hand_m3 = 3000.0 * YD3;
        gravel.loaders[0].heaped_m3 = 4.0 * YD3;
        gravel.loaders[0].load_s = 0.35 * 60.0;
        gravel.zones[0].ways[0].distance_m = travel * 60.0;
        let hours = 3000.0 / (4.0 * fill) * (0.35 + travel) / 50.0;
        let what = format!("3000 yd3, fill {fill}, travel {travel} min: hours");
        comparison.exact(what, Handbook::new(&gravel).time_s / 3600.0, hours, 1e-9);
    }
    comparison
}

/// Pounds in the first bucket of a run with this static tipping load, of which half may be used.
fn first_bucket_lb(tipping_lb: f64) -> f64 {
    let mut job = four_yard_loader();
    job.loaders[0].lift_kg = Some(tipping_lb * POUND / 2.0);
    let run = Replay::new(&Plan::new(&job).unwrap(), 1, 0).unwrap();
    let volume = run.log.iter().find_map(|entry| match entry.event {
        Event::Loader { activity: LoaderActivity::Loading, volume_m3, .. } => Some(volume_m3),
        _ => None,
    });
    volume.unwrap() * job.material.density_kg_per_m3 / POUND
}

pub(super) fn payload() -> Comparison {
    let mut comparison = Comparison::new(
        "A bucket of 10,540 lb is carried whole where half the tipping load allows it, and cut to it where not",
        "Peurifoy et al., loader chapter, stability check (worked_examples.csv, P1b)",
        Status::Memory,
        0.0,
    );
    comparison.exact(
        "tipping load 25,000 lb: pounds in the bucket",
        first_bucket_lb(25_000.0),
        10_540.0,
        1e-6,
    );
    comparison.exact(
        "21,080 lb, just enough: pounds in the bucket",
        first_bucket_lb(21_080.0),
        10_540.0,
        1e-6,
    );
    comparison.exact("21,078 lb, just not: pounds in the bucket", first_bucket_lb(21_078.0), 10_539.0, 1e-6);
    comparison.exact("10,540 lb: pounds in the bucket", first_bucket_lb(10_540.0), 5_270.0, 1e-6);
    comparison
}

#[test]
fn the_handbook_figure_is_that_of_worked_production_examples() {
    production().judge(4);
    hauls().judge(5);
}

#[test]
fn a_bucket_just_allowed_is_carried_whole_and_one_just_not_is_cut() {
    payload().judge(4);
}
