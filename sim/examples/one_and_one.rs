//! One loader and one raker: how long will it take, and who waits for whom?
//!
//! `cargo run -p heapcast-sim --example one_and_one`

use sim::*;
use std::fmt::Write as _;

/// 9 m3 of mulch in buckets of half a cubic metre, 30 m away. All figures are invented.
pub fn job() -> Job {
    Job {
        material: Material { name: "mulch".into(), density_kg_per_m3: 300.0, ..Material::default() },
        zones: vec![Zone {
            need_m3: 9.0,
            room: Some(2),
            ways: vec![Way { distance_m: 30.0, ..Way::default() }],
            ..Zone::default()
        }],
        stockpiles: vec![Stockpile { on_hand_m3: 12.0, ..Stockpile::default() }],
        loaders: vec![Loader {
            heaped_m3: 0.5,
            loaded_m_per_s: 1.5,
            empty_m_per_s: 2.0,
            load_s: 25.0,
            dump_s: 10.0,
            ..Loader::default()
        }],
        rakers: vec![Raker { rate_m3_per_h: 20.0, walking_m_per_s: 1.2, ..Raker::default() }],
        raking: Raking { stand_clear: false, ..Raking::default() },
        ..Job::default()
    }
}

/// What it prints.
pub fn report() -> Result<String, Box<dyn std::error::Error>> {
    let mut text = String::new();
    let plain = Replay::new(&Plan::new(&job())?, 1, 0)?;
    writeln!(text, "{} loads, without chance {}", plain.outcome.loads, plain.outcome.finish.working)?;

    let mut job = job();
    job.chance.loads.loading = Distribution::Lognormal { mean: 1.0, cv: 0.25 };
    job.chance.loads.raking = Distribution::Lognormal { mean: 1.0, cv: 0.3 };
    let study = Study::new(&Plan::new(&job)?, 1, Runs::Exactly(2_000), |_| {})?;
    let minutes = study.sorted(|outcome| outcome.finish.working.as_mins_f64());
    for share in [0.1, 0.5, 0.8] {
        let percentile = minutes.percentile(share);
        writeln!(text, "P{:.0}: {:.1} min", share * 100.0, percentile.value)?;
    }
    let loader = &study.accounts.loaders[0];
    for (activity, time) in loader.iter().filter(|(_, time)| *time > Duration::ZERO) {
        writeln!(text, "loader {activity}: {:.0} %", 100.0 * (time / loader.total()))?;
    }
    Ok(text)
}

#[allow(clippy::print_stdout, reason = "a program that answers")]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    print!("{}", report()?);
    Ok(())
}
