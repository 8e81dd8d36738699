//! What a run's cost is made of.

use crate::activity::{LoaderActivity, RakerActivity};
use crate::duration::Duration;
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
        let each = |time: Duration, people: usize| {
            if people == 0 { 0.0 } else { time.as_hours_f64() / people as f64 }
        };
        let of_loaders = |a: LoaderActivity| each(outcome.loaders.time(a), job.loaders.len());
        let of_rakers = |a: RakerActivity| each(outcome.rakers.time(a), job.rakers.len());
        let loaders_h = of_loaders(LoaderActivity::SetUp) + of_loaders(LoaderActivity::CleanUp);
        let rakers_h = of_rakers(RakerActivity::SetUp) + of_rakers(RakerActivity::CleanUp);
        let machines: f64 = job.loaders.iter().map(|l| l.machine_cost_per_h).sum();
        let operators: f64 = job.loaders.iter().map(|l| l.operator_cost_per_h).sum();
        let rakers: f64 = job.rakers.iter().map(|r| r.cost_per_h).sum();
        let on_the_job = outcome.finish.working.as_hours_f64();
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Distribution;
    use crate::activity::{LoaderTimes, RakerTimes};
    use crate::job::*;
    use crate::outcome::{Moment, PROGRESS_PARTS};

    fn loader(machine_cost_per_h: f64, operator_cost_per_h: f64) -> Loader {
        Loader {
            name: "loader".into(),
            heaped_m3: 1.0,
            struck_m3: None,
            lift_kg: None,
            width_m: 1.0,
            loaded_m_per_s: 1.0,
            empty_m_per_s: 1.0,
            load_s: 1.0,
            dump_s: 1.0,
            start_stop_s: 0.0,
            spread_s_per_m3: 0.0,
            machine_cost_per_h,
            operator_cost_per_h,
            fuel_working_l_per_h: 0.0,
            fuel_idling_l_per_h: 0.0,
            stoppages: None,
        }
    }

    fn job() -> Job {
        let raker = |cost_per_h| Raker {
            name: "raker".into(),
            rate_m3_per_h: 20.0,
            start_zone: 0,
            walking_m_per_s: 1.0,
            cost_per_h,
        };
        Job {
            material: Material { name: "chips".into(), density_kg_per_m3: 250.0, fill_factor: 1.0 },
            zones: vec![],
            stockpiles: vec![],
            passes: vec![],
            loaders: vec![loader(20.0, 30.0), loader(40.0, 50.0)],
            rakers: vec![raker(10.0), raker(15.0), raker(20.0)],
            raking: Raking { together: None, fatigue: None, spread_share: 0.0, stand_clear: false },
            fill_order: FillOrder::AsListed,
            finish: FinishRule::AreaCovered,
            shift: Shift {
                start_s: 0.0,
                end_s: None,
                breaks: vec![],
                set_up_s: Distribution::Constant(0.0),
                clean_up_s: Distribution::Constant(0.0),
            },
            chance: Chance::none(),
            prices: Prices { fuel_per_l: 2.0, material: 700.0 },
        }
    }

    /// Four hours on the job; set-up of half an hour and clean-up of a quarter for everybody.
    fn outcome(job: &Job) -> Outcome {
        let hours = |h: f64| Duration::from_secs((h * 3_600.0) as i64);
        let (loaders, rakers) = (job.loaders.len() as f64, job.rakers.len() as f64);
        let finish = Moment { working: hours(4.0), clock: hours(20.0) };
        let mut outcome = Outcome {
            run: 0,
            completion: finish,
            finish,
            loads: 9,
            placed_m3: 9.0,
            left_over_m3: 0.0,
            short_m3: 0.0,
            ends_short: false,
            fuel_l: 6.0,
            labour_h: 20.0,
            cost: 0.0,
            loaders: LoaderTimes::default(),
            rakers: RakerTimes::default(),
            progress: [Duration::ZERO; PROGRESS_PARTS],
        };
        outcome.loaders.add(LoaderActivity::SetUp, hours(0.5 * loaders));
        outcome.loaders.add(LoaderActivity::CleanUp, hours(0.25 * loaders));
        outcome.rakers.add(RakerActivity::SetUp, hours(0.5 * rakers));
        outcome.rakers.add(RakerActivity::CleanUp, hours(0.25 * rakers));
        outcome
    }

    #[test]
    fn a_cost_is_taken_apart_by_hand() {
        let job = job();
        let parts = CostParts::of(&job, &outcome(&job));
        // 3.25 h at work: operators 80/h and rakers 45/h; machines 60/h. 0.75 h of all three.
        assert_eq!(parts.labour, 3.25 * 125.0);
        assert_eq!(parts.machine, 3.25 * 60.0);
        assert_eq!(parts.set_up_and_clean_up, 0.75 * 185.0);
        assert_eq!((parts.fuel, parts.fixed), (12.0, 700.0));
        assert_eq!(parts.total(), 4.0 * 185.0 + 12.0 + 700.0);
    }

    #[test]
    fn without_rakers_nobody_rakes_for_money() {
        let mut job = job();
        job.rakers.clear();
        let parts = CostParts::of(&job, &outcome(&job));
        assert_eq!((parts.labour, parts.set_up_and_clean_up), (3.25 * 80.0, 0.75 * 140.0));
    }
}
