//! `[material]`

use super::key::{Holds, Key, LeftOut, key};
use crate::diagnostics::At;
use crate::fields::Fields;
use crate::materials;
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
#[derive(Clone, Debug)]
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
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        let (name, density) = (fields.text("name"), fields.figure("density"));
        // Its price may be by the ton.
        fields.around.density = known_density(&name, &density);
        Self {
            fill_factor: fields.given("fill_factor"),
            settling: fields.figure("settling"),
            price: fields.figure("price"),
            has_density: fields.has("density"),
            has_fill_factor: fields.has("fill_factor"),
            name,
            density,
        }
    }

    /// As typed, or that of the built-in table \[kg/m3\].
    pub(crate) fn known_density(&self) -> Option<f64> {
        known_density(&self.name, &self.density)
    }
}

fn known_density(name: &Option<At<String>>, density: &Option<At<f64>>) -> Option<f64> {
    let of_the_table = || Some(materials::find(&name.as_ref()?.value)?.density_kg_per_m3[1]);
    density.as_ref().map(|density| density.value).or_else(of_the_table)
}
