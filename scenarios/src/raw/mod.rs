//! What was typed: one file per kind of thing, every value in the unit its kind is kept in, with its place in the text.
//!
//! Reading a thing tells what is wrong with each of its values taken alone. What the values mean together is checked in
//! [`crate::check`].

mod alternative;
mod change;
mod crew;
mod finish;
mod loader;
mod material;
mod money;
mod pass;
mod raker;
mod shift;
mod spread;
mod stockpile;
mod zone;

pub(crate) use alternative::{RawAlternative, alternatives};
pub(crate) use change::{RIGHT as CHANGE_RIGHT, change, kind_of, quoted};
pub(crate) use crew::RawCrew;
pub(crate) use finish::{RawFinish, Rule};
pub(crate) use loader::{RawLoader, RawStoppages};
pub(crate) use material::RawMaterial;
pub(crate) use money::RawMoney;
pub(crate) use pass::RawPass;
pub(crate) use raker::RawRaker;
pub(crate) use shift::RawShift;
pub(crate) use spread::{DAYS, LOADS, RawSpread, Switched};
pub(crate) use stockpile::{RawDelivery, RawStockpile};
pub(crate) use zone::{RawPassOnWay, RawWay, RawZone};

use crate::document::{Table, Value};
use crate::fields::{Fields, Item, printable};
use crate::ledger::{At, Ledger, Place};
use crate::units::System;
use sim::FillOrder;

/// All keys a file may have at its top.
pub(crate) const TOP: &[&str] = &[
    "title",
    "units",
    "date",
    "fill_order",
    "material",
    "zone",
    "stockpile",
    "loader",
    "raker",
    "crew",
    "pass",
    "shift",
    "finish",
    "spread",
    "money",
    "alternative",
];

/// Tables and their keys.
const TABLES: &[(&str, &[&str])] = &[
    ("[material]", material::KEYS),
    ("[[zone]]", zone::KEYS),
    ("[[stockpile]]", stockpile::KEYS),
    ("[[loader]]", loader::KEYS),
    ("[[raker]]", raker::KEYS),
    ("[crew]", crew::KEYS),
    ("[[pass]]", pass::KEYS),
    ("[shift]", shift::KEYS),
    ("[finish]", finish::KEYS),
    ("[spread.days]", &DAYS),
    ("[spread.loads]", &LOADS),
    ("[money]", money::KEYS),
];

/// Where a key that stands in the wrong place belongs, if it is a known one.
pub(crate) fn home_of(key: &str) -> Option<String> {
    if TOP.contains(&key) {
        return Some("at the top of the file, above the first table".into());
    }
    let homes: Vec<&str> =
        TABLES.iter().filter(|(_, keys)| keys.contains(&key)).map(|(table, _)| *table).collect();
    (!homes.is_empty()).then(|| format!("under {}", homes.join(" or ")))
}

/// What to write instead of a key of an earlier version.
pub(crate) fn instead_of(key: &str) -> Option<&'static str> {
    loader::FORMER.iter().find(|(former, _)| *former == key).map(|(_, right)| *right)
}

/// Most things of one kind.
const MOST_THINGS: usize = 200;

/// A whole file as typed.
pub(crate) struct Raw {
    pub(crate) title: Option<At<String>>,
    pub(crate) units: Option<At<System>>,
    pub(crate) date: Option<At<jiff::civil::Date>>,
    pub(crate) fill_order: Option<At<FillOrder>>,
    pub(crate) material: Option<RawMaterial>,
    pub(crate) zones: Vec<RawZone>,
    pub(crate) stockpiles: Vec<RawStockpile>,
    pub(crate) loaders: Vec<RawLoader>,
    pub(crate) rakers: Vec<RawRaker>,
    pub(crate) crew: RawCrew,
    pub(crate) passes: Vec<RawPass>,
    pub(crate) shift: RawShift,
    pub(crate) finish: RawFinish,
    pub(crate) spread: RawSpread,
    pub(crate) money: RawMoney,
    /// Keys at the top, those that misspelt ones probably stand for included.
    keys: Vec<&'static str>,
}

impl Raw {
    /// Whether a key stands at the top, right or wrong.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.keys.contains(&key)
    }
}

/// Reads a whole file.
pub(crate) fn read(table: &Table, ledger: &mut Ledger<'_>) -> Raw {
    let top = Fields::open(table, Place::default(), TOP, ledger);
    let material =
        section(&top, "material", material::KEYS, ledger).map(|fields| RawMaterial::read(&fields, ledger));
    Raw {
        keys: TOP.iter().copied().filter(|key| top.has(key)).collect(),
        title: top.text("title", ledger),
        units: top
            .get("units")
            .and_then(|item| item.word(&[("us", System::Us), ("metric", System::Metric)], ledger)),
        date: top.get("date").and_then(|item| date(&item, ledger)),
        fill_order: top.get("fill_order").and_then(|item| item.word(FILL_ORDERS, ledger)),
        material,
        zones: things(&top, "zone", zone::KEYS, RawZone::read, ledger),
        stockpiles: things(&top, "stockpile", stockpile::KEYS, RawStockpile::read, ledger),
        loaders: things(&top, "loader", loader::KEYS, RawLoader::read, ledger),
        rakers: things(&top, "raker", raker::KEYS, RawRaker::read, ledger),
        crew: section(&top, "crew", crew::KEYS, ledger)
            .map_or_else(RawCrew::default, |fields| RawCrew::read(&fields, ledger)),
        passes: things(&top, "pass", pass::KEYS, RawPass::read, ledger),
        shift: section(&top, "shift", shift::KEYS, ledger)
            .map_or_else(RawShift::default, |fields| RawShift::read(&fields, ledger)),
        finish: section(&top, "finish", finish::KEYS, ledger)
            .map_or_else(RawFinish::default, |fields| RawFinish::read(&fields, ledger)),
        spread: RawSpread::read(&top, ledger),
        money: section(&top, "money", money::KEYS, ledger)
            .map_or_else(RawMoney::default, |fields| RawMoney::read(&fields, ledger)),
    }
}

