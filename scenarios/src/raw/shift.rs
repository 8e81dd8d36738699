//! `[shift]`

use crate::clock::Days;
use crate::document::{Node, Value};
use crate::fields::{Fields, Item};
use crate::ledger::{At, Ledger};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[&str] = &["start", "end", "breaks", "set_up", "clean_up"];
const MOST_BREAKS: usize = 20;

/// Hours of work as typed.
#[derive(Default)]
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
pub(crate) struct RawBreak {
    pub(crate) from: At<f64>,
    pub(crate) to: At<f64>,
}

impl RawShift {
    pub(super) fn read(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        let start = fields.get("start").and_then(|item| item.clock(Days::Every, ledger));
        Self {
            start_is_wrong: start.is_none() && fields.has("start"),
            start,
            end: fields.get("end").and_then(|item| end(&item, ledger)),
            end_is_said: fields.has("end"),
            breaks: breaks(fields, ledger),
            breaks_are_said: fields.has("breaks"),
            set_up: fields.law("set_up", Kind::Stretch, ledger),
            clean_up: fields.law("clean_up", Kind::Stretch, ledger),
        }
    }
}

fn end(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case("none") => None,
        _ => item.clock(Days::Every, ledger),
    }
}

fn breaks(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Vec<RawBreak> {
    let Some(item) = fields.get("breaks") else {
        return Vec::new();
    };
    let right = "write breaks = [ \"12:00-12:30\" ]";
    let list = match &item.node.value {
        Value::List(list) if list.len() <= MOST_BREAKS => list,
        Value::List(list) => {
            let what = format!("there are {} breaks a day, which is absurdly many", list.len());
            item.wrong(what, format!("give at most {MOST_BREAKS}"), ledger);
            return Vec::new();
        }
        other => {
            item.wrong(format!("this is {}, where a list of breaks is wanted", other.name()), right, ledger);
            return Vec::new();
        }
    };
    list.iter().filter_map(|node| one_break(&Item { node, place: item.place.clone() }, ledger)).collect()
}

fn one_break(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<RawBreak> {
    let right = "write a break as \"12:00-12:30\" or { from = \"12:00\", to = \"12:30\" }";
    let (from, to) = match &item.node.value {
        Value::Table(_) => {
            let fields = Fields::of(item, &["from", "to"], ledger)?;
            let from = fields.need("from", right, ledger).and_then(|item| item.clock(Days::Every, ledger));
            let to = fields.need("to", right, ledger).and_then(|item| item.clock(Days::Every, ledger));
            (from?, to?)
        }
        Value::Text(text) => {
            let Some((from, to)) = text.split_once(['-', '–']) else {
                item.wrong("this is not a stretch of the clock", right, ledger);
                return None;
            };
            let half = |text: &str, ledger: &mut Ledger<'_>| {
                let node = Node { value: Value::Text(text.trim().to_owned()), ..item.node.clone() };
                let read = Item { node: &node, place: item.place.clone() }.clock(Days::Every, ledger);
                read.map(|at| At { typed: item.node.typed.clone(), ..at })
            };
            (half(from, ledger)?, half(to, ledger)?)
        }
        _ => {
            item.wrong("this is not a stretch of the clock", right, ledger);
            return None;
        }
    };
    if from.value >= to.value {
        item.wrong("this break ends before it begins", right, ledger);
        return None;
    }
    Some(RawBreak { from, to })
}
