//! `summary.json` of a quote: everything that stands on the screen, for programs.

use crate::findings::{Assumed, Warnings, assumed, warnings};
use crate::provenance::Provenance;
use crate::quote::findings::Asked;
use crate::quote::{Quote, QuoteFindings};
use crate::render::ExportError;
use crate::render::json::{JobSummary, Reading, bytes};
use serde::Serialize;

#[derive(Serialize)]
struct Summary<'a> {
    provenance: &'a Provenance,
    scenario: JobSummary<'a>,
    reading: Reading,
    asked: &'a Asked,
    quote: &'a QuoteFindings,
    warnings: Warnings,
    assumed: Assumed,
}

/// Everything a quote says.
pub(crate) fn quote_json(quote: &Quote) -> Result<Vec<u8>, ExportError> {
    let scenario = &quote.scenario;
    bytes(&Summary {
        provenance: &quote.provenance,
        scenario: JobSummary::new(scenario, quote.units),
        reading: Reading::new(),
        asked: &quote.asked,
        quote: &quote.findings,
        warnings: warnings(&scenario.cautions),
        assumed: assumed(&scenario.assumptions),
    })
}
