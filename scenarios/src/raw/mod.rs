//! What was typed: one file per kind of thing, every value in the unit its kind is kept in, with its place in the text.
//!
//! Reading a thing tells what is wrong with each of its values taken alone. What the values mean together is checked in
//! [`crate::check`].

mod alternative;
mod change;
mod crew;
mod finish;
mod key;
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
pub(crate) use change::{RIGHT as CHANGE_RIGHT, RawChange, changes, kind_of, make_all, quoted};
pub(crate) use crew::RawCrew;
pub(crate) use finish::{RawFinish, Rule};
pub(crate) use key::{Holds, Key, LeftOut, Section, key};
pub(crate) use loader::{RawLoader, RawStoppages};
pub(crate) use material::RawMaterial;
pub(crate) use money::RawMoney;
pub(crate) use pass::RawPass;
pub(crate) use raker::RawRaker;
pub(crate) use shift::RawShift;
pub(crate) use spread::{RawSpread, Switched};
pub(crate) use stockpile::{RawDelivery, RawStockpile};
pub(crate) use zone::{RawPassOnWay, RawWay, RawZone, room};

use crate::diagnostics::{At, Place, Read};
use crate::document::{Table, Value};
use crate::fields::{Around, Fields, Item};
use crate::files::Files;
use crate::parse::{self, Listed, printable};
use crate::source::{Said, Source};
use crate::units::System;
use sim::FillOrder;

/// Keys at the top of a file, above the first table.
const TOP: &[Key] = &[
    key(
        "title",
        Holds::Text,
        LeftOut::Taken("the name of the file"),
        "\"Round pen, Saturday\"",
        "What the job is called in everything that is shown.",
    ),
    key(
        "units",
        Holds::Word(|| UNITS.iter().map(|(word, _)| *word).collect()),
        LeftOut::Taken("the units the file uses most"),
        "\"us\"",
        "The units of what is shown. Figures in the file may carry any units, mixed as you like.",
    ),
    key("date", Holds::Date, LeftOut::Taken("days are counted"), "2026-04-18", "The date of the first day."),
    key(
        "fill_order",
        Holds::Word(|| FILL_ORDERS.iter().map(|(word, _)| *word).collect()),
        LeftOut::Taken("\"as listed\""),
        "\"farthest first\"",
        "Which zone the loaders fill first.",
    ),
];

/// The tables of a file and their keys, in the order in which a file is usually written.
pub(crate) const SECTIONS: &[Section] = &[
    Section { heading: "", keys: TOP, means: "Above the first table: what concerns the whole job." },
    Section { heading: "[material]", keys: material::KEYS, means: "What is moved." },
    Section {
        heading: "[[zone]]",
        keys: zone::KEYS,
        means: "A place that takes material. A file has one or several.",
    },
    Section {
        heading: "[[stockpile]]",
        keys: stockpile::KEYS,
        means: "A place that material is taken from. A file has one or several.",
    },
    Section {
        heading: "[[loader]]",
        keys: loader::KEYS,
        means: "A machine with its operator, or a barrow with its person. A file has one or several.",
    },
    Section { heading: "[[raker]]", keys: raker::KEYS, means: "A person who rakes the heaps out." },
    Section { heading: "[crew]", keys: crew::KEYS, means: "How the people work together." },
    Section {
        heading: "[[pass]]",
        keys: pass::KEYS,
        means: "A gate, a bridge or a narrow place that machines go through one after the other.",
    },
    Section { heading: "[shift]", keys: shift::KEYS, means: "The hours of work." },
    Section { heading: "[finish]", keys: finish::KEYS, means: "When the job is done." },
    Section {
        heading: "[spread]",
        keys: spread::KEYS,
        means: "How days and loads differ. spread = \"none\" at the top, in place of this table, switches chance off.",
    },
    Section { heading: "[money]", keys: money::KEYS, means: "Prices of the whole job." },
    Section {
        heading: "[[alternative]]",
        keys: alternative::KEYS,
        means: "Another way to do the job, for heapcast compare or --alternative.",
    },
];

/// The name of a table without its brackets.
fn kind_in(heading: &str) -> &str {
    heading.trim_matches(['[', ']'])
}

/// All words a file may have at its top: keys and tables.
pub(crate) fn top() -> impl Iterator<Item = &'static str> {
    let keys = TOP.iter().map(|key| key.name);
    keys.chain(SECTIONS[1..].iter().map(|section| kind_in(section.heading)))
}

/// Where a key that stands in the wrong place belongs, if it is a known one.
pub(crate) fn home_of(key: &str) -> Option<String> {
    if top().any(|word| word == key) {
        return Some("at the top of the file, above the first table".into());
    }
    let spreads = [("[spread.days]", spread::DAYS_KEYS), ("[spread.loads]", spread::LOADS_KEYS)];
    let tables =
        SECTIONS[1..].iter().filter(|section| !["[spread]", "[[alternative]]"].contains(&section.heading));
    let all = tables.map(|section| (section.heading, section.keys)).chain(spreads);
    let homes: Vec<&str> =
        all.filter(|(_, keys)| keys.iter().any(|its| its.name == key)).map(|(heading, _)| heading).collect();
    (!homes.is_empty()).then(|| format!("under {}", homes.join(" or ")))
}

