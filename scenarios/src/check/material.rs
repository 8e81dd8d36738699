//! The material is known, or all that must be known of it is said.

use crate::diagnostics::Diagnostics;
use crate::materials::{Material, find, materials, materials_called};
use crate::nearest::nearest;
use crate::raw::Raw;
use crate::units::{System, density, figure};

/// Most materials that are listed to choose from.
const MOST: usize = 8;

pub(super) fn check(raw: &Raw, diagnostics: &mut Diagnostics<'_>) {
    let Some(material) = &raw.material else { return };
    let Some(name) = &material.name else { return };
    if find(&name.value).is_some() || material.has_density && material.has_fill_factor {
        return;
    }
    let own = "or give density and fill_factor yourself";
    let several = materials_called(&name.value);
    if !several.is_empty() {
        let system = raw.units.as_ref().map_or_else(|| diagnostics.usual_system(), |units| units.value);
        let right = format!("write one of {}, {own}", listed(&several, system));
        diagnostics.wrong_at(name, "this can be one of several materials, which differ", right);
        return;
    }
    let near = nearest(&name.value, materials().iter().map(|material| material.name.as_str()));
    let right = match near {
        Some(near) => format!("the nearest in the built-in table is \"{near}\"; use it, {own}"),
        None => format!("heapcast materials lists those of the built-in table; use one, {own}"),
    };
    diagnostics.wrong_at(name, "this material is not in the built-in table", right);
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
