//! A yard with a gate: three loaders go through a gate that lets one machine pass at a time. What would a wider one save?
//!
//! `cargo run -p heapcast-sim --example yard_with_a_gate`

use sim::*;
use std::fmt::Write as _;

/// 40 m3 of gravel for two beds behind the gate, a third of the way from the pile. All figures are invented.
pub fn yard(at_once: u32) -> Job {
    let bed = |name: &str, distance_m| Zone {
        name: name.into(),
        need_m3: 20.0,
        ways: vec![Way { distance_m, passes: vec![PassOnWay { pass: 0, share: 0.33 }], ..Way::default() }],
        walks_m: vec![0.0; 2],
        ..Zone::default()
    };
    let loader = |number| Loader {
        name: format!("loader {number}"),
        heaped_m3: 0.8,
        width_m: 1.4,
        loaded_m_per_s: 1.8,
        empty_m_per_s: 2.2,
        load_s: 18.0,
        dump_s: 8.0,
        ..Loader::default()
    };
    let mut job = Job {
        material: Material { name: "gravel".into(), density_kg_per_m3: 1_600.0, ..Material::default() },
        zones: vec![bed("left bed", 45.0), bed("right bed", 60.0)],
        stockpiles: vec![Stockpile { on_hand_m3: 40.0, face: 3, ..Stockpile::default() }],
        passes: vec![Pass { width_m: 2.0, passing_s: 15.0, at_once, ..Pass::default() }],
        loaders: (1..=3).map(loader).collect(),
        raking: Raking { spread_share: 1.0, ..Raking::default() },
        fill_order: FillOrder::InTurn,
        ..Job::default()
    };
    job.chance.loads.loading = Distribution::Gamma { mean: 1.0, cv: 0.3 };
    job
}

/// Five hundred replications of the yard.
pub fn study(at_once: u32) -> Result<Study, Box<dyn std::error::Error>> {
    Ok(Study::new(&Plan::new(&yard(at_once))?, 7, Runs::Exactly(500), |_| {})?)
}

/// What it prints.
pub fn report() -> Result<String, Box<dyn std::error::Error>> {
    let mut text = String::new();
    for at_once in [1, 3] {
        let study = study(at_once)?;
        let finish = study.sorted(|outcome| outcome.finish.working.as_mins_f64()).percentile(0.8);
        writeln!(text, "{at_once} at once: done by {:.0} min in 8 runs of 10", finish.value)?;
        for (loader, times) in study.accounts.loaders.iter().enumerate() {
            let waits = times.time(LoaderActivity::WaitingForPass) / i64::from(study.runs());
            writeln!(text, "  loader {} waits {:.1} min at the gate", loader + 1, waits.as_mins_f64())?;
        }
    }
    Ok(text)
}

#[allow(clippy::print_stdout, reason = "a program that answers")]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    print!("{}", report()?);
    Ok(())
}
