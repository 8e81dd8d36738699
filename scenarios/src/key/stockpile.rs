//! Keys of `[[stockpile]]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::defaults;
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every stockpile a name of its own"),
        "\"heap by the road\"",
        "What the stockpile is called; ways name it.",
    ),
    key(
        "on_hand",
        Holds::Given(Kind::Volume, Takes::Days),
        LeftOut::Taken("nothing lies there when work begins"),
        "\"34 yd3\"",
        "What lies there, loose, when work begins; by the ton too (\"30 tons\").",
    ),
    key(
        "price",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$380\"",
        "What the material on hand costs, all of it together.",
    ),
    key(
        "carriage",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing: it is in the price"),
        "\"$90\"",
        "What it costs to bring it.",
    ),
    key(
        "truckload",
        Holds::Figure(Kind::Delivery),
        LeftOut::Usual(&defaults::TRUCKLOAD, "or the most frequent volume of a delivery"),
        "\"18 yd3\"",
        "What a truck usually brings; what to order more is told in truckloads.",
    ),
    key("face", Holds::Count(1, 20), LeftOut::Taken("1"), "2", "How many loaders can load there at a time."),
    key(
        "deliveries",
        Holds::List(DELIVERY, ""),
        LeftOut::Taken("nothing more comes"),
        "[ { at = \"10:30\", volume = \"18 yd3\" } ]",
        "What trucks bring while the job goes on. Keep people clear of a reversing truck.",
    ),
];
pub(crate) const DELIVERY: &[Key] = &[
    key(
        "at",
        Holds::DayAndClock,
        LeftOut::Needed(DELIVERY_RIGHT),
        "\"day 2 09:00\"",
        "When the material is there to be loaded.",
    ),
    key(
        "volume",
        Holds::Given(Kind::Delivery, Takes::Days),
        LeftOut::Needed(DELIVERY_RIGHT),
        "\"18 yd3\"",
        "What the truck brings, loose; by the ton too.",
    ),
    key(
        "late",
        Holds::Law(Kind::Stretch),
        LeftOut::Taken("it comes on time"),
        "{ low = \"0 min\", typical = \"10 min\", high = \"40 min\" }",
        "How late it comes.",
    ),
    key(
        "price",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$380\"",
        "What its material costs.",
    ),
    key(
        "carriage",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing: it is in the price"),
        "\"$90\"",
        "What it costs to bring it.",
    ),
];
pub(crate) const DELIVERY_RIGHT: &str = "write deliveries = [ { at = \"10:30\", volume = \"20 yd3\" } ]";
