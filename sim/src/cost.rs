//! What a run's cost is made of.

use crate::activity::{LoaderActivity, Micros, RakerActivity, SECOND};
use crate::job::Job;
use crate::outcome::Outcome;

/// A run's cost in parts \[money\]; they add up to [`Outcome::cost`].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CostParts {
    /// Operators and rakers, but for set-up and clean-up.
    pub labour: f64,
    /// Hourly cost of the machines, but for set-up and clean-up.
    pub machine: f64,
    /// Fuel.
    pub fuel: f64,
    /// People and machines during set-up and clean-up.
    pub set_up_and_clean_up: f64,
    /// Fixed prices: material and what it takes to bring it.
    pub fixed: f64,
}

impl CostParts {
    /// The parts of a run of this job. Set-up and clean-up are steps of everybody; of a loader that joins the clean-up late,
    /// the others' average is taken.
    pub fn of(job: &Job, outcome: &Outcome) -> Self {
        let hours = |time: Micros| time as f64 / (3_600 * SECOND) as f64;
        let each = |time: Micros, people: usize| if people == 0 { 0.0 } else { hours(time) / people as f64 };
        let of_loaders = |a: LoaderActivity| each(outcome.loaders[a as usize], job.loaders.len());
        let of_rakers = |a: RakerActivity| each(outcome.rakers[a as usize], job.rakers.len());
        let loaders_h = of_loaders(LoaderActivity::SetUp) + of_loaders(LoaderActivity::CleanUp);
        let rakers_h = of_rakers(RakerActivity::SetUp) + of_rakers(RakerActivity::CleanUp);
        let machines: f64 = job.loaders.iter().map(|l| l.machine_cost_per_h).sum();
        let operators: f64 = job.loaders.iter().map(|l| l.operator_cost_per_h).sum();
        let rakers: f64 = job.rakers.iter().map(|r| r.cost_per_h).sum();
        let on_the_job = hours(outcome.finish.working);
        Self {
            labour: (on_the_job - loaders_h) * operators + (on_the_job - rakers_h) * rakers,
            machine: (on_the_job - loaders_h) * machines,
            fuel: outcome.fuel_l * job.prices.fuel_per_l,
            set_up_and_clean_up: loaders_h * (operators + machines) + rakers_h * rakers,
            fixed: job.prices.material,
        }
    }

    /// All parts together.
    pub fn total(&self) -> f64 {
        self.labour + self.machine + self.fuel + self.set_up_and_clean_up + self.fixed
    }
}
