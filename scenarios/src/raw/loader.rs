//! `[[loader]]`

use super::Named;
use super::key::{Holds, Key, LeftOut, key};
use crate::defaults;
use crate::diagnostics::At;
use crate::fields::Fields;
use crate::lift::{LiftFigure, RawLift, StatedLift, least};
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every loader a name of its own"),
        "\"compact tractor\"",
        "What the loader is called.",
    ),
    key(
        "count",
        Holds::Count(0, sim::MOST_LOADERS as u32),
        LeftOut::Taken("1"),
        "2",
        "How many loaders there are that are alike. 0 keeps the loader out of the job as it stands.",
    ),
    key(
        "heaped",
        Holds::Figure(Kind::Bucket),
        LeftOut::Needed("give the heaped capacity, such as \"14 ft3\" or \"0.4 m3\""),
        "\"14 ft3\"",
        "What the bucket holds heaped.",
    ),
    key(
        "struck",
        Holds::Figure(Kind::Bucket),
        LeftOut::Taken("not known"),
        "\"11 ft3\"",
        "What it holds struck, level with its edges: loads are checked against it.",
    ),
    key(
        "bucket_mass",
        Holds::Figure(Kind::BucketMass),
        LeftOut::Taken("not known"),
        "\"180 lb\"",
        "What today's bucket weighs empty. Needed to compare it with buckets of another weight.",
    ),
    key(
        "hydraulic_lift",
        Holds::Figure(Kind::Lift),
        LeftOut::Taken(
            "not known: if no figure of the manual is given, loads are limited by the bucket alone",
        ),
        "\"1100 lb\"",
        "What the hydraulics of its loader raise, as the machine's manual has it. Of several figures the one that allows least counts. The manual, not this, says what may be lifted.",
    ),
    key(
        "hydraulic_lift_share",
        Holds::Figure(Kind::LiftShare),
        LeftOut::Usual(&defaults::HYDRAULIC_LIFT_SHARE, ""),
        "\"50 %\"",
        "Share of that figure that you want to use.",
    ),
    key(
        "rated_operating_capacity",
        Holds::Figure(Kind::Lift),
        LeftOut::Taken(
            "not known: if no figure of the manual is given, loads are limited by the bucket alone",
        ),
        "\"1100 lb\"",
        "The rated operating capacity, as the machine's manual has it. Of several figures the one that allows least counts. The manual, not this, says what may be lifted.",
    ),
    key(
        "rated_operating_capacity_share",
        Holds::Figure(Kind::LiftShare),
        LeftOut::Usual(&defaults::CAPACITY_SHARE, ""),
        "\"50 %\"",
        "Share of that figure that you want to use.",
    ),
    key(
        "tipping_load",
        Holds::Figure(Kind::Lift),
        LeftOut::Taken(
            "not known: if no figure of the manual is given, loads are limited by the bucket alone",
        ),
        "\"1100 lb\"",
        "The load at which the machine tips, as its manual has it. Of several figures the one that allows least counts. The manual, not this, says what may be lifted.",
    ),
    key(
        "tipping_load_share",
        Holds::Figure(Kind::LiftShare),
        LeftOut::Usual(
            &defaults::TIPPING_SHARE_ON_WHEELS,
            "on wheels; 35 % on tracks (from the same standard)",
        ),
        "\"50 %\"",
        "Share of that figure that you want to use.",
    ),
    key(
        "tracks",
        Holds::Truth,
        LeftOut::Taken("false: it runs on wheels"),
        "true",
        "Whether it runs on tracks. Counts for what may be used of the tipping load.",
    ),
    key(
        "width",
        Holds::Figure(Kind::Width),
        LeftOut::Taken("it fits through every pass"),
        "\"50 in\"",
        "The width of machine or bucket, whichever is greater: what has to fit through gates.",
    ),
    key(
        "speed_loaded",
        Holds::Given(Kind::Speed, Takes::NoLaw),
        LeftOut::Usual(&defaults::SPEED_LOADED, ""),
        "\"3 mph\"",
        "How fast it drives loaded on this ground. Not what the machine could do: what the ground, slopes and people near it allow.",
    ),
    key(
        "speed_empty",
        Holds::Given(Kind::Speed, Takes::NoLaw),
        LeftOut::Usual(&defaults::SPEED_EMPTY, ""),
        "\"4 mph\"",
        "How fast it drives back empty.",
    ),
    key(
        "loading",
        Holds::Given(Kind::Step, Takes::Loads),
        LeftOut::Usual(&defaults::LOADING, ""),
        "{ low = \"15 s\", typical = \"20 s\", high = \"30 s\" }",
        "How long it takes to fill the bucket at the stockpile.",
    ),
    key(
        "dumping",
        Holds::Given(Kind::Step, Takes::Loads),
        LeftOut::Usual(&defaults::DUMPING, ""),
        "\"12 s\"",
        "How long it takes to dump it in the zone.",
    ),
    key(
        "start_and_stop",
        Holds::Given(Kind::Step, Takes::DaysIfSaid),
        LeftOut::Usual(&defaults::START_AND_STOP, ""),
        "\"6 s\"",
        "What starting, turning and stopping add to each leg.",
    ),
    key(
        "spread_time",
        Holds::Given(Kind::SpreadTime, Takes::DaysIfSaid),
        LeftOut::Usual(&defaults::SPREAD_TIME, ""),
        "\"30 s/yd3\"",
        "How long it takes to spread material with the bucket. Counts where spread_share is given under [crew].",
    ),
    key(
        "machine_cost",
        Holds::Figure(Kind::HourlyCost),
        LeftOut::Taken("nothing"),
        "\"$45/h\"",
        "What an hour of the machine costs you, without fuel and operator.",
    ),
    key(
        "operator_cost",
        Holds::Figure(Kind::HourlyCost),
        LeftOut::Taken("nothing"),
        "\"$40/h\"",
        "What an hour of its operator costs you.",
    ),
    key(
        "fuel_working",
        Holds::Figure(Kind::FuelBurn),
        LeftOut::Taken("no fuel is counted"),
        "\"1.2 gal/h\"",
        "What it burns while it works.",
    ),
    key(
        "fuel_idling",
        Holds::Figure(Kind::FuelBurn),
        LeftOut::Taken("no fuel is counted"),
        "\"0.4 gal/h\"",
        "What it burns while it waits.",
    ),
    key(
        "stoppages",
        Holds::Table(STOPPAGES),
        LeftOut::Taken("it never breaks down or is called away"),
        "{ gap = \"3 h\", length = \"10 min\" }",
        "Breakdowns, refuelling, being called away: what stops it by chance.",
    ),
];
const STOPPAGES: &[Key] = &[
    key(
        "gap",
        Holds::Figure(Kind::Gap),
        LeftOut::Needed(STOPPAGES_RIGHT),
        "\"3 h\"",
        "How long it works, on average, from one stoppage to the next.",
    ),
    key(
        "length",
        Holds::Law(Kind::Stretch),
        LeftOut::Needed(STOPPAGES_RIGHT),
        "\"10 min\"",
        "How long it then stands.",
    ),
];
const STOPPAGES_RIGHT: &str = "write stoppages = { gap = \"3 h\", length = \"5 min\" }";

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
