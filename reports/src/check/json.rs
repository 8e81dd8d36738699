//! What is known of a job before any run, for programs.

use crate::findings::{Assumed, Warnings, assumed, warnings};
use crate::render::ExportError;
use crate::render::json::{JobSummary, bytes};
use scenarios::Scenario;
use serde::Serialize;

#[derive(Serialize)]
struct Check<'a> {
    version: &'static str,
    file: &'a str,
    scenario_hash: &'a str,
    scenario: JobSummary<'a>,
    warnings: Warnings,
    assumed: Assumed,
}

/// Everything a check says.
pub(crate) fn check_json(
    scenario: &Scenario,
    units: scenarios::units::System,
) -> Result<Vec<u8>, ExportError> {
    bytes(&Check {
        version: env!("CARGO_PKG_VERSION"),
        file: &scenario.file,
        scenario_hash: &scenario.hash,
        scenario: JobSummary::new(scenario, units),
        warnings: warnings(&scenario.cautions),
        assumed: assumed(&scenario.assumptions),
    })
}
