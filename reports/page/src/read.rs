//! A job as it was read.

use crate::edit::EditJson;
use crate::job::Job;
use crate::refused::{ProblemJson, Refused};
use crate::sentence;
use scenarios::units::System;
use scenarios::{Clock, Scenario, Selection, Sentence, Weight, shown_path};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// A job to be read, what is to be done with it, and how it is to be shown.
#[derive(Debug, Deserialize)]
pub(crate) struct ToRead {
    pub(crate) job: Job,
    /// What is to be changed first.
    #[serde(default)]
    pub(crate) edits: Vec<EditJson>,
    /// What a message about it says the price is, as typed; empty for none.
    #[serde(default)]
    pub(crate) price: String,
    /// `us`, `metric`, or nothing for the file's own.
    #[serde(default)]
    pub(crate) units: String,
    /// `am`, `24`, or nothing for the usual one beside the units.
    #[serde(default)]
    pub(crate) clock: String,
}

/// A job as it was read, or what is wrong with it.
#[derive(Debug, Serialize)]
#[serde(untagged)]
pub(crate) enum ReadJson {
    Read(Box<JobJson>),
    Refused {
        ok: bool,
        problems: Vec<ProblemJson>,
        #[serde(skip_serializing_if = "Option::is_none")]
        text: Option<String>,
    },
}

/// A job as it was read.
#[derive(Debug, Serialize)]
pub(crate) struct JobJson {
    ok: bool,
    /// The scenario file, where it was changed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) text: Option<String>,
    title: String,
    /// The sentence as plain text.
    words: String,
    sentence: serde_json::Value,
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
    let asked: ToRead = serde_json::from_str(asked)?;
    Ok(serde_json::to_string(&asked.told()?)?)
}

impl ToRead {
    /// The job, or what is wrong with it.
    pub(crate) fn told(&self) -> Result<ReadJson, Refused> {
        let (units, clock) = (system(&self.units)?, clock(&self.clock)?);
        let shown = shown_path(Path::new(&self.job.name));
        let selection = Selection { units, ..Selection::default() };
        let read = self.job.file(&shown).and_then(|file| {
            let scenario = file.scenario(&selection)?;
            Ok(JobJson::new(scenario, &file.sentence(units, clock)))
        });
        Ok(match read {
            Ok(job) => ReadJson::Read(Box::new(job)),
            Err(refusal) => ReadJson::refused(refusal.problems.iter().map(ProblemJson::from).collect()),
        })
    }
}

impl ReadJson {
    pub(crate) fn refused(problems: Vec<ProblemJson>) -> Self {
        Self::Refused { ok: false, problems, text: None }
    }
}

/// How times of the clock are said, by its word.
pub(crate) fn clock(word: &str) -> Result<Option<Clock>, Refused> {
    match word {
        "" => Ok(None),
        "am" => Ok(Some(Clock::AmPm)),
        "24" => Ok(Some(Clock::Hours24)),
        other => Err(Refused::Message(format!("there is no clock \"{}\"", scenarios::escaped(other)))),
    }
}

/// A system of units by its word.
pub(crate) fn system(word: &str) -> Result<Option<System>, Refused> {
    if word.is_empty() { Ok(None) } else { word.parse().map(Some).map_err(Refused::Message) }
}

impl JobJson {
    fn new(scenario: Scenario, told: &Sentence) -> Self {
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
            text: None,
            title: scenario.title,
            words: told.words(),
            sentence: sentence::json(told),
            units: scenario.units.word(),
            currency: scenario.currency,
            alternatives: scenario.alternatives,
            cautions: cautions.collect(),
            assumptions: assumptions.collect(),
        }
    }
}
