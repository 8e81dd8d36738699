//! Keys of `[shift]`.

use super::{Holds, Key, LeftOut, key};
use crate::defaults;
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "start",
        Holds::Clock,
        LeftOut::Usual(&defaults::START, ""),
        "\"08:00\"",
        "When work begins, every day.",
    ),
    key(
        "end",
        Holds::ClockOr(NONE),
        LeftOut::Taken("the crew goes on until it is done"),
        "\"5:00 pm\"",
        "When work ends for the day; what is left is done the next day.",
    ),
    key(
        "breaks",
        Holds::List(BREAK, "or a text such as \"12:00-12:30\""),
        LeftOut::Taken("there are none"),
        "[ \"12:00-12:30\" ]",
        "When everybody has a break, every day.",
    ),
    key(
        "set_up",
        Holds::Law(Kind::Stretch),
        LeftOut::Taken("it takes no time"),
        "\"20 min\"",
        "Getting ready, before the first load: unloading the machine, walking the ground.",
    ),
    key(
        "clean_up",
        Holds::Law(Kind::Stretch),
        LeftOut::Taken("it takes no time"),
        "\"15 min\"",
        "Cleaning up, after the last heap is raked.",
    ),
];
pub(crate) const BREAK: &[Key] = &[
    key("from", Holds::Clock, LeftOut::Needed(BREAK_RIGHT), "\"12:00\"", "When it begins."),
    key("to", Holds::Clock, LeftOut::Needed(BREAK_RIGHT), "\"12:30\"", "When it ends."),
];
pub(crate) const BREAK_RIGHT: &str =
    "write a break as \"12:00-12:30\" or { from = \"12:00\", to = \"12:30\" }";
pub(crate) const NONE: &str = "none";
