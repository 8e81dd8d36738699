//! A piece of simulating to be timed.

use rayon::{ThreadPool, ThreadPoolBuilder};
use sim::{Job, Plan, Runs, Study};
use std::hint::black_box;

pub const SEED: u64 = 1;

/// So many runs of a job, over and over where they are few.
pub struct Work<'a> {
    pool: &'a ThreadPool,
    plan: Plan,
    runs: u32,
    times: u32,
    loads_a_study: u64,
}

/// Threads that wait for work.
pub fn pool(threads: usize) -> ThreadPool {
    ThreadPoolBuilder::new().num_threads(threads).build().unwrap()
}

impl<'a> Work<'a> {
    /// Loads are counted from a first study.
    pub fn new(pool: &'a ThreadPool, job: &Job, runs: u32) -> Self {
        let mut work = Self { pool, plan: Plan::new(job).unwrap(), runs, times: 1, loads_a_study: 0 };
        work.loads_a_study = work.study().outcomes.iter().map(|o| u64::from(o.loads)).sum();
        work
    }

    /// The same study as often as it takes to make about so many loads.
    pub fn repeated_up_to(self, loads: u64) -> Self {
        let times = (loads / self.loads_a_study).clamp(1, u64::from(u32::MAX)) as u32;
        Self { times, ..self }
    }

    /// Loads moved in all runs.
    pub fn loads(&self) -> u64 {
        self.loads_a_study * u64::from(self.times)
    }

    /// Runs made.
    pub fn runs(&self) -> u64 {
        u64::from(self.runs) * u64::from(self.times)
    }

    /// The runs once.
    pub fn study(&self) -> Study {
        self.pool.install(|| self.make())
    }

    /// All of it, to be timed.
    pub fn go(&self) {
        self.pool.install(|| (0..self.times).for_each(|_| drop(black_box(self.make()))));
    }

    fn make(&self) -> Study {
        Study::new(&self.plan, SEED, Runs::Exactly(self.runs), |_| {}).unwrap()
    }
}
