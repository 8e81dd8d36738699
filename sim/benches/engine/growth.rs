//! The same work in more and more of something: loads, loaders, runs. Time per load should stay as it is.

use super::jobs::{one_and_one_of, volume_m3, yard_of};
use super::side_by_side::only_a_try;
use super::work::Work;
use rayon::ThreadPool;
use sim::Job;

/// Work that grows.
pub struct Series<'a> {
    /// What it is and what grows.
    pub name: &'static str,
    /// By how many there are of it.
    pub works: Vec<(u32, Work<'a>)>,
    /// The one that the others are compared with.
    pub against: u32,
}

/// Loads in one go at the least, so that it takes some milliseconds.
fn loads_at_least() -> u32 {
    if only_a_try() { 20_000 } else { 200_000 }
}

/// All series, on this pool.
pub fn all(pool: &ThreadPool) -> Vec<Series<'_>> {
    let work = |job: &Job, runs: u32| Work::new(pool, job, runs).repeated_up_to(loads_at_least().into());
    let by_loads = |job: fn(f64) -> Job| {
        let decades = [10, 100, 1_000, 10_000, 100_000].into_iter();
        decades
            .map(|loads| (loads, work(&job(volume_m3(loads)), (loads_at_least() / loads).max(1))))
            .collect()
    };
    let by_loaders =
        |n: u32| (n, work(&yard_of(n as usize, volume_m3(200 * n)), (loads_at_least() / (200 * n)).max(1)));
    let most_runs = if only_a_try() { 10_000 } else { 1_000_000 };
    let runs = [100, 1_000, 10_000, 100_000, 1_000_000].into_iter().filter(|n| *n <= most_runs);
    let by_runs = |n| (n, work(&one_and_one_of(volume_m3(10)), n));
    vec![
        Series { name: "loads a job, one and one", works: by_loads(one_and_one_of), against: 100 },
        Series { name: "loads a job, the yard", works: by_loads(|m3| yard_of(4, m3)), against: 100 },
        Series {
            name: "loaders in the yard, 200 loads each",
            works: [1, 2, 4, 8, 16, 32, 64].map(by_loaders).into(),
            against: 4,
        },
        Series {
            name: "runs, one and one with ten loads",
            works: runs.map(by_runs).collect(),
            against: 10_000,
        },
    ]
}
