//! `summary.json` of a comparison: everything that stands on the screen, for programs.

use crate::compare::Comparison;
use crate::compare::findings::ComparisonFindings;
use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{Reading, bytes};
use serde::Serialize;

#[derive(Serialize)]
struct Summary<'a> {
    provenance: &'a Provenance,
    reading: Reading,
    differences_are: &'static str,
    units: &'static str,
    #[serde(flatten)]
    findings: &'a ComparisonFindings,
}

/// Everything a comparison says.
pub(crate) fn comparison_json(
    comparison: &Comparison,
    findings: &ComparisonFindings,
) -> Result<Vec<u8>, ExportError> {
    bytes(&Summary {
        provenance: &comparison.provenance,
        reading: Reading::new(),
        differences_are: "the first job less the other, run by run on the same days and loads; above 0 where the other saves; seconds of \
                          the time it is judged by, and money",
        units: comparison.units.word(),
        findings,
    })
}
