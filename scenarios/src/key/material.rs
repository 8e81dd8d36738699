//! Keys of `[material]`.

use super::{Holds, Key, LeftOut, Takes, key};
use crate::units::kind::Kind;

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("name the material, such as \"wood chips, green\""),
        "\"wood chips, green\"",
        "What is moved. A name of the built-in table (heapcast materials lists it) brings weight, fill and settling with it; for any other give density and fill_factor.",
    ),
    key(
        "density",
        Holds::Figure(Kind::Density),
        LeftOut::Taken("that of the built-in table of materials"),
        "\"500 lb/yd3\"",
        "What it weighs, loose. What is weighed on the spot is better than any table, above all for wet material.",
    ),
    key(
        "fill_factor",
        Holds::Given(Kind::FillFactor, Takes::Loads),
        LeftOut::Taken("that of the built-in table of materials"),
        "\"95 %\"",
        "How full the bucket is on average: share of its heaped capacity.",
    ),
    key(
        "settling",
        Holds::Figure(Kind::Settling),
        LeftOut::Taken("that of the built-in table of materials; 0 % for a material that is not in it"),
        "\"20 %\"",
        "Share of the loose depth that is lost as the material settles. Counts where a zone is given by area and depth.",
    ),
    key(
        "price",
        Holds::Figure(Kind::PricePerVolume),
        LeftOut::Taken("nothing"),
        "\"$18/yd3\"",
        "What the material costs; by the ton too (\"$25/ton\"). Prices of single piles and deliveries are added.",
    ),
];
