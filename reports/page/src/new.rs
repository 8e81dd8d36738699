//! A new job from a few answers.

use crate::refused::Refused;
use scenarios::units::System;
use scenarios::{AnsweredPrices, Answers, LiftFigure};
use serde::Deserialize;

/// Answers as a page has them; each may be left out.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Given {
    units: Option<String>,
    title: Option<String>,
    material: Option<String>,
    volume: Option<String>,
    truckload: Option<String>,
    bucket: Option<String>,
    distance: Option<String>,
    rakers: Option<u32>,
    gate: Option<String>,
    start: Option<String>,
    breaks: Option<String>,
    /// The figure of the manual, in words, and how much it says.
    lift: Option<(String, String)>,
    price: Option<String>,
    machine_cost: Option<String>,
    operator_cost: Option<String>,
    raker_cost: Option<String>,
}

/// A scenario file from such answers over the usual ones.
pub(crate) fn starter(answers: &str) -> Result<String, Refused> {
    let given: Given = serde_json::from_str(answers).map_err(|error| Refused::not_understood(&error))?;
    let units = given.units.as_deref().map(str::parse).transpose().map_err(Refused::Message)?;
    let usual = Answers::usual(units.unwrap_or(System::Us));
    let lift = match given.lift {
        Some((words, typed)) => Some((figure(&words)?, typed)),
        None => None,
    };
    Ok(scenarios::starter(&Answers {
        title: given.title.unwrap_or(usual.title),
        units: usual.units,
        material: given.material.unwrap_or(usual.material),
        volume: given.volume.unwrap_or(usual.volume),
        truckload: given.truckload.unwrap_or(usual.truckload),
        bucket: given.bucket.unwrap_or(usual.bucket),
        distance: given.distance.unwrap_or(usual.distance),
        rakers: given.rakers.unwrap_or(usual.rakers),
        gate: given.gate,
        start: given.start.unwrap_or(usual.start),
        breaks: given.breaks.unwrap_or(usual.breaks),
        lift,
        prices: AnsweredPrices {
            material: given.price,
            machine: given.machine_cost,
            operator: given.operator_cost,
            raker: given.raker_cost,
        },
    }))
}

fn figure(words: &str) -> Result<LiftFigure, Refused> {
    let known = LiftFigure::ALL.into_iter().find(|figure| figure.words() == words);
    known.ok_or_else(|| {
        let all: Vec<&str> = LiftFigure::ALL.iter().map(|figure| figure.words()).collect();
        Refused::Message(format!("\"{words}\" is no figure of a manual: write {}", all.join(" or ")))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_answer_is_needed_and_each_that_is_given_stands_in_the_file() {
        assert_eq!(starter("{}").unwrap(), scenarios::starter(&Answers::default()));
        let text = starter(r#"{"units":"metric","rakers":3,"lift":["tipping load","900 kg"]}"#).unwrap();
        assert!(text.contains("count = 3") && text.contains("\ntipping_load = \"900 kg\""), "{text}");
        assert!(matches!(starter(r#"{"lift":["luck","1 kg"]}"#), Err(Refused::Message(_))));
    }
}
