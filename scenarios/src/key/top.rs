//! Keys above the first table.

use super::{Holds, Key, LeftOut, key};
use crate::units::System;
use sim::FillOrder;

/// The key of the date.
pub(crate) const DATE: &Key = &TOP[2];
/// Keys at the top of a file, above the first table.
pub(crate) const TOP: &[Key] = &[
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
pub(crate) const UNITS: &[(&str, System)] = &[("us", System::Us), ("metric", System::Metric)];
pub(crate) const FILL_ORDERS: &[(&str, FillOrder)] = &[
    ("as listed", FillOrder::AsListed),
    ("farthest first", FillOrder::FarthestFirst),
    ("nearest first", FillOrder::NearestFirst),
    ("in turn", FillOrder::InTurn),
    ("most room left", FillOrder::MostRoom),
];
