//! Keys of `[[raker]]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::defaults;
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every raker a name of its own"),
        "\"helper\"",
        "What the raker is called.",
    ),
    key(
        "count",
        Holds::Count(0, sim::MOST_RAKERS as u32),
        LeftOut::Taken("1"),
        "2",
        "How many rakers there are who work alike. 0 keeps the raker out of the job as it stands.",
    ),
    key(
        "rate",
        Holds::Given(Kind::Rate, Takes::Inverted),
        LeftOut::Usual(
            &defaults::RAKING_LIGHT,
            "for light material, up to 300 kg/m3 (506 lb/yd3); less in proportion for heavier",
        ),
        "\"26 yd3/h\"",
        "How much loose material one person rakes out in an hour.",
    ),
    key("start", Holds::Text, LeftOut::Taken("the first zone"), "\"north\"", "The zone the raker begins in."),
    key(
        "walking",
        Holds::Figure(Kind::Speed),
        LeftOut::Usual(&defaults::WALKING, ""),
        "\"3 mph\"",
        "How fast the raker walks from one zone to the next. Counts where walk is given for a zone.",
    ),
    key(
        "cost",
        Holds::Figure(Kind::HourlyCost),
        LeftOut::Taken("nothing"),
        "\"$32/h\"",
        "What an hour of the raker costs you.",
    ),
];
