//! The tables of a file, and where a key belongs.

use super::top::TOP;
use super::{
    Section, alternative, crew, finish, loader, material, money, pass, raker, shift, spread, stockpile, zone,
};

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

/// Where a table usually stands among those of a file.
pub(crate) fn order_of(kind: &str) -> usize {
    SECTIONS.iter().position(|section| kind_in(section.heading) == kind).unwrap_or(0)
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
