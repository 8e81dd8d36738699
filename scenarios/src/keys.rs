//! The reference of all keys of a scenario file, made from what the reader itself knows of them.

use crate::key::sections::SECTIONS;
use crate::key::{Holds, Key, LeftOut, Takes};
use crate::quantity;
use crate::units::dimension::Dimension;
use crate::units::kind::Kind;
use crate::units::{System, clock, duration, figure, rate, speed, volume};

/// A table of a scenario file, or a table within one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyTable {
    /// How it stands in a file: `[[zone]]`, `[[zone]] ways` for the tables in a list under a key; empty for what stands above
    /// the first table.
    pub heading: String,
    /// What it describes, in a sentence.
    pub means: &'static str,
    /// Its keys, in the order in which they are usually written.
    pub keys: Vec<KeyLine>,
}

/// What is to be known of a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyLine {
    /// The key.
    pub name: &'static str,
    /// What it means, in the trade's words.
    pub means: &'static str,
    /// What it holds, in which ways it may be given, and within which limits, in words.
    pub holds: String,
    /// What is taken where it is left out, in words; "it must be given" where nothing is.
    pub left_out: String,
    /// Where a figure of the built-in table comes from, with its status.
    pub from: Option<&'static str>,
    /// A value as it could stand in a file.
    pub example: &'static str,
}

const QUANTITY: &str = "A quantity is one figure with its unit (\"20 s\"); or a table of low, typical and high; or a table of a family with its \
                        keys: constant (value), uniform (least, greatest), triangular and pert (least, mode, greatest), normal \
                        (mean, sd), lognormal and gamma (mean, cv), weibull (mean, shape), exponential (mean), observed (values, \
                        or file and column; unit).";

/// Every table of a scenario file with all its keys.
///
/// ```
/// let loader = scenarios::keys().into_iter().find(|table| table.heading == "[[loader]]").unwrap();
/// let heaped = loader.keys.iter().find(|key| key.name == "heaped").unwrap();
/// assert_eq!(heaped.holds, "a volume, one figure; from 1 l to 50 m3");
/// assert_eq!((heaped.left_out.as_str(), heaped.example), ("it must be given", "\"14 ft3\""));
/// ```
pub fn keys() -> Vec<KeyTable> {
    let mut tables = Vec::new();
    for section in SECTIONS {
        table(section.heading.to_owned(), section.means, section.keys, &mut tables);
    }
    table("a quantity".into(), QUANTITY, quantity::keys::KEYS, &mut tables);
    tables
}

/// The keys that words can mean: of a table (`loader`), of one name (`loader.heaped`, `speed loaded`), or those whose meaning
/// has all of the words in it. Tables without such a key are left out.
///
/// ```
/// let found = |words| -> Vec<String> {
///     let tables = scenarios::keys_called(words);
///     tables.iter().flat_map(|t| t.keys.iter().map(|k| format!("{} {}", t.heading, k.name))).collect()
/// };
/// assert_eq!(found("speed loaded"), ["[[loader]] speed_loaded"]);
/// assert_eq!(found("pass width"), ["[[pass]] width"]);
/// assert!(found("moon dust").is_empty());
/// ```
pub fn keys_called(words: &str) -> Vec<KeyTable> {
    let wanted = words_of(words);
    let all = keys();
    if wanted.is_empty() {
        return Vec::new();
    }
    type Has<'w> = Box<dyn Fn(&KeyTable, &KeyLine) -> bool + 'w>;
    let named = |wanted: &[String], text: &str| words_of(text) == *wanted;
    let ways: [Has<'_>; 4] = [
        Box::new(|table, _| named(&wanted, &table.heading)),
        Box::new(|_, key| named(&wanted, key.name)),
        Box::new(|table, key| named(&wanted, &format!("{} {}", table.heading, key.name))),
        Box::new(|table, key| {
            let said = words_of(&format!("{} {} {}", table.heading, key.name, key.means));
            wanted.iter().all(|word| said.contains(word))
        }),
    ];
    let by = |has: &Has<'_>| -> Vec<KeyTable> {
        let with = |table: &KeyTable| {
            let keys = table.keys.iter().filter(|key| has(table, key)).cloned().collect();
            KeyTable { keys, ..table.clone() }
        };
        all.iter().map(with).filter(|table| !table.keys.is_empty()).collect()
    };
    ways.iter().map(by).find(|found| !found.is_empty()).unwrap_or_default()
}

fn words_of(text: &str) -> Vec<String> {
    let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect()
}

fn table(heading: String, means: &'static str, keys: &'static [Key], tables: &mut Vec<KeyTable>) {
    let lines = keys.iter().map(line).collect();
    tables.push(KeyTable { heading: heading.clone(), means, keys: lines });
    for key in keys {
        if let Holds::Table(inner) | Holds::List(inner, _) = key.holds {
            table(format!("{heading} {}", key.name), key.means, inner, tables);
        }
    }
}

