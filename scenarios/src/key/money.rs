//! Keys of `[money]`.

use super::{Holds, Key, LeftOut, key};
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "currency",
        Holds::Currency,
        LeftOut::Taken("the currency of the prices in the file"),
        "\"$\"",
        "The currency of all prices. Needed only where no price in the file says it.",
    ),
    key(
        "fuel_price",
        Holds::Figure(Kind::FuelPrice),
        LeftOut::Taken("fuel costs nothing"),
        "\"$4/gal\"",
        "What fuel costs. Counts where a loader says what it burns.",
    ),
    key(
        "mobilisation",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$120\"",
        "What it costs to get the machine there and back.",
    ),
];
