//! Who runs, what a pass of many runs yields, and how passes are timed.

use crate::draws::{Draws, Laws};
use std::time::{Duration, Instant};

/// The two jobs.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Work {
    OneAndOne,
    Yard,
}

impl Work {
    pub const BOTH: [Self; 2] = [Self::OneAndOne, Self::Yard];

    pub fn name(self) -> &'static str {
        match self {
            Self::OneAndOne => "one and one",
            Self::Yard => "a yard",
        }
    }
}

/// What one run of a job comes to.
pub struct Outcome {
    pub loads: u32,
    pub completion_s: f64,
}

/// Mean and scatter of a figure over many runs.
#[derive(Clone, Copy, Default)]
pub struct Series {
    runs: f64,
    mean: f64,
    /// Sum of squared distances from the mean.
    squares: f64,
}

impl Series {
    pub fn add(&mut self, value: f64) {
        self.merge(Self { runs: 1.0, mean: value, squares: 0.0 });
    }

    /// Takes in a series of other runs.
    pub fn merge(&mut self, other: Self) {
        let runs = self.runs + other.runs;
        let apart = other.mean - self.mean;
        self.squares += other.squares + apart * apart * self.runs * other.runs / runs;
        self.mean += apart * other.runs / runs;
        self.runs = runs;
    }

    /// A series of which only the mean and its standard error are known.
    pub fn known(runs: u32, mean: f64, standard_error: f64) -> Self {
        let runs = f64::from(runs);
        Self { runs, mean, squares: standard_error * standard_error * runs * (runs - 1.0) }
    }

    pub fn mean(&self) -> f64 {
        self.mean
    }

    pub fn standard_error(&self) -> f64 {
        (self.squares / (self.runs - 1.0) / self.runs).sqrt()
    }

    /// How far the means of two series lie apart, in standard errors of their difference.
    pub fn errors_apart(&self, other: &Self) -> f64 {
        (self.mean - other.mean) / self.standard_error().hypot(other.standard_error())
    }
}

/// The answers of many runs.
#[derive(Clone, Copy, Default)]
pub struct Answers {
    pub completion_s: Series,
    pub loads: Series,
}

impl Answers {
    pub fn add(&mut self, outcome: &Outcome) {
        self.completion_s.add(outcome.completion_s);
        self.loads.add(f64::from(outcome.loads));
    }

    pub fn merge(&mut self, other: &Self) {
        self.completion_s.merge(other.completion_s);
        self.loads.merge(other.loads);
    }
}

/// Many runs of one job, timed.
pub struct Pass {
    pub ns_per_load: f64,
    /// None where nothing is simulated.
    pub answers: Option<Answers>,
}

/// One of those compared.
pub struct Contestant {
    pub name: String,
    /// Runs of each job in one round, so that a round takes a fraction of a second.
    pub runs: [u32; 2],
    pub pass: Box<PassOf>,
}

/// Makes this many runs with this seed.
pub type PassOf = dyn Fn(Work, u32, u64) -> anyhow::Result<Pass>;

/// A contestant that makes one run after another in this process.
pub fn library(
    name: String,
    runs: [u32; 2],
    laws: Laws,
    one_and_one: fn(Draws) -> anyhow::Result<Outcome>,
    yard: fn(Draws) -> anyhow::Result<Outcome>,
) -> Contestant {
    let pass = move |work, runs, seed| {
        let run = if work == Work::Yard { yard } else { one_and_one };
        let mut draws = Draws::new(laws, seed);
        let (mut answers, mut loads) = (Answers::default(), 0);
        let start = Instant::now();
        for _ in 0..runs {
            let outcome = run(draws.fork())?;
            answers.add(&outcome);
            loads += u64::from(outcome.loads);
        }
        Ok(Pass { ns_per_load: ns_per(start.elapsed(), loads), answers: Some(answers) })
    };
    Contestant { name, runs, pass: Box::new(pass) }
}

pub fn ns_per(spent: Duration, loads: u64) -> f64 {
    spent.as_secs_f64() * 1e9 / loads as f64
}
