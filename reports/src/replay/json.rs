//! `replay.json`: what one run yields, for programs.

use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{JobSummary, Reading, bytes};
use crate::render::table::{Object, outcome};
use scenarios::Scenario;
use serde::Serialize;
use sim::{Outcome, Replay};

#[derive(Serialize)]
struct OneRun<'a> {
    provenance: &'a Provenance,
    scenario: JobSummary<'a>,
    reading: Reading,
    #[serde(flatten)]
    run: Object<'a, 'a, Outcome>,
}

/// What one replayed run yields.
pub(crate) fn replay_json(
    scenario: &Scenario,
    units: scenarios::units::System,
    replay: &Replay,
    provenance: &Provenance,
) -> Result<Vec<u8>, ExportError> {
    let table = outcome(&scenario.job);
    bytes(&OneRun {
        provenance,
        scenario: JobSummary::new(scenario, units),
        reading: Reading::new(),
        run: table.object(&replay.outcome),
    })
}
