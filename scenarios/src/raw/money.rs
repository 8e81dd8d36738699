//! `[money]`

use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::units::amount::currency_word;
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] = &["currency", "fuel_price", "mobilisation"];

/// Prices of the whole job as typed.
#[derive(Default)]
pub(crate) struct RawMoney {
    pub(crate) fuel_price: Option<At<f64>>,
    pub(crate) mobilisation: Option<At<f64>>,
}

impl RawMoney {
    pub(super) fn read(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        if let Some(item) = fields.get("currency") {
            let right = "write a sign or three capital letters, such as \"$\", \"€\" or \"CHF\"";
            if let Some(text) = item.text(right, ledger) {
                match currency_word(&text.value) {
                    Some(currency) => ledger.saw_currency(&item.place, item.node, &currency),
                    None => item.wrong("this is not a currency", right, ledger),
                }
            }
        }
        Self {
            fuel_price: fields.figure("fuel_price", Kind::FuelPrice, ledger),
            mobilisation: fields.figure("mobilisation", Kind::Price, ledger),
        }
    }
}
