//! What the file does not say and has been assumed.

use scenarios::Assumption;
use serde::Serialize;

/// Everything assumed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assumed {
    /// How many and where the full list stands, in a sentence.
    pub sentence: String,
    /// Every one of them.
    pub all: Vec<AssumedLine>,
}

/// One default used or fit made.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AssumedLine {
    /// The key that would say it.
    pub key: String,
    /// What is assumed.
    pub words: String,
    /// Where it comes from.
    pub from: String,
}

/// Everything assumed, in the order of the scenario.
pub fn assumed(assumptions: &[Assumption]) -> Assumed {
    let all: Vec<AssumedLine> = assumptions
        .iter()
        .map(|a| AssumedLine { key: a.key.clone(), words: a.words.clone(), from: a.from.clone() })
        .collect();
    let sentence = match all.len() {
        0 => "Nothing had to be assumed: the job says it all.".to_owned(),
        1 => format!("1 figure is assumed, not yours: {}.", all[0].words),
        n => format!("{n} figures are assumed, not yours."),
    };
    Assumed { sentence, all }
}
