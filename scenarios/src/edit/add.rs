//! One thing more: a copy of the last with a name of its own, and everything it needs.

use super::Fault;
use super::draft::{Draft, Pair, Step, by_hand};
use super::key::{names, thing};
use super::knob::{all_counts, somebody_rakes};
use super::usual::{self, DELIVERY_AT};
use super::written::{quoted, typed};
use crate::check::names::copies;
use crate::document::{Table, Value};
use crate::parse::clock::{self, DAY, Days, LAST_DAY};
use crate::signs::{LONGEST_NAME, likeness, printable};
use crate::starter::Answers;
use crate::units::{System, clock as shown};

/// Adds a thing.
pub(super) fn add(draft: &mut Draft, kind: &str) -> Result<(), Fault> {
    match kind.split_once('.').unwrap_or((kind, "")) {
        ("zone", "") => copied(draft, "zone", &["walk"]),
        ("loader", "") => copied(draft, "loader", &["count"]),
        ("raker", "") => raker(draft),
        ("pass", "") => super::gates::pass(draft),
        ("delivery", pile) => delivery(draft, pile),
        ("break", "") => super::breaks::one_more(draft),
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

/// The keys of a table with their values, but for some; others get values of their own.
pub(super) fn pairs(draft: &Draft, table: &Table, without: &[&str], own: &[(&str, String)]) -> Vec<Pair> {
    let all = table.in_order().into_iter().filter(|(key, _)| !without.contains(key));
    all.map(|(key, entry)| {
        let own = own.iter().find(|(own, _)| *own == key).map(|(_, value)| value.clone());
        (key.to_owned(), own.unwrap_or_else(|| inline(draft, &entry.node)))
    })
    .collect()
}

/// A value as it would stand behind its key.
fn inline(draft: &Draft, node: &crate::document::Node) -> String {
    use super::draft::key_text;
    use super::lines::{Form, form};
    match (form(draft.text(), node), &node.value) {
        (Form::Inline, _) => draft.written(node).to_owned(),
        (_, Value::List(list)) => {
            let all: Vec<String> = list.iter().map(|node| inline(draft, node)).collect();
            format!("[ {} ]", all.join(", "))
        }
        (_, Value::Table(table)) => {
            let all = table.in_order().into_iter();
            let all: Vec<String> = all
                .map(|(key, entry)| format!("{} = {}", key_text(key), inline(draft, &entry.node)))
                .collect();
            format!("{{ {} }}", all.join(", "))
        }
        _ => draft.written(node).to_owned(),
    }
}

/// A name like another, with a number that nothing of the kind has.
pub(super) fn own_name(draft: &Draft, kind: &str, like: &str) -> String {
    let names = names(draft.table(), kind);
    let counts = all_counts(draft, kind);
    let taken: Vec<String> = names
        .iter()
        .zip(&counts)
        .flat_map(|(name, count)| {
            copies(name, (*count).min(sim::MOST_LOADERS.max(sim::MOST_RAKERS) as u32))
                .into_iter()
                .chain([name.clone()])
        })
        .map(|name| likeness(&name))
        .collect();
    if ["loader", "raker"].contains(&kind) {
        return ordinal(like, &taken);
    }
    let stem = like.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let stem = if stem.is_empty() { kind } else { stem };
    let stem: String = stem.chars().take(LONGEST_NAME - 6).collect();
    let mut number = 2;
    loop {
        let name = format!("{} {number}", stem.trim_end());
        if !taken.contains(&likeness(&name)) {
            return name;
        }
        number += 1;
    }
}

const ORDINALS: [&str; 11] = [
    "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
];

/// `second barrow`: copies of a thing have a number behind their name already.
fn ordinal(like: &str, taken: &[String]) -> String {
    let (first, rest) = like.split_once(' ').unwrap_or((like, ""));
    let stem = if ORDINALS.contains(&first) && !rest.is_empty() { rest } else { like };
    let stem: String = stem.chars().take(LONGEST_NAME - 12).collect();
    let words =
        ORDINALS.iter().map(|word| (*word).to_owned()).chain((13..).map(|number| format!("{number}th")));
    let mut names = words.map(|word| format!("{word} {}", stem.trim_end()));
    names.find(|name| !taken.contains(&likeness(name))).unwrap_or_default()
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
            let usual = || quoted(&Answers::usual(usual::system(draft)).truckload);
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
        false => shown(next, clock_of(was)),
    }
}

/// The way a time of the clock is written.
pub(super) fn clock_of(typed: &str) -> System {
    if typed.to_lowercase().trim_end().ends_with('m') { System::Us } else { System::Metric }
}
