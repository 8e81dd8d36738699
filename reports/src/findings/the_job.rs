//! The job in words.

use scenarios::Scenario;
use scenarios::units::{System, volume};
use sim::FinishRule;

/// The job in one sentence: what, how much, where to, with whom.
pub fn the_job(scenario: &Scenario, units: System) -> String {
    let job = &scenario.job;
    let need: f64 = job.zones.iter().map(|z| z.need_m3).sum();
    let amount = match job.finish {
        FinishRule::AreaCovered => volume(need, units),
        FinishRule::PileCleared { .. } => {
            format!("all {}", volume(scenario.ordered_m3, units))
        }
    };
    // "wood chips, green" is followed by a pause.
    let pause = if job.material.name.contains(',') { "," } else { "" };
    format!(
        "{amount} of {}{pause} from {} to {}, with {} and {}.",
        job.material.name,
        count(job.stockpiles.len(), "pile"),
        count(job.zones.len(), "zone"),
        count(job.loaders.len(), "loader"),
        if job.rakers.is_empty() { "nobody raking".to_owned() } else { count(job.rakers.len(), "raker") },
    )
}

/// `1 pile`, `3 piles`.
fn count(n: usize, what: &str) -> String {
    if n == 1 { format!("1 {what}") } else { format!("{n} {what}s") }
}
