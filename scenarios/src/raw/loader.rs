//! `[[loader]]`

use super::named::Named;
use crate::diagnostics::At;
use crate::fields::Fields;
use crate::lift::{LiftFigure, RawLift, StatedLift, least};
use crate::quantity::given::Given;
use sim::Distribution;

/// A loader as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawLoader {
    pub(crate) named: Named,
    pub(crate) count: Option<At<u32>>,
    pub(crate) heaped: Option<At<f64>>,
    pub(crate) struck: Option<At<f64>>,
    pub(crate) bucket_mass: Option<At<f64>>,
    /// What it may lift, one for each figure that a manual may give.
    pub(crate) lifts: [RawLift; 3],
    pub(crate) tracks: Option<At<bool>>,
    pub(crate) width: Option<At<f64>>,
    pub(crate) width_is_wrong: bool,
    pub(crate) speed_loaded: Option<At<Given>>,
    pub(crate) speed_empty: Option<At<Given>>,
    pub(crate) loading: Option<At<Given>>,
    pub(crate) dumping: Option<At<Given>>,
    pub(crate) start_and_stop: Option<At<Given>>,
    pub(crate) spread_time: Option<At<Given>>,
    pub(crate) machine_cost: Option<At<f64>>,
    pub(crate) operator_cost: Option<At<f64>>,
    pub(crate) fuel_working: Option<At<f64>>,
    pub(crate) fuel_idling: Option<At<f64>>,
    pub(crate) stoppages: Option<RawStoppages>,
}

/// Stoppages as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawStoppages {
    pub(crate) gap: At<f64>,
    pub(crate) length: At<Distribution>,
}

impl RawLoader {
    /// The figure that allows least to be lifted, with where it was typed.
    pub(crate) fn lift(&self) -> Option<(StatedLift, &At<f64>)> {
        least(&self.lifts, self.on_tracks())
    }

    pub(crate) fn on_tracks(&self) -> bool {
        self.tracks.as_ref().is_some_and(|tracks| tracks.value)
    }

    pub(super) fn read(fields: &mut Fields<'_>, named: Named) -> Self {
        let width = fields.figure("width");
        Self {
            count: fields.count("count"),
            heaped: fields.figure("heaped"),
            struck: fields.figure("struck"),
            bucket_mass: fields.figure("bucket_mass"),
            lifts: LiftFigure::ALL.map(|figure| lift(figure, fields)),
            tracks: fields.truth("tracks"),
            width_is_wrong: width.is_none() && fields.has("width"),
            width,
            speed_loaded: fields.given("speed_loaded"),
            speed_empty: fields.given("speed_empty"),
            loading: fields.given("loading"),
            dumping: fields.given("dumping"),
            start_and_stop: fields.given("start_and_stop"),
            spread_time: fields.given("spread_time"),
            machine_cost: fields.figure("machine_cost"),
            operator_cost: fields.figure("operator_cost"),
            fuel_working: fields.figure("fuel_working"),
            fuel_idling: fields.figure("fuel_idling"),
            stoppages: fields.table("stoppages", |fields| {
                let (gap, length) = (fields.figure("gap"), fields.law("length"));
                Some(RawStoppages { gap: gap?, length: length? })
            }),
            named,
        }
    }
}

fn lift(figure: LiftFigure, fields: &mut Fields<'_>) -> RawLift {
    let rated = fields.figure(figure.key());
    let share = fields.figure(figure.share_key());
    if let Some(share) = share.as_ref().filter(|_| !fields.has(figure.key())) {
        let what = format!("there is no {} that it could be a share of", figure.key());
        let right = format!("give {} as well, or leave the share out", figure.key());
        fields.diagnostics.wrong_at(share, what, right);
    }
    RawLift { figure, rated, share }
}
