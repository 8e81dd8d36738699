//! The material of the job.

use super::makings::{Makings, Sense, mean};
use crate::diagnostics::Read;
use crate::materials::{self, Material as Row};
use crate::units::{density, figure};

/// The material made, the row of the table used, and the settling.
pub(super) struct Made {
    pub(super) material: sim::Material,
    /// The row whose fill factor was used.
    pub(super) table: Option<&'static Row>,
    pub(super) settling: Settling,
}

/// Settling that is used only where an area and a depth are given.
pub(super) struct Settling {
    pub(super) value: f64,
    /// Where it comes from, if the file does not say it.
    pub(super) from: Option<String>,
}

pub(super) fn make(makings: &Makings<'_>) -> Read<Made> {
    Read::of(|diagnostics| {
        let raw = makings.raw.material.as_ref()?;
        let name = raw.name.as_ref()?;
        let row = materials::find(&name.value);
        if let Some(row) = row.filter(|row| !row.name.eq_ignore_ascii_case(&name.value)) {
            let words = format!("\"{}\" is taken as \"{}\"", name.value, row.name);
            diagnostics.assume(
                "material.name",
                words,
                "built-in table of materials: the only one that goes by these words",
            );
        }
        let density_kg_per_m3 = match (&raw.density, row) {
            (Some(density), _) => density.value,
            (None, Some(row)) => {
                let [low, typical, high] = row.density_kg_per_m3;
                let show = |value| density(value, makings.system);
                let words = if low < high {
                    format!("{} weighs {}, met from {} to {}", row.name, show(typical), show(low), show(high))
                } else {
                    format!("{} weighs {}", row.name, show(typical))
                };
                diagnostics.assume("material.density", words, row.density_from());
                typical
            }
            (None, None) => return None,
        };
        let (fill_factor, table) = match (&raw.fill_factor, row) {
            (Some(given), _) => (mean(&given.value, Sense::Direct), None),
            (None, Some(row)) => {
                let mean = mean(&crate::quantity::given::Given::Days(row.fill()), Sense::Direct);
                let [low, _, high] = row.fill_factor.map(|share| figure(share * 100.0));
                let mean_words = figure(mean * 100.0);
                let words =
                    format!("buckets are filled to {mean_words} % of heaped on average ({low} to {high} %)");
                diagnostics.assume("material.fill_factor", words, row.fill_from());
                (mean, Some(row))
            }
            (None, None) => return None,
        };
        let settling_from =
            || row.map_or_else(|| crate::defaults::NOTHING_SAID.into(), |row| row.settling_from());
        let from = raw.settling.is_none().then(settling_from);
        let settling = Settling { value: raw.known_settling(), from };
        let name = row.map_or_else(|| name.value.clone(), |row| row.name.clone());
        Some(Made { material: sim::Material { name, density_kg_per_m3, fill_factor }, table, settling })
    })
}
