//! `[finish]`

use super::key::{Holds, Key, LeftOut, key};
use crate::diagnostics::At;
use crate::fields::Fields;

pub(super) const KEYS: &[Key] = &[
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
const RULES: &[(&str, Rule)] = &[("area covered", Rule::AreaCovered), ("pile cleared", Rule::PileCleared)];

/// When a job counts as finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    AreaCovered,
    PileCleared,
}

/// The finish as typed.
#[derive(Clone, Debug, Default)]
pub(crate) struct RawFinish {
    pub(crate) rule: Option<At<Rule>>,
    pub(crate) surplus: Option<At<String>>,
}

impl RawFinish {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self { rule: fields.word("rule", RULES), surplus: fields.text("surplus") }
    }
}
