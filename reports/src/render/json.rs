//! Documents for programs, and what all of them say first.

use super::ExportError;
use crate::findings::the_job;
use scenarios::Scenario;
use serde::Serialize;
use sim::LEVEL;

/// How the percentiles and intervals in the document are to be read.
#[derive(Serialize)]
pub(crate) struct Reading {
    percentile_definition: &'static str,
    interval_confidence: f64,
    interval_method: &'static str,
    times: &'static str,
}

impl Reading {
    pub(crate) fn new() -> Self {
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
pub(crate) struct JobSummary<'a> {
    title: &'a str,
    job: String,
    date: Option<String>,
    units: &'static str,
    currency: Option<&'a str>,
    alternative: Option<&'a str>,
    changes: Vec<String>,
    alternatives: &'a [String],
}

impl<'a> JobSummary<'a> {
    pub(crate) fn new(scenario: &'a Scenario, units: scenarios::units::System) -> Self {
        Self {
            title: &scenario.title,
            job: the_job(scenario),
            date: scenario.date.map(|d| d.to_string()),
            units: units.word(),
            currency: Some(scenario.currency.as_str()).filter(|c| !c.is_empty()),
            alternative: scenario.alternative.as_deref(),
            changes: scenario.changes.iter().map(ToString::to_string).collect(),
            alternatives: &scenario.alternatives,
        }
    }
}

/// A document in bytes, with a line end at its end.
pub(crate) fn bytes(document: &impl Serialize) -> Result<Vec<u8>, ExportError> {
    let mut bytes = serde_json::to_vec_pretty(document)?;
    bytes.push(b'\n');
    Ok(bytes)
}
