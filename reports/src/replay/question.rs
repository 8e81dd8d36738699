//! How a replay is asked for.

use super::{OneRun, REPLAY};
use crate::ask::{
    ALTERNATIVE, Answered, Asked, CHANGE, Folder, JOB, JOB_FILE, Load, MOST_RUNS, Opt, Prepared, Question,
    RUNS, Reader, Ready, SEED, compiled, whole,
};
use scenarios::Scenario;
use sim::{Outcome, Plan};
use std::path::PathBuf;

const RUN: Opt<u32> = Opt::new(
    "run",
    "NUMBER",
    "Number of the run, counted from 0 as in runs.csv [default: the run nearest the median]",
    |text| whole(text, 0, MOST_RUNS),
);

/// What happens in one run?
pub static QUESTION: Question = Question {
    name: "replay",
    about: "Show one run of the job step by step",
    examples: "\
Examples:
  heapcast replay arena.toml                 the run nearest the median
  heapcast replay arena.toml --run 4312      the run in that row of runs.csv, with the same seed
  heapcast replay arena.toml --run 0 --out first-run

The folder then holds events.csv (everything that happened), loads.csv (one row a load), replay.json and timeline.svg.",
    files: &[JOB_FILE],
    options: &[JOB, &[&SEED, &RUNS, &RUN]],
    folder: Some(Folder { name: "replay", files: &REPLAY, has_run_rows: false }),
    in_parts: false,
    prepared,
};

struct ToRun {
    scenario: Scenario,
    plan: Plan,
    /// Seed, runs, and the run wanted.
    wanted: (u64, u32, Option<u32>),
    asked: Asked,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let scenario = reader.job(asked.file())?.scenario(&asked.selection())?;
    Ok(Box::new(ToRun {
        plan: compiled(&scenario)?,
        wanted: (asked.value(&SEED)?, asked.value(&RUNS)?, asked.maybe(&RUN)),
        asked: asked.clone(),
        scenario,
    }))
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.scenario.observed_files.clone()
    }

    fn load(&self) -> Option<Load<'_>> {
        let (seed, runs, number) = self.wanted;
        let made = if number.is_some() { 1 } else { runs };
        Some(Load {
            in_all: Some(made.into()),
            kept: size_of::<Outcome>() as f64,
            replayed: 1.0,
            option: ("--runs", runs),
            ..Load::of(vec![&self.plan], seed, made.into())
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let asked = self.asked;
        let command = |run: u32| asked.command(&[&ALTERNATIVE, &CHANGE, &SEED], &[("run", run.to_string())]);
        Ok(Box::new(OneRun::new(self.scenario, &self.plan, self.wanted, command, made)?))
    }
}
