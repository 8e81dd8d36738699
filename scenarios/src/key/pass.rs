//! Keys of `[[pass]]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::defaults;
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every pass a name of its own"),
        "\"field gate\"",
        "What the pass is called; ways name it.",
    ),
    key(
        "width",
        Holds::Figure(Kind::Width),
        LeftOut::Needed("give its clear width, such as \"6 ft\" or \"1.8 m\""),
        "\"7 ft\"",
        "Its clear width. A machine as wide gets through; leave the room that you want to have beside it.",
    ),
    key(
        "passing",
        Holds::Given(Kind::Step, Takes::DaysIfSaid),
        LeftOut::Usual(&defaults::PASSING, ""),
        "\"8 s\"",
        "How long a machine holds it up each time it goes through: slowing down, going through, getting clear.",
    ),
    key("at_once", Holds::Count(1, 20), LeftOut::Taken("1"), "1", "How many machines go through at a time."),
];
