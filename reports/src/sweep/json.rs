//! `summary.json` of a sweep: everything that stands on the screen, for programs.

use crate::findings::{Assumed, Warnings, assumed, warnings};
use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{JobSummary, Reading, bytes};
use crate::sweep::Sweep;
use crate::sweep::findings::{SHARES, SweepFindings};
use serde::Serialize;

#[derive(Serialize)]
struct Document<'a> {
    provenance: &'a Provenance,
    scenario: JobSummary<'a>,
    reading: Reading,
    percentiles: [f64; 4],
    sweep: &'a SweepFindings,
    warnings: Warnings,
    assumed: Assumed,
}

/// Everything a sweep says.
pub(crate) fn sweep_json(sweep: &Sweep, findings: &SweepFindings) -> Result<Vec<u8>, ExportError> {
    bytes(&Document {
        provenance: &sweep.provenance,
        scenario: JobSummary::new(&sweep.base, sweep.units),
        reading: Reading::new(),
        percentiles: SHARES,
        sweep: findings,
        warnings: warnings(&sweep.cautions()),
        assumed: assumed(&sweep.assumptions()),
    })
}
