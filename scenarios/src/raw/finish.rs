//! `[finish]`

use crate::fields::Fields;
use crate::ledger::{At, Ledger};

pub(super) const KEYS: &[&str] = &["rule", "surplus"];

/// When a job counts as finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    AreaCovered,
    PileCleared,
}

/// The finish as typed.
#[derive(Default)]
pub(crate) struct RawFinish {
    pub(crate) rule: Option<At<Rule>>,
    pub(crate) surplus: Option<At<String>>,
}

impl RawFinish {
    pub(super) fn read(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        let rules = [("area covered", Rule::AreaCovered), ("pile cleared", Rule::PileCleared)];
        Self {
            rule: fields.get("rule").and_then(|item| item.word(&rules, ledger)),
            surplus: fields.text("surplus", ledger),
        }
    }
}
