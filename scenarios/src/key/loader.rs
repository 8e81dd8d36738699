//! Keys of `[[loader]]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::defaults;
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
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
