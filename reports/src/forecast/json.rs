//! `summary.json`: everything that stands on the screen, for programs.

use crate::findings::{
    Amount, Assumed, DoneBy, HandbookFindings, LeftOver, ReliefFindings, Warnings, WhoWaits, amounts,
    assumed, done_by, handbook, left_over, relief, warnings, who_waits,
};
use crate::forecast::run::Forecast;
use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{JobSummary, Reading, bytes};
use serde::Serialize;

#[derive(Serialize)]
struct Summary<'a> {
    provenance: &'a Provenance,
    scenario: JobSummary<'a>,
    reading: Reading,
    percentiles: &'a [f64],
    done_by: DoneBy,
    handbook: HandbookFindings,
    who_waits: WhoWaits,
    relief: ReliefFindings,
    amounts: Vec<Amount>,
    left_over: LeftOver,
    warnings: Warnings,
    assumed: Assumed,
    typical_run: u32,
}

/// Everything a forecast says.
pub(crate) fn summary_json(forecast: &Forecast) -> Result<Vec<u8>, ExportError> {
    let scenario = &forecast.scenario;
    bytes(&Summary {
        provenance: &forecast.provenance,
        scenario: JobSummary::new(scenario, forecast.units),
        reading: Reading::new(),
        percentiles: &forecast.percentiles,
        done_by: done_by(forecast),
        handbook: handbook(forecast),
        who_waits: who_waits(forecast),
        relief: relief(forecast),
        amounts: amounts(forecast),
        left_over: left_over(forecast),
        warnings: warnings(&scenario.cautions),
        assumed: assumed(&scenario.assumptions),
        typical_run: forecast.typical.outcome.run,
    })
}