/// What to write instead of a key of an earlier version.
pub(crate) fn instead_of(key: &str) -> Option<&'static str> {
    loader::FORMER.iter().find(|(former, _)| *former == key).map(|(_, right)| *right)
}

/// Most things of one kind.
const MOST_THINGS: usize = 200;

/// A whole file as typed.
#[derive(Clone, Debug)]
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
    /// What it says beside its values.
    pub(crate) said: Said,
    /// Keys at the top, those that misspelt ones probably stand for included.
    keys: Vec<&'static str>,
}

impl Raw {
    /// The units that messages are in: those the file asks for, else those it uses most.
    pub(crate) fn system(&self) -> System {
        self.units.as_ref().map_or(self.said.system, |units| units.value)
    }

    /// Whether a key stands at the top, right or wrong.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.keys.contains(&key)
    }
}

/// Reads a whole file.
pub(crate) fn read(table: &Table, files: &dyn Files, source: &Source<'_>) -> Read<Raw> {
    let words: Vec<&'static str> = top().collect();
    let around = Around { files, density: None };
    let mut read = Fields::read(table, Place::default(), around, TOP, &words, |top| {
        let material = section(top, "material", material::KEYS, RawMaterial::read);
        top.around.density = material.as_ref().and_then(RawMaterial::known_density);
        Some(Raw {
            keys: words.iter().copied().filter(|key| top.has(key)).collect(),
            title: top.text("title"),
            units: top.word("units", UNITS),
            date: top.under("date", |item| item.read(parse::date::date(&item.node.value))),
            fill_order: top.word("fill_order", FILL_ORDERS),
            material,
            zones: things(top, "zone", zone::KEYS, RawZone::read),
            stockpiles: things(top, "stockpile", stockpile::KEYS, RawStockpile::read),
            loaders: things(top, "loader", loader::KEYS, RawLoader::read),
            rakers: things(top, "raker", raker::KEYS, RawRaker::read),
            crew: section(top, "crew", crew::KEYS, RawCrew::read).unwrap_or_default(),
            passes: things(top, "pass", pass::KEYS, RawPass::read),
            shift: section(top, "shift", shift::KEYS, RawShift::read).unwrap_or_default(),
            finish: section(top, "finish", finish::KEYS, RawFinish::read).unwrap_or_default(),
            spread: top.get("spread").and_then(|item| top.take(RawSpread::read(&item))).unwrap_or_default(),
            money: section(top, "money", money::KEYS, RawMoney::read).unwrap_or_default(),
            said: Said::NOTHING,
        })
    });
    let said = source.said(&mut read.diagnostics);
    read.map(|raw| Raw { said, ..raw })
}

const UNITS: &[(&str, System)] = &[("us", System::Us), ("metric", System::Metric)];
const FILL_ORDERS: &[(&str, FillOrder)] = &[
    ("as listed", FillOrder::AsListed),
    ("farthest first", FillOrder::FarthestFirst),
    ("nearest first", FillOrder::NearestFirst),
    ("in turn", FillOrder::InTurn),
    ("most room left", FillOrder::MostRoom),
];

/// A table of which a file has at most one.
fn section<'d, T>(
    top: &mut Fields<'d>,
    name: &str,
    keys: &'static [Key],
    read: fn(&mut Fields<'d>) -> T,
) -> Option<T> {
    let item = top.get(name)?;
    top.take(match item.node.value {
        Value::List(_) => {
            let right = format!("there is one {name}: write [{name}] in single brackets");
            item.wrong("this is a list, where one table is wanted", right)
        }
        _ => item.table(keys, |fields| Some(read(fields))),
    })
}

/// Things of which a file may have several, each under its own heading.
fn things<'d, T>(
    top: &mut Fields<'d>,
    kind: &str,
    keys: &'static [Key],
    read: fn(&mut Fields<'d>, Named) -> T,
) -> Vec<T> {
    let Some(item) = top.get(kind) else {
        return Vec::new();
    };
    let listed = Listed {
        most: MOST_THINGS,
        too_many: |count| format!("there are {count} of them, which is absurdly many"),
        wanted: &format!(", not a list of {kind}s"),
        right: &format!("write [[{kind}]] in double brackets, once for each {kind}"),
    };
    let mut number = 0;
    let all = item.list(&listed).each(|mut item| {
        number += 1;
        item.place = place_of_thing(&item, kind, number);
        item.table(keys, |fields| {
            let named = Named { name: fields.text("name"), place: item.place.clone() };
            Some(read(fields, named))
        })
    });
    top.take(all).unwrap_or_default()
}

/// Where a thing stands: by its name, or by its number if it has none.
fn place_of_thing(item: &Item<'_>, kind: &str, number: usize) -> Place {
    let span = Some(item.node.span.clone());
    if let Value::Table(table) = &item.node.value
        && let Some(Value::Text(name)) = table.get("name").map(|node| &node.value)
        && !name.trim().is_empty()
    {
        let name = printable(name.trim());
        return Place { words: format!("{kind} \"{name}\""), path: format!("{kind}.{name}"), span };
    }
    let number = format!("{kind} {number}");
    Place { words: number.clone(), path: number, span }
}

/// The name of a thing, and the place where it stands.
#[derive(Clone, Debug)]
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
