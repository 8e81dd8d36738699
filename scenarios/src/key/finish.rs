//! Keys of `[finish]`.

use super::{Holds, Key, LeftOut, key};

pub(crate) const KEYS: &[Key] = &[
    key(
        "rule",
        Holds::Word(|| RULES.iter().map(|(word, _)| *word).collect()),
        LeftOut::Taken("\"area covered\""),
        "\"area covered\"",
        "When the job is done: when every zone has what it takes and is raked, or when nothing is left at the stockpiles.",
    ),
    key(
        "surplus",
        Holds::Text,
        LeftOut::Taken("the last zone"),
        "\"north\"",
        "The zone that takes what is left over, where the pile is to be cleared.",
    ),
];
pub(crate) const RULES: &[(&str, Rule)] =
    &[("area covered", Rule::AreaCovered), ("pile cleared", Rule::PileCleared)];

/// When a job counts as finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    AreaCovered,
    PileCleared,
}
