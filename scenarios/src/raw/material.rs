//! `[material]`

use crate::fields::Fields;
use crate::ledger::{At, Ledger};
use crate::materials;
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] = &["name", "density", "fill_factor", "settling", "price"];

/// The material as typed.
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
    pub(super) fn read(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Self {
        // Its price may be by the ton.
        let density = fields.figure("density", Kind::Density, ledger);
        let name = fields.text("name", &mut Ledger::new("", "", std::path::Path::new("")));
        let of_the_table = || Some(materials::find(&name?.value)?.density_kg_per_m3[1]);
        ledger.density = density.as_ref().map(|density| density.value).or_else(of_the_table);
        Self {
            name: fields
                .need("name", "name the material, such as \"wood chips, green\"", ledger)
                .and_then(|item| item.text("write a name in quotes", ledger)),
            density,
            fill_factor: fields.given("fill_factor", Kind::FillFactor, Takes::Loads, ledger),
            settling: fields.figure("settling", Kind::Settling, ledger),
            price: fields.figure("price", Kind::PricePerVolume, ledger),
            has_density: fields.has("density"),
            has_fill_factor: fields.has("fill_factor"),
        }
    }
}
