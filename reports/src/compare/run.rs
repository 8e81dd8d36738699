//! Several jobs compared with one another: the bundle that the screen, the page, the charts and the files are drawn from.

use crate::failure::Failure;
use crate::findings::is_priced;
use crate::provenance::Provenance;
use scenarios::Scenario;
use scenarios::units::System;
use sim::{Outcome, Plan, Promise, RandomNumbers, Runs, Study, select};

/// Most jobs compared with one another: each has a letter, and more are not taken in.
pub const MOST_CHOICES: usize = 20;

/// One of the jobs.
#[derive(Clone, Debug)]
pub struct Choice {
    /// What it is called, unlike any other of the comparison.
    pub name: String,
    /// The job.
    pub scenario: Scenario,
    /// Its runs: run *k* has the same random numbers as run *k* of every other.
    pub study: Study,
    /// After how many runs it was set aside as surely worse than another; `None` for those left at the end.
    pub set_aside: Option<u32>,
}

/// What the jobs are judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Judged {
    /// Time on the job to the finish, nights left out.
    WorkingTime,
    /// When it is finished by the clock, nights included.
    ClockTime,
    /// What it costs.
    Cost,
}

/// What a person would rather have less of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Prefer {
    /// Finish sooner.
    #[default]
    Time,
    /// Pay less.
    Cost,
}

/// What is wanted of a comparison.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Seed of all random numbers.
    pub seed: u64,
    /// Runs of every job before any is set aside.
    pub runs: u32,
    /// Runs of any one job at the most.
    pub most: u32,
    /// How sure the promise is \[0 to 1\].
    pub confidence: f64,
    /// What the jobs are judged by.
    pub prefer: Prefer,
    /// A difference that does not matter \[s, or money\]; `None` for the usual one.
    pub within: Option<f64>,
}

/// Several jobs compared with one another.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// The jobs; the first is what the others are compared with.
    pub choices: Vec<Choice>,
    /// Place of the one with the least mean.
    pub best: usize,
    /// Whether the promise was reached.
    pub held: bool,
    /// None of the others is better by more than this on average, with the confidence promised \[s, or money\].
    pub within: f64,
    /// What was promised.
    pub promise: Promise,
    /// What the jobs are judged by.
    pub judged: Judged,
    /// Units to show.
    pub units: System,
    /// What it takes to get the same answer again: of the first job, with the runs of all.
    pub provenance: Provenance,
}

/// Five minutes: a difference that matters to nobody (our own choice).
const USUAL_WITHIN_S: f64 = 300.0;
/// The same of a cost, as a share of the first job's median (our own choice).
const USUAL_WITHIN_SHARE: f64 = 0.01;
/// Runs from which that median is taken.
const TRIAL_RUNS: u32 = 200;

impl Comparison {
    /// Runs the jobs until the best of them, or one near enough, is known. `plans` are the jobs [compiled]; `made` is told of runs
    /// as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run can make no progress.
    pub fn new(
        jobs: Vec<(String, Scenario)>,
        plans: &[Plan],
        wanted: &Wanted,
        command: String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        let Some((_, first)) = jobs.first() else { return Err(Failure::Asked("there is no job".into())) };
        let judged = judged_by(&jobs, wanted.prefer);
        let indifference = match wanted.within {
            Some(within) => within,
            None if judged == Judged::Cost => usual_cost(&plans[0], wanted.seed)?,
            None => USUAL_WITHIN_S,
        };
        let promise =
            Promise { indifference, confidence: wanted.confidence, first: wanted.runs, most: wanted.most };
        let starts: Vec<f64> = jobs.iter().map(|(_, s)| s.job.shift.start_s).collect();
        let figure = |i: usize, outcome: &Outcome| judged.of(starts[i], outcome);
        let selected = select(plans, wanted.seed, RandomNumbers::Common, &promise, figure, made)?;
        let runs = u32::try_from(selected.runs()).unwrap_or(u32::MAX);
        let provenance = Provenance::new(first, wanted.seed, runs, command);
        let units = first.units;
        let of_each = jobs.into_iter().zip(selected.studies).zip(selected.set_aside);
        let choices = of_each
            .map(|(((name, scenario), study), set_aside)| Choice { name, scenario, study, set_aside })
            .collect();
        let (best, held, within) = (selected.best, selected.held, selected.within);
        Ok(Self { choices, best, held, within, promise, judged, units, provenance })
    }

    /// The job the others are compared with.
    pub fn first(&self) -> &Choice {
        &self.choices[0]
    }

    /// What tells of the time: working time or the clock, also where costs are judged.
    pub fn time(&self) -> Judged {
        if self.judged == Judged::Cost {
            time_by(self.choices.iter().map(|c| &c.scenario))
        } else {
            self.judged
        }
    }

