//! `[[pass]]`

use super::Named;
use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] = &["name", "width", "passing", "at_once"];

/// A pass as typed.
pub(crate) struct RawPass {
    pub(crate) named: Named,
    pub(crate) width: Option<At<f64>>,
    pub(crate) passing: Option<At<Given>>,
    pub(crate) at_once: Option<At<u32>>,
}

impl RawPass {
    pub(super) fn read(fields: &Fields<'_>, named: Named, ledger: &mut Ledger<'_>) -> Self {
        let width = fields.need("width", "give its clear width, such as \"6 ft\" or \"1.8 m\"", ledger);
        Self {
            named,
            width: width.and_then(|item| item.figure(Kind::Width, ledger)),
            passing: fields.given("passing", Kind::Step, Takes::DaysIfSaid, ledger),
            at_once: fields.count("at_once", 1..=20, ledger),
        }
    }
}
