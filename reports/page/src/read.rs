//! A job as it was read.

use crate::job::Job;
use crate::refused::{ProblemJson, Refused};
use scenarios::units::System;
use scenarios::{Scenario, Selection, Weight, shown_path};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// What is to be read, and how it is to be shown.
#[derive(Debug, Deserialize)]
struct ToRead {
    job: Job,
    /// `us`, `metric`, or nothing for the file's own.
    #[serde(default)]
    units: String,
}

/// A job as it was read, or what is wrong with it.
#[derive(Debug, Serialize)]
#[serde(untagged)]
enum ReadJson {
    Read(Box<JobJson>),
    Refused { ok: bool, problems: Vec<ProblemJson> },
}

/// A job as it was read.
#[derive(Debug, Serialize)]
struct JobJson {
    ok: bool,
    title: String,
    units: &'static str,
    currency: String,
    alternatives: Vec<String>,
    cautions: Vec<CautionJson>,
    assumptions: Vec<AssumptionJson>,
}

#[derive(Debug, Serialize)]
struct CautionJson {
    /// `warning` or `usual`.
    weight: &'static str,
    cause: String,
    remedy: String,
}

#[derive(Debug, Serialize)]
struct AssumptionJson {
    key: String,
    words: String,
    from: String,
}

/// Reads a job.
pub(crate) fn read(asked: &str) -> Result<String, Refused> {
    let asked: ToRead = serde_json::from_str(asked).map_err(|error| Refused::not_understood(&error))?;
    let units = system(&asked.units)?;
    let shown = shown_path(Path::new(&asked.job.name));
    let selection = Selection { units, ..Selection::default() };
    let read = match asked.job.file(&shown).and_then(|file| file.scenario(&selection)) {
        Ok(scenario) => ReadJson::Read(Box::new(scenario.into())),
        Err(refusal) => {
            let problems = refusal.problems.iter().map(ProblemJson::from).collect();
            ReadJson::Refused { ok: false, problems }
        }
    };
    serde_json::to_string(&read).map_err(|error| Refused::not_understood(&error))
}

fn system(word: &str) -> Result<Option<System>, Refused> {
    if word.is_empty() { Ok(None) } else { word.parse().map(Some).map_err(Refused::Message) }
}

impl From<Scenario> for JobJson {
    fn from(scenario: Scenario) -> Self {
        let cautions = scenario.cautions.into_iter().map(|caution| CautionJson {
            weight: match caution.weight {
                Weight::Warning => "warning",
                Weight::Usual => "usual",
            },
            cause: caution.cause,
            remedy: caution.remedy,
        });
        let assumptions = scenario.assumptions.into_iter().map(|assumed| AssumptionJson {
            key: assumed.key,
            words: assumed.words,
            from: assumed.from,
        });
        Self {
            ok: true,
            title: scenario.title,
            units: scenario.units.word(),
            currency: scenario.currency,
            alternatives: scenario.alternatives,
            cautions: cautions.collect(),
            assumptions: assumptions.collect(),
        }
    }
}
