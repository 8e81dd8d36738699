//! What keeps the jobs from being like for like.

use super::words::quoted;
use crate::compare::{Choice, Comparison};
use crate::findings::{is_priced, share_of_runs};
use scenarios::units::volume;
use sim::FinishRule;

/// Volumes that differ by less than this share are alike (our own choice).
const ALIKE: f64 = 0.005;

/// Whatever a person must know before holding these jobs against one another.
pub(super) fn unlike(comparison: &Comparison) -> Vec<String> {
    let mut all = identical(comparison);
    all.extend(volumes(comparison));
    all.extend(short(comparison));
    all.extend(hours(comparison));
    all.extend(prices(comparison));
    all
}

fn identical(comparison: &Comparison) -> Vec<String> {
    let same = |place: usize| {
        let other = comparison.same_as(place)?;
        Some(format!("{} is the very same job as {}.", quoted(comparison, place), quoted(comparison, other)))
    };
    (1..comparison.choices.len()).filter_map(same).collect()
}

/// What is to be placed \[m3\].
fn wanted(choice: &Choice) -> f64 {
    match choice.scenario.job.finish {
        FinishRule::AreaCovered => choice.scenario.job.zones.iter().map(|z| z.need_m3).sum(),
        FinishRule::PileCleared { .. } => choice.scenario.ordered_m3,
    }
}

fn volumes(comparison: &Comparison) -> Option<String> {
    let first = wanted(comparison.first());
    let differs = |choice: &Choice| (wanted(choice) - first).abs() > ALIKE * first;
    if !comparison.choices.iter().any(differs) {
        return None;
    }
    let each: Vec<String> = (comparison.choices.iter().enumerate())
        .map(|(place, choice)| {
            format!("{} {}", Choice::letter(place), volume(wanted(choice), comparison.units))
        })
        .collect();
    Some(format!(
        "They do not place the same volume ({}): who places less is done sooner for that alone.",
        each.join(", ")
    ))
}

/// A job that leaves the ground short is done sooner because it does less.
fn short(comparison: &Comparison) -> Vec<String> {
    let mean = |choice: &Choice| choice.study.sorted(|o| o.short_m3).mean().value;
    let often = |choice: &Choice| 1.0 - choice.study.sorted(|o| o.short_m3).share_up_to(0.0).value;
    let least = comparison.choices.iter().map(mean).fold(f64::INFINITY, f64::min);
    let told = |(place, choice): (usize, &Choice)| {
        let more = mean(choice) - least;
        (more > ALIKE * wanted(choice)).then(|| {
            format!(
                "{} leaves the ground short in {}, by {} on average over all: part of the time it saves is work \
                 not done.",
                quoted(comparison, place),
                share_of_runs(often(choice)),
                volume(mean(choice), comparison.units)
            )
        })
    };
    comparison.choices.iter().enumerate().filter_map(told).collect()
}

fn hours(comparison: &Comparison) -> Option<String> {
    (comparison.time() == crate::compare::Judged::ClockTime).then(|| {
        "They keep different hours, so minutes are those of the clock: a night between counts in full."
            .to_owned()
    })
}

fn prices(comparison: &Comparison) -> Vec<String> {
    let mut all = Vec::new();
    let priced: Vec<bool> = comparison.choices.iter().map(|c| is_priced(&c.scenario.job)).collect();
    if priced.iter().any(|p| *p) {
        let missing = (0..priced.len()).filter(|place| !priced[*place]);
        all.extend(missing.map(|place| {
            format!("The cost of {} is not known: it names no prices.", quoted(comparison, place))
        }));
    }
    let currency = |place: usize| comparison.choices[place].scenario.currency.as_str();
    let other =
        (1..priced.len()).find(|place| priced[0] && priced[*place] && currency(*place) != currency(0));
    if let Some(place) = other {
        all.push(format!("Costs are in {} and in {}; they are not compared.", currency(0), currency(place)));
    }
    all
}
