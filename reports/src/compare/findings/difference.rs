//! What each job saves against the first.

use crate::compare::{Choice, Comparison, Judged};
use crate::findings::{Estimate, Saved, Unit, saved, share_of_runs};
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
    /// All of it in a line.
    pub words: String,
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
    let money = money.map(|paired| saved(&paired, Unit::Money(currency)));
    let runs = time.mean.n;
    let time = saved(&time, Unit::Time);
    let words = words(&time, money.as_ref(), Unit::Money(currency));
    Difference { letter: Choice::letter(place), name: choice.name.clone(), runs, time, money, words }
}

/// `Saves 40 min on average, 39 to 42 min; faster in nearly every run; costs $41 more.`
fn words(time: &Saved, money: Option<&Saved>, unit: Unit<'_>) -> String {
    let mut words = time_words(time);
    if let Some(money) = money {
        words = format!("{words}; {}", cost_words(money.mean, unit));
    }
    format!("{words}.")
}

fn time_words(time: &Saved) -> String {
    let Estimate { value, low, high } = time.mean;
    let (low, high) = (low.unwrap_or(value), high.unwrap_or(value));
    let faster = share_of_runs(time.smaller.value);
    match () {
        () if time.same.value >= 1.0 => "The same time in every run".to_owned(),
        () if low > 0.0 => {
            let (mean, span) = (Unit::Time.say(value), Unit::Time.span(low, high));
            format!("Saves {}; faster in {faster}", with_span(&mean, "", &span))
        }
        () if high < 0.0 => {
            let (mean, span) = (Unit::Time.say(-value), Unit::Time.span(-high, -low));
            format!("Takes {}; faster in {faster}", with_span(&mean, " longer", &span))
        }
        () => format!("About the same time on average; faster in {faster}"),
    }
}

/// The span is told where it says more than the mean.
fn with_span(mean: &str, how: &str, span: &str) -> String {
    if mean == span { format!("{mean}{how} on average") } else { format!("{mean}{how} on average, {span}") }
}

fn cost_words(mean: Estimate, unit: Unit<'_>) -> String {
    let Estimate { value, low, high } = mean;
    let sum = unit.say(value.abs());
    match () {
        () if low.unwrap_or(value) > 0.0 => format!("costs {sum} less"),
        () if high.unwrap_or(value) < 0.0 => format!("costs {sum} more"),
        () => "costs about the same".to_owned(),
    }
}

/// What `after` saves against `before` in a figure.
pub(super) fn between(comparison: &Comparison, by: Judged, before: usize, after: usize) -> Paired {
    let runs = |place: usize| comparison.choices[place].study.outcomes.iter();
    let figure = |place: usize, o: &Outcome| by.of(comparison.choices[place].scenario.job.shift.start_s, o);
    let saved = runs(before).zip(runs(after)).map(|(b, a)| figure(before, b) - figure(after, a));
    Paired::of(saved.collect())
}
