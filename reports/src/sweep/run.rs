//! A job at every point of a range, each on the same days and loads: the bundle that the screen, the page, the charts and the files
//! of a sweep are drawn from.

use crate::failure::Failure;
use crate::provenance::Provenance;
use scenarios::units::System;
use scenarios::{Assumption, Caution, Scenario, Vary};
use sim::{Accounts, Moment, Outcome, Plan, Runs, Share, Sorted, Study};

/// Most points of a sweep.
pub const MOST_POINTS: usize = 400;
/// Most runs of all points together: what they yield is kept until all are compared.
pub const MOST_RUNS_IN_ALL: u64 = 10_000_000;

/// Everything known about a job over a range.
pub struct Sweep {
    /// The job before anything is varied.
    pub base: Scenario,
    /// What is varied, one thing or two.
    pub things: Vec<Vary>,
    /// Every combination of their values; those of the last thing change fastest.
    pub points: Vec<Point>,
    /// When it is to be done, and how often.
    pub deadline: Option<Deadline>,
    /// Units to show.
    pub units: System,
    /// What it takes to get the same answer again; its runs are those of one point.
    pub provenance: Provenance,
}

/// A time of the clock to be done by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deadline {
    /// The time \[s after midnight of the first day\].
    pub by_s: f64,
    /// How often it is to be kept \[0 to 1\].
    pub chance: f64,
}

/// The job with every thing at one of its values.
pub struct Point {
    /// Place of the value among those of each thing.
    pub places: Vec<usize>,
    /// The job there.
    pub scenario: Scenario,
    /// What each run yields, in order of its number.
    pub runs: Vec<Run>,
    /// Everybody's times, summed over all runs.
    pub accounts: Accounts,
}

/// What is kept of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// After clean-up.
    pub finish: Moment,
    /// What is missing where the run ends short of material and so is not done \[m3\].
    pub missing_m3: Option<f64>,
    /// Loads moved.
    pub loads: u32,
    /// Hourly costs, fuel and fixed prices \[money\].
    pub cost: f64,
    /// Labour of all loaders and rakers \[h\].
    pub labour_h: f64,
}

impl Run {
    /// Working time to the finish \[s\].
    pub fn working_s(&self) -> f64 {
        self.finish.working.as_secs_f64()
    }

    /// When it is done on the clock, from the start of the first day \[s\]; never, where it ends short of material.
    pub fn done_s(&self) -> f64 {
        if self.missing_m3.is_some() { f64::INFINITY } else { self.clock_s() }
    }

    /// Time of the finish on the clock, from the start of the first day \[s\].
    pub fn clock_s(&self) -> f64 {
        self.finish.clock.as_secs_f64()
    }
}

impl From<&Outcome> for Run {
    fn from(o: &Outcome) -> Self {
        Self {
            finish: o.finish,
            missing_m3: o.ends_short.then_some(o.short_m3),
            loads: o.loads,
            cost: o.cost,
            labour_h: o.labour_h,
        }
    }
}

impl Point {
    /// One figure of every run, in rising order.
    pub fn sorted(&self, figure: impl Fn(&Run) -> f64) -> Sorted {
        Sorted::new(self.runs.iter().map(figure))
    }

    /// The chance of being done by a time of the clock \[s after midnight of the first day\]. A run that ends short of
    /// material is not done at any time.
    pub fn share_done_by(&self, by_s: f64) -> Share {
        self.sorted(Run::done_s).share_up_to(by_s - self.start_s())
    }

    /// Seconds from midnight to the start of the first day.
    pub fn start_s(&self) -> f64 {
        self.scenario.job.shift.start_s
    }
}

/// What is wanted of a sweep.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Seed of all random numbers, the same at every point.
    pub seed: u64,
    /// Runs at every point.
    pub runs: u32,
    /// When it is to be done, and how often.
    pub deadline: Option<Deadline>,
}

/// A job and all its points, compiled.
pub struct Points {
    /// The job before anything is varied.
    pub base: Scenario,
    /// What is varied, one thing or two.
    pub things: Vec<Vary>,
    /// The job at every combination of their values, as [`scenarios::grid`] gives them.
    pub all: Vec<(Scenario, Plan)>,
}

impl Points {
    /// Compiles the job at every point. `scenarios` are those of [`scenarios::grid`] for the things varied.
    ///
    /// # Errors
    /// If the model has no meaning for the job at a point.
    pub fn new(base: Scenario, things: Vec<Vary>, scenarios: Vec<Scenario>) -> Result<Self, Failure> {
        let refused = |error| Failure::Job { file: base.file.clone(), error };
        let plan = Plan::new(&base.job).map_err(refused)?;
        let mut all = Vec::new();
        for scenario in scenarios {
            let variant = plan.variant(&scenario.job).map_err(refused)?;
            all.push((scenario, variant));
        }
        Ok(Self { base, things, all })
    }
}

