//! `summary.json` of a sweep: everything that stands on the screen, for programs.

use super::summary_json::{Reading, Told, bytes};
use super::table::ExportError;
use crate::findings::sweep::{SHARES, SweepSays};
use crate::findings::{Assumed, Warnings, assumed, warnings};
use crate::forecast::Provenance;
use crate::sweep::Sweep;
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
