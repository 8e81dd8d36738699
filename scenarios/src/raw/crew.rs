//! `[crew]`

use crate::diagnostics::At;
use crate::fields::Fields;

/// How the crew works, as typed.
#[derive(Clone, Debug, Default)]
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
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        let spread_share = fields.figure("spread_share");
        Self {
            together: fields.truth("together"),
            crowding: fields.figure("crowding"),
            fatigue: fields.table("fatigue", |fields| fields.figure("loss").zip(fields.figure("least"))),
            spread_share_is_wrong: spread_share.is_none() && fields.has("spread_share"),
            spread_share,
            stand_clear: fields.truth("stand_clear"),
        }
    }
}
