//! `[[raker]]`

use super::Named;
use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] = &["name", "count", "rate", "start", "walking", "cost"];

/// A raker as typed.
pub(crate) struct RawRaker {
    pub(crate) named: Named,
    pub(crate) count: Option<At<u32>>,
    pub(crate) rate: Option<At<Given>>,
    pub(crate) start: Option<At<String>>,
    pub(crate) walking: Option<At<f64>>,
    pub(crate) cost: Option<At<f64>>,
}

impl RawRaker {
    pub(super) fn read(fields: &Fields<'_>, named: Named, ledger: &mut Ledger<'_>) -> Self {
        Self {
            named,
            count: fields.count("count", 0..=sim::MOST_RAKERS as u32, ledger),
            rate: fields.given("rate", Kind::Rate, Takes::Inverted, ledger),
            start: fields.text("start", ledger),
            walking: fields.figure("walking", Kind::Speed, ledger),
            cost: fields.figure("cost", Kind::HourlyCost, ledger),
        }
    }
}