impl Sweep {
    /// Runs the job at every point. `made` is told of runs as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run can make no progress at a point.
    pub fn new(
        points: Points,
        wanted: &Wanted,
        command: String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        let Points { base, things, all } = points;
        let mut points = Vec::new();
        for (places, (scenario, plan)) in places(&things).into_iter().zip(all) {
            let deadlock = |error| Failure::DeadlockAt { point: scenario.name(), error };
            let study =
                Study::new(&plan, wanted.seed, Runs::Exactly(wanted.runs), &made).map_err(deadlock)?;
            let runs = study.outcomes.iter().map(Run::from).collect();
            points.push(Point { places, scenario, runs, accounts: study.accounts });
        }
        Ok(Self {
            units: base.units,
            provenance: Provenance::new(&base, wanted.seed, wanted.runs, command),
            things,
            points,
            deadline: wanted.deadline,
            base,
        })
    }

    /// Cautions of the job before anything is varied, and those that only arise at some points: one of each kind, with the
    /// first point it arises at and how many others.
    pub fn cautions(&self) -> Vec<Caution> {
        let mut all = self.base.cautions.clone();
        let known: Vec<&str> = self.base.cautions.iter().map(|caution| caution.kind).collect();
        let mut arisen: Vec<(Caution, usize, usize)> = Vec::new();
        for (at, point) in self.points.iter().enumerate() {
            for caution in point.scenario.cautions.iter().filter(|caution| !known.contains(&caution.kind)) {
                match arisen.iter_mut().find(|(other, ..)| other.kind == caution.kind) {
                    Some((_, last, _)) if *last == at => {}
                    Some((_, last, points)) => (*last, *points) = (at, *points + 1),
                    None => {
                        let cause = format!("With {}: {}", self.values_at(point), caution.cause);
                        arisen.push((Caution { cause, ..caution.clone() }, at, 1));
                    }
                }
            }
        }
        all.extend(arisen.into_iter().map(|(caution, _, points)| match points - 1 {
            0 => caution,
            1 => Caution {
                cause: format!("{} Likewise at another point.", full_stop(&caution.cause)),
                ..caution
            },
            n => Caution {
                cause: format!("{} Likewise at {n} other points.", full_stop(&caution.cause)),
                ..caution
            },
        }));
        all
    }

    /// What is assumed of the job before anything is varied, and what is assumed besides at the points, once for each key.
    pub fn assumptions(&self) -> Vec<Assumption> {
        let all = self.points.iter().flat_map(|point| &point.scenario.assumptions);
        all.fold(self.base.assumptions.clone(), |mut known, assumption| {
            if known.iter().all(|other| other.key != assumption.key) {
                known.push(assumption.clone());
            }
            known
        })
    }

    /// The values at a point, as typed: `rakers 2, bucket 14 ft3`.
    fn values_at(&self, point: &Point) -> String {
        let each = self.things.iter().zip(&point.places);
        each.map(|(vary, place)| format!("{} {}", vary.knob, vary.values[*place].label(self.units)))
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// How many values the last thing takes: the points of a row, where there are two things.
    pub fn row(&self) -> usize {
        self.things.last().map_or(1, |vary| vary.values.len())
    }

    /// Runs of all points together.
    pub fn runs_in_all(&self) -> u64 {
        self.points.iter().map(|point| point.runs.len() as u64).sum()
    }
}

fn full_stop(words: &str) -> String {
    if words.ends_with(['.', '!', '?']) { words.to_owned() } else { format!("{words}.") }
}

/// How many points these things make.
pub fn count(things: &[Vary]) -> usize {
    things.iter().map(|vary| vary.values.len()).product()
}

/// Places of the values at every point, the last thing's changing fastest.
fn places(things: &[Vary]) -> Vec<Vec<usize>> {
    let mut all = vec![Vec::new()];
    for vary in things {
        let with = |places: &Vec<usize>| {
            let places = places.clone();
            (0..vary.values.len()).map(move |place| [places.clone(), vec![place]].concat())
        };
        all = all.iter().flat_map(with).collect();
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_places_of_two_things_change_like_the_digits_of_a_number() {
        let things = ["rakers 1..2", "room 1..3"].map(|text| text.parse::<Vary>().unwrap());
        assert_eq!(count(&things), 6);
        assert_eq!(places(&things), [[0, 0], [0, 1], [0, 2], [1, 0], [1, 1], [1, 2]].map(Vec::from));
        assert_eq!(places(&things[..1]), [[0], [1]].map(Vec::from));
    }
}
