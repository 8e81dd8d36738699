//! What a comparison says: which job to take and how sure that is, each by itself, each against the first.

mod choice;
mod difference;
mod money;
mod of_all;
mod unlike;
mod verdict;
mod words;

#[cfg(test)]
mod tests;

pub use choice::{ChoiceFindings, Cost, SHARES};
pub use difference::Difference;
pub use of_all::{assumptions_of_all, cautions_of_all};
pub use verdict::Verdict;

use crate::compare::{Choice, Comparison};
use crate::findings::{Assumed, Warnings, assumed, warnings};
use scenarios::units::figure;
use serde::Serialize;

/// Everything a comparison says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ComparisonFindings {
    /// Which to take.
    pub verdict: Verdict,
    /// What keeps the jobs from being like for like.
    pub not_alike: Vec<String>,
    /// Each by itself.
    pub choices: Vec<ChoiceFindings>,
    /// Each but the first against the first.
    pub differences: Vec<Difference>,
    /// How the runs were spent.
    pub runs: String,
    /// What to heed, of all jobs together.
    pub warnings: Warnings,
    /// What was assumed, of all jobs together.
    pub assumed: Assumed,
}

/// Everything a comparison says.
pub fn comparison(comparison: &Comparison) -> ComparisonFindings {
    ComparisonFindings {
        verdict: verdict::verdict(comparison),
        not_alike: unlike::unlike(comparison),
        choices: choice::choices(comparison),
        differences: difference::differences(comparison),
        runs: runs(comparison),
        warnings: warnings(&cautions_of_all(comparison)),
        assumed: assumed(&assumptions_of_all(comparison)),
    }
}

/// How the runs were spent: who was set aside when.
fn runs(comparison: &Comparison) -> String {
    let count = |n: u32| figure(f64::from(n));
    let most = comparison.choices.iter().map(|c| c.study.runs()).max().unwrap_or(0);
    let mut aside: Vec<(u32, Vec<String>)> = Vec::new();
    for (place, choice) in comparison.choices.iter().enumerate() {
        if let Some(runs) = choice.set_aside {
            match aside.iter_mut().find(|(known, _)| *known == runs) {
                Some((_, letters)) => letters.push(Choice::letter(place)),
                None => aside.push((runs, vec![Choice::letter(place)])),
            }
        }
    }
    aside.sort();
    let set_aside: Vec<String> = aside
        .iter()
        .map(|(runs, letters)| format!("{} dropped after {}", letters.join(", "), count(*runs)))
        .collect();
    let left: Vec<String> = (comparison.choices.iter().enumerate())
        .filter(|(_, choice)| choice.set_aside.is_none())
        .map(|(place, _)| Choice::letter(place))
        .collect();
    let all = count(comparison.provenance.runs);
    if set_aside.is_empty() {
        return format!("{all} runs, {} of each on the same days and loads.", count(most));
    }
    format!(
        "{all} runs on the same days and loads: {}, {} went to {}.",
        set_aside.join("; "),
        count(most),
        left.join(" and ")
    )
}
