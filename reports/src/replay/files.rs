//! All files of a replay.

use super::{events_csv, loads_csv, replay_json};
use crate::answer::{Document, document, drawing, undrawn};
use crate::chart::{ChartError, Figure, Size, timeline};
use crate::failure::Failure;
use crate::provenance::Provenance;
use crate::render::table::run_csv;
use scenarios::Scenario;
use sim::Replay;

/// Files of a replay.
pub(crate) const REPLAY: [&str; 5] = ["replay.json", "run.csv", "loads.csv", "events.csv", "timeline.svg"];

/// All files of a replay.
pub(crate) fn of_replay(
    scenario: &Scenario,
    replay: &Replay,
    provenance: &Provenance,
) -> Result<Vec<Document>, Failure> {
    let job = &scenario.job;
    let mut documents = vec![
        document("replay.json", replay_json(scenario, scenario.units, replay, provenance))?,
        document("run.csv", run_csv(job, &replay.outcome))?,
        document("loads.csv", loads_csv(job, replay))?,
        document("events.csv", events_csv(job, replay))?,
    ];
    let data = timeline::prepare(job, replay, crate::findings::Calendar::of(scenario, scenario.units));
    match timeline::draw(&data, Size::WIDE) {
        Ok(svg) => {
            let figure = Figure { name: "timeline", title: data.title, svg };
            documents.extend(drawing(figure, &REPLAY, provenance));
        }
        Err(ChartError::Nothing(_)) => {}
        Err(error) => return Err(undrawn("timeline.svg", &error)),
    }
    Ok(documents)
}
