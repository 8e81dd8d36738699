//! The material is known, or all that must be known of it is said.

use crate::diagnostics::{At, Diagnostics};
use crate::materials::{Material, find, materials, materials_called};
use crate::nearest::nearest;
use crate::raw::{Raw, RawMaterial};
use crate::units::{System, density, figure};

/// Most materials that are listed to choose from.
const MOST: usize = 8;

pub(super) fn check(raw: &Raw) -> Diagnostics {
    let unknown = |material: &RawMaterial| {
        let name = material.name.as_ref()?;
        let known = find(&name.value).is_some() || material.has_density && material.has_fill_factor;
        (!known).then(|| unknown(name, raw.system()))
    };
    raw.material.as_ref().and_then(unknown).unwrap_or_default()
}

fn unknown(name: &At<String>, system: System) -> Diagnostics {
    let own = "or give density and fill_factor yourself";
    let several = materials_called(&name.value);
    if !several.is_empty() {
        let right = format!("write one of {}, {own}", listed(&several, system));
        return Diagnostics::of_value(name, "this can be one of several materials, which differ", right);
    }
    let near = nearest(&name.value, materials().iter().map(|material| material.name.as_str()));
    let right = match near {
        Some(near) => format!("the nearest in the built-in table is \"{near}\"; use it, {own}"),
        None => format!("heapcast materials lists those of the built-in table; use one, {own}"),
    };
    Diagnostics::of_value(name, "this material is not in the built-in table", right)
}

/// Materials with what differs between them.
fn listed(all: &[&Material], system: System) -> String {
    let one = |material: &&Material| {
        let weighs = density(material.density_kg_per_m3[1], system);
        format!("\"{}\" ({weighs}, settles {} %)", material.name, figure(material.settling * 100.0))
    };
    let shown: Vec<String> = all.iter().take(MOST).map(one).collect();
    let more = if all.len() > MOST { ", ..." } else { "" };
    format!("{}{more}", shown.join(", "))
}
