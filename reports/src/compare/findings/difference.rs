//! What each job saves against the first.

use crate::compare::{Choice, Comparison, Judged};
use crate::findings::{Saved, Unit, saved};
use serde::Serialize;
use sim::{Outcome, Paired};

/// One job against the first, on the runs that both have.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Difference {
    /// Letter of the job.
    pub letter: String,
    /// Its name.
    pub name: String,
    /// Runs compared.
    pub runs: usize,
    /// Time saved \[s\]; below 0 where it takes longer.
    pub time: Saved,
    /// Money saved; `None` where one of the costs is unknown or they are in two currencies.
    pub money: Option<Saved>,
}

/// Every job but the first against the first.
pub(super) fn differences(comparison: &Comparison) -> Vec<Difference> {
    (1..comparison.choices.len()).map(|place| difference(comparison, place)).collect()
}

fn difference(comparison: &Comparison, place: usize) -> Difference {
    let (first, choice) = (comparison.first(), &comparison.choices[place]);
    let time = between(comparison, comparison.time(), 0, place);
    let currency = &first.scenario.currency;
    let money = comparison.priced_alike(0, place).then(|| between(comparison, Judged::Cost, 0, place));
    Difference {
        letter: Choice::letter(place),
        name: choice.name.clone(),
        runs: time.mean.n,
        time: saved(&time, Unit::Time),
        money: money.map(|paired| saved(&paired, Unit::Money(currency))),
    }
}

/// What `after` saves against `before` in a figure.
pub(super) fn between(comparison: &Comparison, by: Judged, before: usize, after: usize) -> Paired {
    let runs = |place: usize| comparison.choices[place].study.outcomes.iter();
    let figure = |place: usize, o: &Outcome| by.of(comparison.choices[place].scenario.job.shift.start_s, o);
    let saved = runs(before).zip(runs(after)).map(|(b, a)| figure(before, b) - figure(after, a));
    Paired::of(saved.collect())
}
