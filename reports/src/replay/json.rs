//! `replay.json`: what one run yields, for programs.

use crate::forecast::{Provenance, seconds};
use crate::render::ExportError;
use crate::render::json::{Reading, Told, bytes};
use scenarios::Scenario;
use serde::Serialize;
use sim::Replay;

#[derive(Serialize)]
struct OneRun<'a> {
    provenance: &'a Provenance,
    scenario: Told<'a>,
    reading: Reading,
    run: u32,
    finish_working_s: f64,
    finish_clock_s: f64,
    completion_working_s: f64,
    completion_clock_s: f64,
    loads: u32,
    placed_m3: f64,
    left_over_m3: f64,
    short_m3: f64,
    fuel_l: Option<f64>,
    labour_h: f64,
    cost: Option<f64>,
}

/// What one replayed run yields.
///
/// # Errors
/// If the document cannot be written.
pub fn replay_json(
    scenario: &Scenario,
    units: scenarios::units::System,
    replay: &Replay,
    provenance: &Provenance,
) -> Result<Vec<u8>, ExportError> {
    let (o, start) = (&replay.outcome, scenario.job.shift.start_s);
    bytes(&OneRun {
        provenance,
        scenario: Told::new(scenario, units),
        reading: Reading::new(),
        run: o.run,
        finish_working_s: seconds(o.finish.working),
        finish_clock_s: start + seconds(o.finish.clock),
        completion_working_s: seconds(o.completion.working),
        completion_clock_s: start + seconds(o.completion.clock),
        loads: o.loads,
        placed_m3: o.placed_m3,
        left_over_m3: o.left_over_m3,
        short_m3: o.short_m3,
        fuel_l: Some(o.fuel_l).filter(|_| crate::findings::is_fuelled(&scenario.job)),
        labour_h: o.labour_h,
        cost: Some(o.cost).filter(|_| crate::findings::is_priced(&scenario.job)),
    })
}
