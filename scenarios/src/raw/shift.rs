//! `[shift]`

use super::key::{Holds, Key, LeftOut, key};
use crate::defaults;
use crate::diagnostics::{At, Diagnostics};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::parse::Listed;
use crate::parse::clock::{self, Days};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[Key] = &[
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
const BREAK: &[Key] = &[
    key("from", Holds::Clock, LeftOut::Needed(BREAK_RIGHT), "\"12:00\"", "When it begins."),
    key("to", Holds::Clock, LeftOut::Needed(BREAK_RIGHT), "\"12:30\"", "When it ends."),
];
const BREAK_RIGHT: &str = "write a break as \"12:00-12:30\" or { from = \"12:00\", to = \"12:30\" }";
const NONE: &str = "none";
const MOST_BREAKS: usize = 20;

/// Hours of work as typed.
#[derive(Debug, Default)]
pub(crate) struct RawShift {
    pub(crate) start: Option<At<f64>>,
    pub(crate) start_is_wrong: bool,
    pub(crate) end: Option<At<f64>>,
    /// Whether the file says when the day ends, `"none"` included.
    pub(crate) end_is_said: bool,
    pub(crate) breaks: Vec<RawBreak>,
    /// Whether the file lists the breaks, an empty list included.
    pub(crate) breaks_are_said: bool,
    pub(crate) set_up: Option<At<Distribution>>,
    pub(crate) clean_up: Option<At<Distribution>>,
}

/// A break as typed.
#[derive(Debug)]
pub(crate) struct RawBreak {
    pub(crate) from: At<f64>,
    pub(crate) to: At<f64>,
}

impl RawShift {
    pub(super) fn read(fields: &Fields<'_>, diagnostics: &mut Diagnostics<'_>) -> Self {
        let start = fields.clock("start", diagnostics);
        Self {
            start_is_wrong: start.is_none() && fields.has("start"),
            start,
            end: fields.get("end").and_then(|item| end(&item, diagnostics)),
            end_is_said: fields.has("end"),
            breaks: breaks(fields, diagnostics),
            breaks_are_said: fields.has("breaks"),
            set_up: fields.law("set_up", diagnostics),
            clean_up: fields.law("clean_up", diagnostics),
        }
    }
}

fn end(item: &Item<'_>, diagnostics: &mut Diagnostics<'_>) -> Option<At<f64>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case(NONE) => None,
        _ => item.clock(Days::Every, diagnostics),
    }
}

fn breaks(fields: &Fields<'_>, diagnostics: &mut Diagnostics<'_>) -> Vec<RawBreak> {
    let Some(item) = fields.get("breaks") else {
        return Vec::new();
    };
    let right = "write breaks = [ \"12:00-12:30\" ]";
    let listed = Listed {
        most: MOST_BREAKS,
        too_many: |count| format!("there are {count} breaks a day, which is absurdly many"),
        wanted: ", where a list of breaks is wanted",
        right,
    };
    item.list(&listed, diagnostics).iter().filter_map(|item| one_break(item, diagnostics)).collect()
}

fn one_break(item: &Item<'_>, diagnostics: &mut Diagnostics<'_>) -> Option<RawBreak> {
    let right = BREAK_RIGHT;
    let (from, to) = match &item.node.value {
        Value::Table(_) => {
            let fields = Fields::of(item, BREAK, diagnostics)?;
            let (from, to) = (fields.clock("from", diagnostics), fields.clock("to", diagnostics));
            (from?, to?)
        }
        Value::Text(text) => {
            let Some([from, to]) = clock::stretch(text) else {
                item.wrong("this is not a stretch of the clock", right, diagnostics);
                return None;
            };
            let from = item.read(from, diagnostics)?;
            (item.at(from), item.at(item.read(to, diagnostics)?))
        }
        _ => {
            item.wrong("this is not a stretch of the clock", right, diagnostics);
            return None;
        }
    };
    if from.value >= to.value {
        item.wrong("this break ends before it begins", right, diagnostics);
        return None;
    }
    Some(RawBreak { from, to })
}
