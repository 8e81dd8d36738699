//! `[finish]`

use crate::diagnostics::At;
use crate::fields::Fields;
use crate::key::finish::{RULES, Rule};

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
