//! What a study keeps for each run, in bytes: the same however many loads a run has. A thread besides needs room for the
//! heaps of one run at a time.
//!
//! A bench of its own, because the allocator that counts makes growing a list slower than it is.

#![allow(dead_code, unreachable_pub, reason = "the benches share modules")]
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark prints, and ends where it cannot go on"
)]

#[path = "engine/jobs.rs"]
mod jobs;

use allocation_counter::measure;
use jobs::{one_and_one_of, volume_m3, yard_of};
use rayon::ThreadPoolBuilder;
use sim::{Job, Outcome, Plan, Runs, Study};

const RUNS: u32 = 1_000;

fn main() {
    println!("\n{:<14} {:>9} {:>16} {:>16}", "job", "loads", "bytes kept a run", "besides, at most");
    let kept = |name: &str, job: fn(f64) -> Job, most: u32| {
        let all = [10, 1_000, most].map(|loads| bytes_a_run(name, loads, &job(volume_m3(loads))));
        assert!(all.iter().all(|bytes| *bytes == all[0]), "{name}: {all:?} bytes");
        assert!(all[0] >= size_of::<Outcome>() as f64);
    };
    kept("one and one", one_and_one_of, 100_000);
    kept("the yard", |volume_m3| yard_of(4, volume_m3), 10_000);
}

/// What a study keeps, by the run, and prints it with what it needs besides while it is made.
fn bytes_a_run(name: &str, loads: u32, job: &Job) -> f64 {
    let (pool, plan) = (ThreadPoolBuilder::new().num_threads(1).build().unwrap(), Plan::new(job).unwrap());
    let (used, study) = pool.install(|| {
        let mut study = None;
        (measure(|| study = Study::new(&plan, 1, Runs::Exactly(RUNS), |_| {}).ok()), study)
    });
    let kept = used.bytes_current as f64 / f64::from(RUNS);
    let besides = used.bytes_max - used.bytes_current as u64;
    println!("{name:<14} {loads:>9} {kept:>16.1} {besides:>16}");
    assert_eq!(study.map(|s| s.runs()), Some(RUNS));
    kept
}
