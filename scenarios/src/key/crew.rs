//! Keys of `[crew]`.

use super::{Holds, Key, LeftOut, key};
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "together",
        Holds::Truth,
        LeftOut::Taken("false"),
        "true",
        "Whether all rakers work the same heap together. Otherwise each works a heap alone.",
    ),
    key(
        "crowding",
        Holds::Figure(Kind::Crowding),
        LeftOut::Taken("100 %: they do not get in each other's way"),
        "\"90 %\"",
        "What each of them still manages when they rake together. Goes with together = true.",
    ),
    key(
        "fatigue",
        Holds::Table(FATIGUE),
        LeftOut::Taken("rakers do not tire"),
        "{ loss = \"4 %/h\", least = \"70 %\" }",
        "How rakers slow down as the hours of raking add up over a day.",
    ),
    key(
        "spread_share",
        Holds::Figure(Kind::SpreadShare),
        LeftOut::Taken("0 %: loaders dump only, rakers spread it all"),
        "\"30 %\"",
        "Share of the material that the loaders spread themselves with the bucket. 100 % if nobody rakes.",
    ),
    key(
        "stand_clear",
        Holds::Truth,
        LeftOut::Taken("true: the usual caution"),
        "true",
        "Whether rakers stand clear of a zone while a loader dumps there. The machine's manual and your own rules say how far.",
    ),
];
const FATIGUE: &[Key] = &[
    key(
        "loss",
        Holds::Figure(Kind::FatigueLoss),
        LeftOut::Needed(FATIGUE_RIGHT),
        "\"4 %/h\"",
        "Share of the fresh pace that is lost with every hour of raking.",
    ),
    key(
        "least",
        Holds::Figure(Kind::FatigueLeast),
        LeftOut::Needed(FATIGUE_RIGHT),
        "\"70 %\"",
        "Share of the fresh pace that is never lost.",
    ),
];
const FATIGUE_RIGHT: &str = "write fatigue = { loss = \"5 %/h\", least = \"60 %\" }";
