//! `[[loader]]`

use super::Named;
use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::lift::{LiftFigure, RawLift, StatedLift, least};
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[&str] = &[
    "name",
    "count",
    "heaped",
    "struck",
    "bucket_mass",
    "hydraulic_lift",
    "hydraulic_lift_share",
    "rated_operating_capacity",
    "rated_operating_capacity_share",
    "tipping_load",
    "tipping_load_share",
    "tracks",
    "width",
    "speed_loaded",
    "speed_empty",
    "loading",
    "dumping",
    "start_and_stop",
    "spread_time",
    "machine_cost",
    "operator_cost",
    "fuel_working",
    "fuel_idling",
    "stoppages",
];

/// Keys of earlier versions, with what to write now.
pub(super) const FORMER: &[(&str, &str)] = &[
    (
        "rated_lift",
        "write hydraulic_lift, rated_operating_capacity or tipping_load, whichever stands in the machine's manual",
    ),
    (
        "lift_share",
        "write hydraulic_lift_share, rated_operating_capacity_share or tipping_load_share, after the figure it is of",
    ),
];

/// A loader as typed.
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

    pub(super) fn read(fields: &Fields<'_>, named: Named, ledger: &mut Ledger<'_>) -> Self {
        let heaped =
            fields.need("heaped", "give the heaped capacity, such as \"14 ft3\" or \"0.4 m3\"", ledger);
        let width = fields.figure("width", Kind::Width, ledger);
        Self {
            count: fields.count("count", 0..=sim::MOST_LOADERS as u32, ledger),
            heaped: heaped.and_then(|item| item.figure(Kind::Bucket, ledger)),
            struck: fields.figure("struck", Kind::Bucket, ledger),
            bucket_mass: fields.figure("bucket_mass", Kind::BucketMass, ledger),
            lifts: LiftFigure::ALL.map(|figure| lift(figure, fields, ledger)),
            tracks: fields.truth("tracks", ledger),
            width_is_wrong: width.is_none() && fields.has("width"),
            width,
            speed_loaded: fields.given("speed_loaded", Kind::Speed, Takes::NoLaw, ledger),
            speed_empty: fields.given("speed_empty", Kind::Speed, Takes::NoLaw, ledger),
            loading: fields.given("loading", Kind::Step, Takes::Loads, ledger),
            dumping: fields.given("dumping", Kind::Step, Takes::Loads, ledger),
            start_and_stop: fields.given("start_and_stop", Kind::Step, Takes::DaysIfSaid, ledger),
            spread_time: fields.given("spread_time", Kind::SpreadTime, Takes::DaysIfSaid, ledger),
            machine_cost: fields.figure("machine_cost", Kind::HourlyCost, ledger),
            operator_cost: fields.figure("operator_cost", Kind::HourlyCost, ledger),
            fuel_working: fields.figure("fuel_working", Kind::FuelBurn, ledger),
            fuel_idling: fields.figure("fuel_idling", Kind::FuelBurn, ledger),
            stoppages: stoppages(fields, ledger),
            named,
        }
    }
}

fn lift(figure: LiftFigure, fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> RawLift {
    let rated = fields.figure(figure.key(), Kind::Lift, ledger);
    let share = fields.figure(figure.share_key(), Kind::LiftShare, ledger);
    if let Some(share) = share.as_ref().filter(|_| !fields.has(figure.key())) {
        let what = format!("there is no {} that it could be a share of", figure.key());
        ledger.wrong_at(share, what, format!("give {} as well, or leave the share out", figure.key()));
    }
    RawLift { figure, rated, share }
}

fn stoppages(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Option<RawStoppages> {
    let item = fields.get("stoppages")?;
    let fields = Fields::of(&item, &["gap", "length"], ledger)?;
    let right = "write stoppages = { gap = \"3 h\", length = \"5 min\" }";
    let gap = fields.need("gap", right, ledger).and_then(|item| item.figure(Kind::Gap, ledger));
    let length = fields.need("length", right, ledger).and_then(|item| item.law(Kind::Stretch, ledger));
    Some(RawStoppages { gap: gap?, length: length? })
}
