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
mod named;
mod pass;
mod raker;
mod shift;
mod spread;
mod stockpile;
mod zone;

pub(crate) use alternative::{RawAlternative, alternatives};
pub(crate) use change::{
    KINDS, RawChange, changes, in_quotes, kind_of, make_all, none_called, piece, pieces,
};
pub(crate) use crew::RawCrew;
pub(crate) use finish::RawFinish;
pub(crate) use loader::{RawLoader, RawStoppages};
pub(crate) use material::RawMaterial;
pub(crate) use money::RawMoney;
pub(crate) use named::Named;
pub(crate) use pass::RawPass;
pub(crate) use raker::RawRaker;
pub(crate) use shift::{RawBreak, RawShift};
pub(crate) use spread::{RawSpread, Switched};
pub(crate) use stockpile::{RawDelivery, RawStockpile};
pub(crate) use zone::{RawPassOnWay, RawWay, RawZone, room};

use crate::diagnostics::{At, Place, Read};
use crate::document::{Table, Value};
use crate::fields::{Around, Fields, Item};
use crate::files::Files;
use crate::key::sections::top as top_words;
use crate::key::top::{FILL_ORDERS, TOP, UNITS};
use crate::key::{self, Key};
use crate::parse::{self, Listed};
use crate::signs::printable;
use crate::source::{Said, Source};
use crate::units::System;
use sim::FillOrder;

/// Most things of one kind.
const MOST_THINGS: usize = 200;

/// A whole file as typed.
#[derive(Clone, Debug)]
pub(crate) struct Raw {
    pub(crate) title: Option<At<String>>,
    pub(crate) units: Option<At<System>>,
    pub(crate) date: Option<At<time::Date>>,
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
    let words: Vec<&'static str> = top_words().collect();
    let around = Around { files, density: None };
    let mut read = Fields::read(table, Place::default(), around, TOP, &words, |top| {
        let material = section(top, "material", key::material::KEYS, RawMaterial::read);
        top.around.density = material.as_ref().and_then(RawMaterial::known_density);
        Some(Raw {
            keys: words.iter().copied().filter(|key| top.has(key)).collect(),
            title: top.text("title"),
            units: top.word("units", UNITS),
            date: top.under("date", |item| item.read(parse::date::date(&item.node.value))),
            fill_order: top.word("fill_order", FILL_ORDERS),
            material,
            zones: things(top, "zone", key::zone::KEYS, RawZone::read),
            stockpiles: things(top, "stockpile", key::stockpile::KEYS, RawStockpile::read),
            loaders: things(top, "loader", key::loader::KEYS, RawLoader::read),
            rakers: things(top, "raker", key::raker::KEYS, RawRaker::read),
            crew: section(top, "crew", key::crew::KEYS, RawCrew::read).unwrap_or_default(),
            passes: things(top, "pass", key::pass::KEYS, RawPass::read),
            shift: section(top, "shift", key::shift::KEYS, RawShift::read).unwrap_or_default(),
            finish: section(top, "finish", key::finish::KEYS, RawFinish::read).unwrap_or_default(),
            spread: top.get("spread").and_then(|item| top.take(RawSpread::read(&item))).unwrap_or_default(),
            money: section(top, "money", key::money::KEYS, RawMoney::read).unwrap_or_default(),
            said: Said::NOTHING,
        })
    });
    let said = source.said(&mut read.diagnostics);
    read.map(|raw| Raw { said, ..raw })
}

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
