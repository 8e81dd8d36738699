//! Two crews for one job, compared under common random numbers: what does a second raker save, and how surely?
//!
//! `cargo run -p heapcast-sim --example two_crews`

use sim::*;
use std::fmt::Write as _;

/// 15 m3 of sand with one loader and so many rakers, on days that are good and bad for everybody. All figures are invented.
pub fn job(rakers: usize) -> Job {
    let raker = Raker { rate_m3_per_h: 9.0, walking_m_per_s: 1.2, cost_per_h: 24.0, ..Raker::default() };
    let mut job = Job {
        material: Material { name: "sand".into(), density_kg_per_m3: 1_500.0, ..Material::default() },
        zones: vec![Zone {
            need_m3: 15.0,
            room: Some(3),
            ways: vec![Way { distance_m: 25.0, ..Way::default() }],
            ..Zone::default()
        }],
        stockpiles: vec![Stockpile { on_hand_m3: 15.0, ..Stockpile::default() }],
        loaders: vec![Loader {
            heaped_m3: 0.3,
            loaded_m_per_s: 1.2,
            empty_m_per_s: 1.6,
            load_s: 22.0,
            dump_s: 9.0,
            operator_cost_per_h: 45.0,
            ..Loader::default()
        }],
        rakers: vec![raker; rakers],
        ..Job::default()
    };
    job.chance.days.day = Distribution::Lognormal { mean: 1.0, cv: 0.15 };
    job.chance.loads.raking = Distribution::Lognormal { mean: 1.0, cv: 0.3 };
    job
}

/// Minutes on the job.
pub fn minutes(outcome: &Outcome) -> f64 {
    outcome.finish.working.as_mins_f64()
}

/// The same number of replications of both crews under these seeds: the same seed is the same day and the same loads for both.
pub fn compare(seed_of_one: u64, seed_of_two: u64) -> Result<Paired, Box<dyn std::error::Error>> {
    let study = |rakers, seed| {
        Study::new(&Plan::new(&job(rakers))?, seed, Runs::Exactly(1_000), |_| {})
            .map_err(Box::<dyn std::error::Error>::from)
    };
    Ok(paired(&study(1, seed_of_one)?.outcomes, &study(2, seed_of_two)?.outcomes, minutes))
}

/// What it prints.
pub fn report() -> Result<String, Box<dyn std::error::Error>> {
    let mut text = String::new();
    for (numbers, seed_of_two) in [("common random numbers", 5), ("numbers of their own", 6)] {
        let Paired { mean, smaller, .. } = compare(5, seed_of_two)?;
        writeln!(text, "{numbers}: a second raker saves {:.1} min", mean.value)?;
        writeln!(
            text,
            "  95 % interval {:.1} to {:.1} min, sooner in {:.0} % of runs",
            mean.low,
            mean.high,
            100.0 * smaller.value
        )?;
    }
    Ok(text)
}

#[allow(clippy::print_stdout, reason = "a program that answers")]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    print!("{}", report()?);
    Ok(())
}
