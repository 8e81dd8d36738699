//! The handbook figure against worked production examples.
//!
//! Sources, from memory (inputs and answers), arithmetic computed: Peurifoy et al., Construction Planning, Equipment, and
//! Methods, loader chapter (4 yd3 wheel loader, fill 0.85, cycle 0.50 min, 50-minute hour, 3100 lb a loose yd3: 527 short
//! tons an hour; load and carry, 220 ft one way at 80 % of 4.3 mph loaded and 60 % of 7.7 mph empty: 0.73 + 0.54 + 0.50 min,
//! 149 tons an hour); Nunnally, Construction Methods and Management, loader example (3.5 yd3, fill 1.00, basic cycle
//! 0.50 min, travel 0.30 min, 50-minute hour: 219 loose yd3 an hour).

use super::theory::job;
use sim::Handbook;

const YD3: f64 = 0.764_554_857_984;
const FEET_A_MINUTE: f64 = 0.3048 / 60.0;

/// Loose cubic yards in an hour by the handbook figure.
fn yards_an_hour(job: &sim::Job) -> f64 {
    let handbook = Handbook::new(job);
    handbook.volume_m3 / YD3 / (handbook.time_s / 3600.0)
}

#[test]
fn a_loader_beside_its_pile_moves_527_tons_an_hour() {
    let mut job = job(1_000, 1);
    job.material.fill_factor = 0.85;
    job.loaders[0].heaped_m3 = 4.0 * YD3;
    job.loaders[0].load_s = 30.0;
    assert!((yards_an_hour(&job) * 3100.0 / 2000.0 - 527.0).abs() < 0.5);
}

#[test]
fn a_loader_that_carries_220_feet_moves_149_tons_an_hour() {
    let mut job = job(1_000, 1);
    job.material.fill_factor = 0.85;
    job.zones[0].ways[0].distance_m = 220.0 * 0.3048;
    job.loaders[0].heaped_m3 = 4.0 * YD3;
    job.loaders[0].load_s = 30.0;
    job.loaders[0].loaded_m_per_s = 0.8 * 4.3 * 88.0 * FEET_A_MINUTE;
    job.loaders[0].empty_m_per_s = 0.6 * 7.7 * 88.0 * FEET_A_MINUTE;
    let cycle_min = Handbook::new(&job).cycle_s[0].unwrap() / 60.0;
    assert!((cycle_min - 1.7679).abs() < 1e-3, "{cycle_min}");
    assert!((yards_an_hour(&job) * 3100.0 / 2000.0 - 149.05).abs() < 0.1);
}

#[test]
fn a_loader_with_a_cycle_of_48_seconds_moves_219_yards_an_hour() {
    let mut job = job(1_000, 1);
    job.loaders[0].heaped_m3 = 3.5 * YD3;
    job.loaders[0].load_s = 30.0;
    job.zones[0].ways[0].distance_m = 18.0;
    assert!((yards_an_hour(&job) - 218.75).abs() < 0.01);
}
