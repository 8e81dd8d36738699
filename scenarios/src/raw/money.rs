//! `[money]`

use super::key::{Holds, Key, LeftOut, key};
use crate::diagnostics::{At, Diagnostic};
use crate::fields::Fields;
use crate::parse;
use crate::units::kind::Kind;

pub(super) const KEYS: &[Key] = &[
    key(
        "currency",
        Holds::Currency,
        LeftOut::Taken("the currency of the prices in the file"),
        "\"$\"",
        "The currency of all prices. Needed only where no price in the file says it.",
    ),
    key(
        "fuel_price",
        Holds::Figure(Kind::FuelPrice),
        LeftOut::Taken("fuel costs nothing"),
        "\"$4/gal\"",
        "What fuel costs. Counts where a loader says what it burns.",
    ),
    key(
        "mobilisation",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$120\"",
        "What it costs to get the machine there and back.",
    ),
];

/// Prices of the whole job as typed.
#[derive(Clone, Debug, Default)]
pub(crate) struct RawMoney {
    pub(crate) fuel_price: Option<At<f64>>,
    pub(crate) mobilisation: Option<At<f64>>,
}

impl RawMoney {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        let currency = fields.under("currency", |item| item.read(parse::currency(&item.node.value)));
        fields.diagnostics.0.extend(currency.map(Diagnostic::Currency));
        Self { fuel_price: fields.figure("fuel_price"), mobilisation: fields.figure("mobilisation") }
    }
}