fn line(key: &Key) -> KeyLine {
    let Key { name, means, example, .. } = *key;
    let from = match key.left_out {
        LeftOut::Usual(usual, _) => Some(usual.from),
        LeftOut::Differs(_) => Some(crate::defaults::COMMON),
        _ => None,
    };
    KeyLine { name, means, holds: holds(key.holds), left_out: left_out(key), from, example }
}

fn holds(holds: Holds) -> String {
    match holds {
        Holds::Name => "a name in quotes".into(),
        Holds::Text => "a text in quotes".into(),
        Holds::Itself(words) => words.into(),
        Holds::Figure(kind) => measured(kind, "one figure"),
        Holds::Given(kind, takes) => measured(
            kind,
            match takes {
                Takes::Loads => "one figure, low, typical and high, or a distribution",
                Takes::Days => "one figure, low, typical and high, or a distribution of days",
                Takes::DaysIfSaid => {
                    "one figure, low, typical and high, or a distribution with by = \"days\""
                }
                Takes::NoLaw => "one figure, or low, typical and high",
                Takes::Inverted => {
                    "one figure, low, typical and high, or a lognormal or observed distribution"
                }
            },
        ),
        Holds::Law(kind) => measured(kind, "one figure, low, typical and high, or a distribution"),
        Holds::Spread => {
            let [least, most] = Kind::Spread.facts().limits;
            format!(
                "a share from {least} to {most} (coefficient of variation), low, typical and high around 1, a distribution, or \
                 \"none\""
            )
        }
        Holds::Count(least, most) => format!("a whole number from {least} to {most}"),
        Holds::CountOr(least, most, word) => format!("a whole number from {least} to {most}, or \"{word}\""),
        Holds::Truth => "true or false".into(),
        Holds::Word(words) => {
            let words: Vec<String> = words().iter().map(|word| format!("\"{word}\"")).collect();
            format!("one of {}", words.join(", "))
        }
        Holds::Clock => "a time of the clock".into(),
        Holds::ClockOr(word) => format!("a time of the clock, or \"{word}\""),
        Holds::DayAndClock => "a time of the clock, with the day before it from the second day on".into(),
        Holds::Date => "a date".into(),
        Holds::Currency => "a sign or three capital letters in quotes".into(),
        Holds::Table(_) => "a table with keys of its own, see there".into(),
        Holds::List(_, "") => "a list of tables with keys of their own, see there".into(),
        Holds::List(_, or) => format!("a list of tables with keys of their own, see there, {or}"),
        Holds::ByName(kind, what) => format!("a table of names: {what}, {}", limits(kind)),
        Holds::Changes => "a table of keys and values".into(),
    }
}

/// Within which limits a value may lie, or what it is, in words.
pub(crate) fn within(holding: Holds) -> String {
    match holding {
        Holds::Figure(kind) | Holds::Given(kind, _) | Holds::Law(kind) => limits(kind),
        Holds::Name | Holds::Text => "a name, at most 80 characters".into(),
        other => holds(other),
    }
}

fn measured(kind: Kind, ways: &str) -> String {
    format!("{}, {ways}; {}", kind.facts().dimension.name(), limits(kind))
}

fn limits(kind: Kind) -> String {
    let [least, most] = kind.facts().limits;
    format!("from {least} to {most}")
}

fn left_out(key: &Key) -> String {
    match (key.left_out, key.holds) {
        (LeftOut::Needed(_), _) => "it must be given".into(),
        (LeftOut::Taken(words), _) => words.into(),
        (LeftOut::Differs(cv), _) => format!("about {} %", figure(cv * 100.0)),
        (LeftOut::Usual(usual, more), holds) => {
            let shown = match holds {
                Holds::Clock => clock(usual.value, System::Metric),
                Holds::Figure(kind) | Holds::Given(kind, _) => shown(usual.value, kind.facts().dimension),
                _ => figure(usual.value),
            };
            if more.is_empty() { shown } else { format!("{shown} {more}") }
        }
    }
}

/// A figure of the built-in table in both systems of units.
fn shown(value: f64, dimension: Dimension) -> String {
    let both = |show: fn(f64, System) -> String| {
        format!("{} ({})", show(value, System::Us), show(value, System::Metric))
    };
    match dimension {
        Dimension::TIME => duration(value),
        Dimension::SPEED => both(speed),
        Dimension::VOLUME => both(volume),
        Dimension::RATE => both(rate),
        Dimension::TIME_PER_VOLUME => {
            let yard = value * crate::units::exact::cubic_yards();
            format!("{} s/yd3 ({} s/m3)", figure(yard), figure(value))
        }
        _ => format!("{} %", figure(value * 100.0)),
    }
}

#[cfg(test)]
mod tests;
