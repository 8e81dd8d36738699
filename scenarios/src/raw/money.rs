//! `[money]`

use crate::diagnostics::{At, Diagnostic};
use crate::fields::Fields;
use crate::parse;

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
