//! `[material]`

use super::key::{Holds, Key, LeftOut, key};
use crate::diagnostics::{At, Diagnostics};
use crate::fields::Fields;
use crate::materials;
use crate::parse;
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;

pub(super) const KEYS: &[Key] = &[
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

/// The material as typed.
#[derive(Debug)]
pub(crate) struct RawMaterial {
    pub(crate) name: Option<At<String>>,
    pub(crate) density: Option<At<f64>>,
    pub(crate) fill_factor: Option<At<Given>>,
    pub(crate) settling: Option<At<f64>>,
    pub(crate) price: Option<At<f64>>,
    /// Keys typed, right or wrong.
    pub(crate) has_density: bool,
    pub(crate) has_fill_factor: bool,
}

impl RawMaterial {
    pub(super) fn read(fields: &Fields<'_>, diagnostics: &mut Diagnostics<'_>) -> Self {
        // Its price may be by the ton.
        let density = fields.figure("density", diagnostics);
        let of_the_table = || {
            let name = parse::text(&fields.get("name")?.node.value, "").ok()?;
            Some(materials::find(&name)?.density_kg_per_m3[1])
        };
        diagnostics.density = density.as_ref().map(|density| density.value).or_else(of_the_table);
        Self {
            name: fields.text("name", diagnostics),
            density,
            fill_factor: fields.given("fill_factor", diagnostics),
            settling: fields.figure("settling", diagnostics),
            price: fields.figure("price", diagnostics),
            has_density: fields.has("density"),
            has_fill_factor: fields.has("fill_factor"),
        }
    }
}
