//! One thing more: a copy of the last with a name of its own, and everything it needs.

use super::copies::{own_name, pairs};
use super::draft::{Draft, Step};
use super::fault::{Fault, by_hand};
use super::figures::system;
use super::key::{names, thing};
use super::knob::somebody_rakes;
use super::written::typed;
use super::{breaks, gates};
use crate::document::Value;
use crate::document::quoted;
use crate::parse::clock::{self, DAY, Days, LAST_DAY};
use crate::signs::printable;
use crate::starter::Answers;
use crate::starter::usual::DELIVERY_AT;
use crate::units::clock as shown;

/// Adds a thing.
pub(super) fn add(draft: &mut Draft, kind: &str) -> Result<(), Fault> {
    match kind.split_once('.').unwrap_or((kind, "")) {
        ("zone", "") => copied(draft, "zone", &["walk"]),
        ("loader", "") => copied(draft, "loader", &["count"]),
        ("raker", "") => raker(draft),
        ("pass", "") => gates::pass(draft),
        ("delivery", pile) => delivery(draft, pile),
        ("break", "") => breaks::one_more(draft),
        _ => Err(Fault::new(
            format!("a {} cannot be added here", printable(kind)),
            "add a zone, loader, raker, pass, delivery or break",
        )),
    }
}

/// A copy of the last of a kind, without these keys.
fn copied(draft: &mut Draft, kind: &str, without: &[&str]) -> Result<(), Fault> {
    let path = [Step::Key(kind.to_owned())];
    let Some(Value::List(list)) = draft.node(&path).map(|node| &node.value) else { return Err(by_hand()) };
    let Some(Value::Table(last)) = list.last().map(|node| &node.value) else { return Err(by_hand()) };
    let name = own_name(draft, kind, names(draft.table(), kind).last().map_or("", String::as_str));
    let pairs = pairs(draft, last, without, &[("name", quoted(&name))]);
    draft.push(&path, &pairs)
}

fn raker(draft: &mut Draft) -> Result<(), Fault> {
    match names(draft.table(), "raker").is_empty() {
        true => draft.push(&[Step::Key("raker".into())], &[("name".into(), quoted("helper"))])?,
        false => copied(draft, "raker", &["count"])?,
    }
    somebody_rakes(draft)
}

/// How much later the next truck comes \[s\].
const NEXT_TRUCK: f64 = 2.0 * 3600.0;

fn delivery(draft: &mut Draft, pile: &str) -> Result<(), Fault> {
    let list = |at| [Step::Key("stockpile".into()), Step::At(at), Step::Key("deliveries".into())];
    let piles = names(draft.table(), "stockpile").len();
    let at = match pile {
        "" => (0..piles).rev().find(|at| draft.node(&list(*at)).is_some()).unwrap_or(0),
        pile => thing(draft, "stockpile", pile)?,
    };
    let path = list(at);
    let last = match draft.node(&path).map(|node| &node.value) {
        Some(Value::List(list)) => list.last().map(|node| &node.value),
        _ => None,
    };
    let pairs = match last {
        Some(Value::Table(last)) => {
            let was = last.get("at").map(|node| typed(draft.written(node))).unwrap_or_default();
            pairs(draft, last, &[], &[("at", quoted(&later(&was)))])
        }
        _ => {
            let said =
                draft.node(&[Step::Key("stockpile".into()), Step::At(at), Step::Key("truckload".into())]);
            let truckload = said.map(|node| draft.written(node).to_owned());
            let usual = || quoted(&Answers::usual(system(draft)).truckload);
            vec![
                ("at".to_owned(), quoted(DELIVERY_AT)),
                ("volume".to_owned(), truckload.unwrap_or_else(usual)),
            ]
        }
    };
    match piles {
        0 => Err(by_hand()),
        _ => draft.push(&path, &pairs),
    }
}

/// When the next truck comes after one; in the night, at the same time on the next day.
fn later(was: &str) -> String {
    let Ok(at) = clock::parse(was, Days::To(LAST_DAY)) else { return DELIVERY_AT.into() };
    let same_day = (at / DAY).floor() == ((at + NEXT_TRUCK) / DAY).floor();
    let next = at + if same_day { NEXT_TRUCK } else { DAY };
    match (next / DAY) as u32 + 1 > LAST_DAY {
        true => was.to_owned(),
        false => shown(next, clock::clock_of(was)),
    }
}
