//! `[[raker]]`

use super::named::Named;
use crate::diagnostics::At;
use crate::fields::Fields;
use crate::quantity::given::Given;

/// A raker as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawRaker {
    pub(crate) named: Named,
    pub(crate) count: Option<At<u32>>,
    pub(crate) rate: Option<At<Given>>,
    pub(crate) start: Option<At<String>>,
    pub(crate) walking: Option<At<f64>>,
    pub(crate) cost: Option<At<f64>>,
}

impl RawRaker {
    pub(super) fn read(fields: &mut Fields<'_>, named: Named) -> Self {
        Self {
            named,
            count: fields.count("count"),
            rate: fields.given("rate"),
            start: fields.text("start"),
            walking: fields.figure("walking"),
            cost: fields.figure("cost"),
        }
    }
}