    /// Whether any run of any job goes on over a night.
    pub fn has_nights(&self) -> bool {
        let over_night = |o: &Outcome| o.finish.clock != o.finish.working;
        self.choices.iter().any(|choice| choice.study.outcomes.iter().any(over_night))
    }

    /// The first job that is the very same as this one, if there is one before it.
    pub fn same_as(&self, place: usize) -> Option<usize> {
        let job = &self.choices[place].scenario.job;
        self.choices[..place].iter().position(|other| other.scenario.job == *job)
    }

    /// Whether the costs of two jobs are known and in one currency.
    pub fn priced_alike(&self, a: usize, b: usize) -> bool {
        let (a, b) = (&self.choices[a].scenario, &self.choices[b].scenario);
        is_priced(&a.job) && is_priced(&b.job) && a.currency == b.currency
    }

    /// All that was used, in a line.
    pub fn made_with(&self) -> String {
        let mut hashes: Vec<&str> = Vec::new();
        for choice in &self.choices {
            let hash = choice.scenario.hash.get(..12).unwrap_or(&choice.scenario.hash);
            if !hashes.contains(&hash) {
                hashes.push(hash);
            }
        }
        let more: String = hashes.iter().skip(1).map(|hash| format!(", {hash}")).collect();
        format!("{}{more}", self.provenance.words())
    }
}

impl Choice {
    /// The letter it has in tables and charts.
    pub fn letter(place: usize) -> String {
        char::from_digit(10 + place as u32, 36)
            .map_or_else(String::new, |c| c.to_ascii_uppercase().to_string())
    }
}

impl Judged {
    /// The figure of a run of a job that starts then \[s after midnight\]: seconds, or money.
    pub fn of(self, start_s: f64, outcome: &Outcome) -> f64 {
        match self {
            Self::WorkingTime => outcome.finish.working.as_secs_f64(),
            Self::ClockTime => start_s + outcome.finish.clock.as_secs_f64(),
            Self::Cost => outcome.cost,
        }
    }
}

/// The jobs made ready, if they can be compared by what is preferred.
///
/// # Errors
/// If the model has no meaning for a job, or costs are wanted that cannot be compared.
pub fn compiled(jobs: &[(String, Scenario)], prefer: Prefer) -> Result<Vec<Plan>, Failure> {
    if prefer == Prefer::Cost {
        all_priced_alike(jobs)?;
    }
    jobs.iter().map(plan).collect()
}

fn plan((name, scenario): &(String, Scenario)) -> Result<Plan, Failure> {
    let file = format!("{}, \"{name}\"", scenario.file);
    Plan::new(&scenario.job).map_err(|error| Failure::Job { file, error })
}

fn judged_by(jobs: &[(String, Scenario)], prefer: Prefer) -> Judged {
    match prefer {
        Prefer::Cost => Judged::Cost,
        Prefer::Time => time_by(jobs.iter().map(|(_, scenario)| scenario)),
    }
}

/// Jobs that keep the same hours are told apart by the time they take: a night between would hide minutes or make hours of
/// them. Where the hours themselves differ, what counts is when they are done.
fn time_by<'a>(mut scenarios: impl Iterator<Item = &'a Scenario>) -> Judged {
    let hours = |s: &Scenario| (s.job.shift.start_s, s.job.shift.end_s);
    let first = scenarios.next().map(hours);
    if scenarios.all(|s| Some(hours(s)) == first) { Judged::WorkingTime } else { Judged::ClockTime }
}

fn all_priced_alike(jobs: &[(String, Scenario)]) -> Result<(), Failure> {
    if let Some((name, scenario)) = jobs.iter().find(|(_, s)| !is_priced(&s.job)) {
        return Err(Failure::Asked(format!(
            "{} names no prices, so the cost of \"{name}\" is not known; give prices (machine_cost, operator_cost, cost of \
             the rakers, fuel_price, price of the material), or leave --prefer cost out",
            scenario.file
        )));
    }
    let Some((_, first)) = jobs.first() else { return Ok(()) };
    match jobs.iter().find(|(_, s)| s.currency != first.currency) {
        None => Ok(()),
        Some((name, other)) => Err(Failure::Asked(format!(
            "\"{name}\" is priced in {}, the first in {}: costs in two currencies cannot be compared; write all files in \
             one currency, or leave --prefer cost out",
            other.currency, first.currency
        ))),
    }
}

/// Two digits of a hundredth of the median cost, so that what is said is what is used.
fn usual_cost(plan: &Plan, seed: u64) -> Result<f64, Failure> {
    let trial = Study::new(plan, seed, Runs::Exactly(TRIAL_RUNS), |_| {})?;
    let sum = trial.sorted(|o| o.cost).percentile(0.5).value * USUAL_WITHIN_SHARE;
    let unit = 10f64.powf(sum.abs().log10().floor() - 1.0);
    Ok(if sum > 0.0 && unit > 0.0 { (sum / unit).round() * unit } else { f64::MIN_POSITIVE })
}

#[cfg(test)]
mod tests;
