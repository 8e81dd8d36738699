//! `[shift]`

use crate::diagnostics::{At, Read};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::key::shift::{BREAK, BREAK_RIGHT, NONE};
use crate::parse::Listed;
use crate::parse::clock::{self, Days};
use sim::Distribution;

const MOST_BREAKS: usize = 20;

/// Hours of work as typed.
#[derive(Clone, Debug, Default)]
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
#[derive(Clone, Debug)]
pub(crate) struct RawBreak {
    pub(crate) from: At<f64>,
    pub(crate) to: At<f64>,
}

impl RawShift {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        let start = fields.clock("start");
        Self {
            start_is_wrong: start.is_none() && fields.has("start"),
            start,
            end: fields.under("end", end).flatten(),
            end_is_said: fields.has("end"),
            breaks: fields.under("breaks", breaks).unwrap_or_default(),
            breaks_are_said: fields.has("breaks"),
            set_up: fields.law("set_up"),
            clean_up: fields.law("clean_up"),
        }
    }
}

fn end(item: &Item<'_>) -> Read<Option<At<f64>>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case(NONE) => Read::made(None),
        _ => item.clock(Days::Every).map(Some),
    }
}

fn breaks(item: &Item<'_>) -> Read<Vec<RawBreak>> {
    let listed = Listed {
        most: MOST_BREAKS,
        too_many: |count| format!("there are {count} breaks a day, which is absurdly many"),
        wanted: ", where a list of breaks is wanted",
        right: "write breaks = [ \"12:00-12:30\" ]",
    };
    item.list(&listed).each(|item| one_break(&item))
}

fn one_break(item: &Item<'_>) -> Read<RawBreak> {
    let both = match &item.node.value {
        Value::Table(_) => item.table(BREAK, |fields| fields.clock("from").zip(fields.clock("to"))),
        Value::Text(text) => match clock::stretch(text) {
            Some([from, to]) => item.read(from).and_then(|from| item.read(to).map(|to| (from, to))),
            None => item.wrong("this is not a stretch of the clock", BREAK_RIGHT),
        },
        _ => item.wrong("this is not a stretch of the clock", BREAK_RIGHT),
    };
    both.and_then(|(from, to)| match from.value < to.value {
        true => Read::made(RawBreak { from, to }),
        false => item.wrong("this break ends before it begins", BREAK_RIGHT),
    })
}