const FILL_ORDERS: &[(&str, FillOrder)] = &[
    ("as listed", FillOrder::AsListed),
    ("farthest first", FillOrder::FarthestFirst),
    ("nearest first", FillOrder::NearestFirst),
    ("in turn", FillOrder::InTurn),
    ("most room left", FillOrder::MostRoom),
];

fn date(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<At<jiff::civil::Date>> {
    let right = "write a date such as 2026-04-18";
    let has_time = match &item.node.value {
        Value::Time(time) => time.date.is_some() && time.time.is_some(),
        Value::Text(text) => {
            text.trim().get(..10).is_some_and(|date| date.parse::<jiff::civil::Date>().is_ok())
                && text.trim().len() > 10
        }
        _ => false,
    };
    if has_time {
        let right = "write the date alone, such as 2026-04-18; the hour work begins is start under [shift]";
        item.wrong("a date is wanted here without a time", right, ledger);
        return None;
    }
    let read = match &item.node.value {
        Value::Time(time) => time.date.and_then(|date| {
            let part = |number: u8| i8::try_from(number).ok();
            jiff::civil::Date::new(i16::try_from(date.year).ok()?, part(date.month)?, part(date.day)?).ok()
        }),
        Value::Text(text) => text.trim().parse().ok(),
        _ => None,
    };
    if read.is_none() {
        item.wrong("this is not a date there is", right, ledger);
    }
    read.map(|date| item.at(date))
}

/// A table of which a file has at most one.
fn section<'d>(top: &Fields<'d>, name: &str, keys: &[&str], ledger: &mut Ledger<'_>) -> Option<Fields<'d>> {
    let item = top.get(name)?;
    if let Value::List(_) = item.node.value {
        let right = format!("there is one {name}: write [{name}] in single brackets");
        item.wrong("this is a list, where one table is wanted", right, ledger);
        return None;
    }
    Fields::of(&item, keys, ledger)
}

/// Things of which a file may have several, each under its own heading.
fn things<T>(
    top: &Fields<'_>,
    kind: &str,
    keys: &[&str],
    read: fn(&Fields<'_>, Named, &mut Ledger<'_>) -> T,
    ledger: &mut Ledger<'_>,
) -> Vec<T> {
    let Some(item) = top.get(kind) else {
        return Vec::new();
    };
    let list = match &item.node.value {
        Value::List(list) if list.len() <= MOST_THINGS => list,
        Value::List(list) => {
            let what = format!("there are {} of them, which is absurdly many", list.len());
            item.wrong(what, format!("give at most {MOST_THINGS}"), ledger);
            return Vec::new();
        }
        other => {
            let right = format!("write [[{kind}]] in double brackets, once for each {kind}");
            item.wrong(format!("this is {}, not a list of {kind}s", other.name()), right, ledger);
            return Vec::new();
        }
    };
    let mut all = Vec::new();
    for (i, node) in list.iter().enumerate() {
        let number = format!("{kind} {}", i + 1);
        let place = Place { words: number.clone(), path: number, span: Some(node.span.clone()) };
        if let Some((fields, named)) = thing(&Item { node, place }, kind, keys, ledger) {
            all.push(read(&fields, named, ledger));
        }
    }
    all
}

/// The name of a thing, and the place where it stands.
pub(crate) struct Named {
    pub(crate) name: Option<At<String>>,
    pub(crate) place: Place,
}

impl Named {
    /// The name for messages.
    pub(crate) fn shown(&self) -> &str {
        self.name.as_ref().map_or("", |name| name.value.as_str())
    }
}

fn thing<'d>(
    item: &Item<'d>,
    kind: &str,
    keys: &[&str],
    ledger: &mut Ledger<'_>,
) -> Option<(Fields<'d>, Named)> {
    let mut item = item.clone();
    if let Value::Table(table) = &item.node.value
        && let Some(Value::Text(name)) = table.get("name").map(|node| &node.value)
        && !name.trim().is_empty()
    {
        let name = printable(name.trim());
        item.place.words = format!("{kind} \"{name}\"");
        item.place.path = format!("{kind}.{name}");
    }
    let fields = Fields::of(&item, keys, ledger)?;
    let name = fields
        .need("name", &format!("give every {kind} a name of its own"), ledger)
        .and_then(|item| item.text("write a name in quotes", ledger));
    Some((fields, Named { name, place: item.place.at(&item.node.span) }))
}
