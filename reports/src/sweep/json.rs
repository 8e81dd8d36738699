//! `summary.json` of a sweep: everything that stands on the screen, for programs.

use crate::findings::{Assumed, Warnings, assumed, warnings};
use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{Reading, Told, bytes};
use crate::sweep::Sweep;
use crate::sweep::findings::{SHARES, SweepSays};
use serde::Serialize;

#[derive(Serialize)]
struct Document<'a> {
    provenance: &'a Provenance,
    scenario: Told<'a>,
    reading: Reading,
    percentiles: [f64; 4],
    sweep: &'a SweepSays,
    warnings: Warnings,
    assumed: Assumed,
}

/// Everything a sweep says.
///
/// # Errors
/// If the document cannot be written.
pub fn sweep_json(sweep: &Sweep, says: &SweepSays) -> Result<Vec<u8>, ExportError> {
    bytes(&Document {
        provenance: &sweep.provenance,
        scenario: Told::new(&sweep.base, sweep.units),
        reading: Reading::new(),
        percentiles: SHARES,
        sweep: says,
        warnings: warnings(&sweep.cautions()),
        assumed: assumed(&sweep.assumptions()),
    })
}
