//! Cautions and assumptions of all the jobs, each told once with the letters of the jobs it belongs to.

use crate::compare::{Choice, Comparison};
use scenarios::{Assumption, Caution};

/// Every caution of any of the jobs, in the order of the first that has it. One that differs from job to job in its figures alone
/// is told once, with the figures of the first.
pub fn cautions_of_all(comparison: &Comparison) -> Vec<Caution> {
    let alike = |a: &Caution, b: &Caution| {
        a.kind == b.kind && a.remedy == b.remedy && shape(&a.cause) == shape(&b.cause)
    };
    let all = gathered(comparison, |choice| &choice.scenario.cautions, alike);
    all.into_iter().map(|(caution, only)| Caution { cause: with(&caution.cause, &only), ..caution }).collect()
}

/// Words without their figures.
fn shape(words: &str) -> String {
    words.chars().filter(|c| !c.is_ascii_digit() && *c != '.' && *c != ',').collect()
}

/// Every assumption of any of the jobs.
pub fn assumptions_of_all(comparison: &Comparison) -> Vec<Assumption> {
    let all = gathered(comparison, |choice| &choice.scenario.assumptions, PartialEq::eq);
    all.into_iter().map(|(said, only)| Assumption { words: with(&said.words, &only), ..said }).collect()
}

/// What any of the jobs has, once each; with the letters of those that have it where it is not all of them.
fn gathered<T: Clone>(
    comparison: &Comparison,
    of: impl Fn(&Choice) -> &Vec<T>,
    alike: impl Fn(&T, &T) -> bool,
) -> Vec<(T, Vec<String>)> {
    let mut all: Vec<(T, Vec<String>)> = Vec::new();
    for (place, choice) in comparison.choices.iter().enumerate() {
        for one in of(choice) {
            match all.iter_mut().find(|(known, _)| alike(known, one)) {
                Some((_, letters)) => letters.push(Choice::letter(place)),
                None => all.push((one.clone(), vec![Choice::letter(place)])),
            }
        }
    }
    for (_, letters) in &mut all {
        if letters.len() == comparison.choices.len() {
            letters.clear();
        }
    }
    all
}

fn with(words: &str, only: &[String]) -> String {
    if only.is_empty() {
        return words.to_owned();
    }
    let (stem, stop) = words.strip_suffix('.').map_or((words, ""), |stem| (stem, "."));
    format!("{stem} ({}){stop}", only.join(", "))
}
