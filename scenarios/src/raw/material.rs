//! `[material]`

use crate::diagnostics::At;
use crate::fields::Fields;
use crate::materials;
use crate::quantity::given::Given;

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

    /// As typed, or that of the built-in table; of a material that it does not know none \[share of the depth\].
    pub(crate) fn known_settling(&self) -> f64 {
        let of_the_table = || self.name.as_ref().map_or(0.0, |name| materials::settling_of(&name.value));
        self.settling.as_ref().map_or_else(of_the_table, |settling| settling.value)
    }
}

fn known_density(name: &Option<At<String>>, density: &Option<At<f64>>) -> Option<f64> {
    let of_the_table = || Some(materials::find(&name.as_ref()?.value)?.density_kg_per_m3[1]);
    density.as_ref().map(|density| density.value).or_else(of_the_table)
}
