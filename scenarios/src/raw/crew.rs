//! `[crew]`

use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] = &["together", "crowding", "fatigue", "spread_share", "stand_clear"];

/// How the crew works, as typed.
#[derive(Default)]
pub(crate) struct RawCrew {
    pub(crate) together: Option<At<bool>>,
    pub(crate) crowding: Option<At<f64>>,
    /// Share of the rate lost per hour, and least share.
    pub(crate) fatigue: Option<(At<f64>, At<f64>)>,
    pub(crate) spread_share: Option<At<f64>>,
    pub(crate) spread_share_is_wrong: bool,
    pub(crate) stand_clear: Option<At<bool>>,
}

impl RawCrew {
    pub(super) fn read(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        let spread_share = fields.figure("spread_share", Kind::SpreadShare, ledger);
        Self {
            together: fields.truth("together", ledger),
            crowding: fields.figure("crowding", Kind::Crowding, ledger),
            fatigue: fatigue(fields, ledger),
            spread_share_is_wrong: spread_share.is_none() && fields.has("spread_share"),
            spread_share,
            stand_clear: fields.truth("stand_clear", ledger),
        }
    }
}

fn fatigue(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Option<(At<f64>, At<f64>)> {
    let item = fields.get("fatigue")?;
    let fields = Fields::of(&item, &["loss", "least"], ledger)?;
    let right = "write fatigue = { loss = \"5 %/h\", least = \"60 %\" }";
    let loss = fields.need("loss", right, ledger).and_then(|item| item.figure(Kind::FatigueLoss, ledger));
    let least = fields.need("least", right, ledger).and_then(|item| item.figure(Kind::FatigueLeast, ledger));
    loss.zip(least)
}
