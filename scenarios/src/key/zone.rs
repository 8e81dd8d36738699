//! Keys of `[[zone]]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every zone a name of its own"),
        "\"north\"",
        "What the zone is called.",
    ),
    key(
        "volume",
        Holds::Given(Kind::Volume, Takes::Days),
        LeftOut::Taken("it is calculated from the area and the depth"),
        "\"24 yd3\"",
        "What the zone takes, measured loose. Give this, or a depth and one of area, diameter, or length and width.",
    ),
    key(
        "area",
        Holds::Given(Kind::Area, Takes::Days),
        LeftOut::Taken("it is calculated from the sides or the diameter"),
        "\"1200 ft2\"",
        "Its area; two sides with their units do as well: \"40 ft x 30 ft\".",
    ),
    key(
        "length",
        Holds::Figure(Kind::Side),
        LeftOut::Taken("area or diameter is used"),
        "\"40 ft\"",
        "One side of it.",
    ),
    key(
        "width",
        Holds::Figure(Kind::Side),
        LeftOut::Taken("area or diameter is used"),
        "\"30 ft\"",
        "The other side.",
    ),
    key(
        "diameter",
        Holds::Figure(Kind::Side),
        LeftOut::Taken("area or sides are used"),
        "\"50 ft\"",
        "The width of a round zone.",
    ),
    key(
        "depth",
        Holds::Given(Kind::Depth, Takes::Days),
        LeftOut::Taken("volume is used"),
        "\"4 in\"",
        "How deep the material lies when it has settled.",
    ),
    key(
        "room",
        Holds::CountOr(1, MOST_ROOM, NO_LIMIT),
        LeftOut::Taken("no limit"),
        "3",
        "How many heaps may lie in the zone before one is raked out.",
    ),
    key(
        "ways",
        Holds::List(WAY, ""),
        LeftOut::Taken("distance is used"),
        "[ { from = \"pile\", distance = \"25 yd\" } ]",
        "The ways that lead to the zone, where there are several stockpiles or something to pass. In place of distance.",
    ),
    key(
        "distance",
        Holds::Figure(Kind::Way),
        LeftOut::Taken("ways are used"),
        "\"25 yd\"",
        "How far the loader drives from the stockpile to the zone, one way.",
    ),
    key(
        "walk",
        Holds::ByName(Kind::Walk, "the distance to each zone named"),
        LeftOut::Taken("walking takes no time"),
        "{ \"south\" = \"30 yd\" }",
        "How far rakers walk from here to other zones; the same is taken for the way back.",
    ),
];
pub(crate) const WAY: &[Key] = &[
    key(
        "from",
        Holds::Text,
        LeftOut::Taken("the only stockpile"),
        "\"pile\"",
        "The stockpile it comes from.",
    ),
    key(
        "distance",
        Holds::Figure(Kind::Way),
        LeftOut::Needed("give distance = \"25 yd\" or \"23 m\""),
        "\"25 yd\"",
        "How long it is, one way.",
    ),
    key(
        "passes",
        Holds::List(ON_WAY, "or the name of a pass alone"),
        LeftOut::Taken("there is nothing to pass"),
        "[ { pass = \"gate\", share = \"40 %\" } ]",
        "The gates, bridges and narrow places on it, in the order of the loaded trip.",
    ),
];
pub(crate) const ON_WAY: &[Key] = &[
    key("pass", Holds::Name, LeftOut::Needed(PASSES_RIGHT), "\"gate\"", "The pass of this name."),
    key(
        "share",
        Holds::Figure(Kind::PlaceOnWay),
        LeftOut::Taken("passes lie evenly spread along the way"),
        "\"40 %\"",
        "Where it lies: share of the way from the stockpile.",
    ),
];
pub(crate) const PASSES_RIGHT: &str =
    "write passes = [ \"field gate\" ] or [ { pass = \"field gate\", share = \"40 %\" } ]";
pub(crate) const NO_LIMIT: &str = "no limit";
/// Most heaps of room that make sense.
pub(crate) const MOST_ROOM: u32 = 1000;
