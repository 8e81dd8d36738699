//! `[[pass]]`

use super::named::Named;
use crate::diagnostics::At;
use crate::fields::Fields;
use crate::quantity::given::Given;

/// A pass as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawPass {
    pub(crate) named: Named,
    pub(crate) width: Option<At<f64>>,
    pub(crate) passing: Option<At<Given>>,
    pub(crate) at_once: Option<At<u32>>,
}

impl RawPass {
    pub(super) fn read(fields: &mut Fields<'_>, named: Named) -> Self {
        Self {
            named,
            width: fields.figure("width"),
            passing: fields.given("passing"),
            at_once: fields.count("at_once"),
        }
    }
}
