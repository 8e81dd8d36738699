//! `summary.json`: everything that stands on the screen, for programs.

use super::table::ExportError;
use crate::findings::{
    Amount, Assumed, DoneBy, HandbookSays, LeftOver, ReliefSays, Warnings, WhoWaits, amounts, assumed,
    done_by, handbook, left_over, relief, the_job, warnings, who_waits,
};
use crate::forecast::{Forecast, Provenance, seconds};
use scenarios::Scenario;
use serde::Serialize;
use sim::{LEVEL, Replay};

/// How the percentiles and intervals in the document are to be read.
#[derive(Serialize)]
pub(super) struct Reading {
    percentile_definition: &'static str,
    interval_confidence: f64,
    interval_method: &'static str,
    times: &'static str,
}

impl Reading {
    pub(super) fn new() -> Self {
        Self {
            percentile_definition: "Hyndman-Fan type 7",
            interval_confidence: LEVEL,
            interval_method: "percentiles: order statistics, distribution-free; means: Student's t; chances: Clopper-Pearson",
            times: "working times leave nights out; clock times are seconds after midnight of the first day",
        }
    }
}

/// What is known of the job before any run.
#[derive(Serialize)]
pub(super) struct Told<'a> {
    title: &'a str,
    job: String,
    date: Option<String>,
    units: &'static str,
    currency: Option<&'a str>,
    alternative: Option<&'a str>,
    changes: Vec<String>,
    alternatives: &'a [String],
}

impl<'a> Told<'a> {
    pub(super) fn new(scenario: &'a Scenario, units: scenarios::units::System) -> Self {
        Self {
            title: &scenario.title,
            job: the_job(scenario, units),
            date: scenario.date.map(|d| d.to_string()),
            units: units.word(),
            currency: Some(scenario.currency.as_str()).filter(|c| !c.is_empty()),
            alternative: scenario.alternative.as_deref(),
            changes: scenario.changes.iter().map(ToString::to_string).collect(),
            alternatives: &scenario.alternatives,
        }
    }
}

#[derive(Serialize)]
struct Summary<'a> {
    provenance: &'a Provenance,
    scenario: Told<'a>,
    reading: Reading,
    percentiles: &'a [f64],
    done_by: DoneBy,
    handbook: HandbookSays,
    who_waits: WhoWaits,
    relief: ReliefSays,
    amounts: Vec<Amount>,
    left_over: LeftOver,
    warnings: Warnings,
    assumed: Assumed,
    typical_run: u32,
}

/// Everything a forecast says.
///
/// # Errors
/// If the document cannot be written.
pub fn summary_json(forecast: &Forecast) -> Result<Vec<u8>, ExportError> {
    let scenario = &forecast.scenario;
    bytes(&Summary {
        provenance: &forecast.provenance,
        scenario: Told::new(scenario, forecast.units),
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

#[derive(Serialize)]
struct Check<'a> {
    version: &'static str,
    file: &'a str,
    scenario_hash: &'a str,
    scenario: Told<'a>,
    warnings: Warnings,
    assumed: Assumed,
}

/// Everything a check says.
///
/// # Errors
/// If the document cannot be written.
pub fn check_json(scenario: &Scenario, units: scenarios::units::System) -> Result<Vec<u8>, ExportError> {
    bytes(&Check {
        version: env!("CARGO_PKG_VERSION"),
        file: &scenario.file,
        scenario_hash: &scenario.hash,
        scenario: Told::new(scenario, units),
        warnings: warnings(&scenario.cautions),
        assumed: assumed(&scenario.assumptions),
    })
}

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

pub(super) fn bytes(document: &impl Serialize) -> Result<Vec<u8>, ExportError> {
    let mut bytes = serde_json::to_vec_pretty(document)?;
    bytes.push(b'\n');
    Ok(bytes)
}
