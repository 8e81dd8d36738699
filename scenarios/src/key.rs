//! What the reader knows of a key: what it holds, within which limits, what is taken where it is left out, and what it means.

pub(crate) mod alternative;
pub(crate) mod crew;
pub(crate) mod finish;
pub(crate) mod loader;
pub(crate) mod material;
pub(crate) mod money;
pub(crate) mod pass;
pub(crate) mod raker;
pub(crate) mod sections;
pub(crate) mod shift;
pub(crate) mod spread;
pub(crate) mod stockpile;
pub(crate) mod top;
pub(crate) mod zone;

use crate::defaults::Usual;
use crate::units::kind::Kind;

/// A key of a table.
pub(crate) struct Key {
    pub(crate) name: &'static str,
    pub(crate) holds: Holds,
    pub(crate) left_out: LeftOut,
    /// A value as it could stand in a file.
    pub(crate) example: &'static str,
    /// What it means, in the trade's words.
    pub(crate) means: &'static str,
}

/// What a key holds.
#[derive(Clone, Copy)]
pub(crate) enum Holds {
    /// The name of a thing.
    Name,
    /// Any other text.
    Text,
    /// What belongs to a quantity that is given as a table, in words.
    Itself(&'static str),
    /// One quantity.
    Figure(Kind),
    /// A quantity in one of the ways that are taken.
    Given(Kind, Takes),
    /// A quantity that may differ from one time to the next.
    Law(Kind),
    /// How a quantity differs, around 1.
    Spread,
    /// A whole number from the first to the second.
    Count(u32, u32),
    /// The same, or this word.
    CountOr(u32, u32, &'static str),
    Truth,
    /// One of these words.
    Word(fn() -> Vec<&'static str>),
    /// A time of any day.
    Clock,
    /// The same, or this word.
    ClockOr(&'static str),
    /// A time of one of the days of the job.
    DayAndClock,
    Date,
    Currency,
    /// A table with keys of its own.
    Table(&'static [Key]),
    /// A list of tables with keys of their own; what else may stand there, in words.
    List(&'static [Key], &'static str),
    /// A table whose keys are names; what it gives for each, in words.
    ByName(Kind, &'static str),
    /// A table of changes.
    Changes,
}

/// Which ways of giving a quantity are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Takes {
    /// All three; a distribution tells how loads differ unless it says `by = "days"`.
    Loads,
    /// All three; a distribution always tells how days differ.
    Days,
    /// One figure; low, typical and high; a distribution only with `by = "days"`.
    DaysIfSaid,
    /// One figure or low, typical and high.
    NoLaw,
    /// As `Loads`, but of the distributions only those whose inverse is known.
    Inverted,
}

/// What is taken where a key is left out.
#[derive(Clone, Copy)]
pub(crate) enum LeftOut {
    /// It may not be; how to give it.
    Needed(&'static str),
    /// A figure of the built-in table, and what more there is to say of it.
    Usual(&'static Usual, &'static str),
    /// A share by which it differs on the whole (coefficient of variation), from the built-in table.
    Differs(f64),
    /// What is taken, in words.
    Taken(&'static str),
}

pub(crate) const fn key(
    name: &'static str,
    holds: Holds,
    left_out: LeftOut,
    example: &'static str,
    means: &'static str,
) -> Key {
    Key { name, holds, left_out, example, means }
}

/// A kind of table, of which a file has one or several.
pub(crate) struct Section {
    /// As it stands in a file: `[[zone]]`; empty at the top.
    pub(crate) heading: &'static str,
    pub(crate) keys: &'static [Key],
    /// What it describes.
    pub(crate) means: &'static str,
}
