//! How a forecast is asked for.

use super::FORECAST;
use super::run::{Forecast, Wanted, runs_in_all};
use crate::ask::{
    ALTERNATIVE, Answered, Asked, CHANGE, Folder, InParts, JOB, JOB_FILE, Load, MOST_RUNS, Opt, Prepared,
    Question, RUNS, Reader, Ready, SEED, compiled,
};
use crate::asked::Percentiles;
use scenarios::{Scenario, typed};
use sim::{Outcome, Plan, Runs, Study};
use std::path::PathBuf;

const WITHIN: Opt<f64> = Opt::new(
    "within",
    "TIME",
    "Make as many runs as it takes to know the time to plan on (8 days in 10) to within this, such as \"3 min\" (at most a million)",
    typed::time,
)
.without(&["runs"]);

const PERCENTILES: Opt<Percentiles> =
    Opt::new("percentiles", "LIST", "Percentiles to tell, in per cent", str::parse).usually("10,50,80,90,95");

const BY: Opt<f64> = Opt::new(
    "by",
    "CLOCK",
    "Tell the chance of being done, clean-up included, by this time of the clock: \"15:00\", \"2:30 pm\", \"day 2 10:00\"",
    typed::clock,
);

/// Done by when, what holds it up, and what would help?
pub static QUESTION: Question = Question {
    name: "forecast",
    about: "Tell when the job will be done, as a range, what holds it up, and what would help",
    examples: "\
Examples:
  heapcast forecast arena.toml
  heapcast forecast arena.toml --units metric --out for-the-client
  heapcast forecast arena.toml --within \"1 min\"           as many runs as it takes
  heapcast forecast arena.toml --by \"2:30 pm\" --percentiles 50,80,99
  heapcast forecast arena.toml --alternative \"a second raker\" --json > second.json
  heapcast forecast arena.toml --change \"rakers = 2\" --change \"shift.start = 07:00\"
  heapcast forecast arena.toml --runs 400,000 --part 2/4 --out parts/2   a quarter of the runs, on any machine
  heapcast forecast arena.toml --merge parts/*              the forecast of all of them, to the same bytes

The folder then holds report.html, summary.json, percentiles.csv, runs.csv and the charts as SVG. It is replaced only
when all of it is complete, and only where heapcast wrote what is there; --out names another one. Times in files are
seconds; volumes stand in m3 and in yd3.",
    files: &[JOB_FILE],
    options: &[JOB, &[&SEED, &RUNS, &WITHIN, &PERCENTILES, &BY]],
    folder: Some(Folder { name: "forecast", files: &FORECAST, has_run_rows: true }),
    in_parts: true,
    prepared,
};

/// Runs from which it is told how many a precision takes.
const TRIAL: u32 = 200;

struct ToRun {
    scenario: Scenario,
    plan: Plan,
    wanted: Wanted,
    /// Runs asked for; with a precision asked for, those that would have been made without it.
    runs: u32,
    asked: Asked,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let scenario = reader.job(asked.file())?.scenario(&asked.selection())?;
    let runs = asked.value(&RUNS)?;
    let wanted = Wanted {
        seed: asked.value(&SEED)?,
        runs: match asked.maybe(&WITHIN) {
            Some(half_width_s) => Runs::UntilP80Within { half_width_s, most: MOST_RUNS },
            None => Runs::Exactly(runs),
        },
        percentiles: asked.value(&PERCENTILES)?.0,
        by_s: asked.maybe(&BY),
    };
    Ok(Box::new(ToRun { plan: compiled(&scenario)?, scenario, wanted, runs, asked: asked.clone() }))
}

/// The line that gives the same answer again: the same number of runs, however it was arrived at, does.
fn again(asked: &Asked, seed: u64) -> impl FnOnce(u32) -> String {
    move |runs| {
        let made = [("seed", seed.to_string()), ("runs", runs.to_string())];
        asked.command(&[&ALTERNATIVE, &CHANGE], &made)
    }
}

/// About how many runs it takes to know the P80 to within a time: four times as many know it twice as well.
fn runs_for(within_s: f64, plan: &Plan, seed: u64) -> u32 {
    let Ok(trial) = Study::new(plan, seed, Runs::Exactly(TRIAL), |_| {}) else { return 1 };
    let p80 = trial.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.8);
    let half = p80.high.zip(p80.low).map_or(f64::INFINITY, |(high, low)| (high - low) / 2.0);
    (f64::from(TRIAL) * (half / within_s).powi(2)).clamp(1_000.0, f64::from(MOST_RUNS)) as u32
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.scenario.observed_files.clone()
    }

    fn load(&self) -> Option<Load<'_>> {
        let (wanted, job) = (&self.wanted, &self.scenario.job);
        let runs = match wanted.runs {
            Runs::Exactly(runs) => runs,
            Runs::UntilP80Within { half_width_s, .. } => runs_for(half_width_s, &self.plan, wanted.seed),
        };
        let all = runs_in_all(Runs::Exactly(runs), job)? as f64;
        let in_all = runs_in_all(wanted.runs, job);
        // How many runs a precision takes is known roughly.
        let (least, most) = if in_all.is_none() { (all / 2.0, all * 1.5) } else { (all, all) };
        Some(Load {
            least,
            most,
            in_all,
            kept: size_of::<Outcome>() as f64,
            replayed: 1.0,
            rows: (1.0, runs),
            option: ("--runs", runs),
            ..Load::of(vec![&self.plan], wanted.seed, 0)
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let again = again(&self.asked, self.wanted.seed);
        Ok(Box::new(Forecast::new(self.scenario, &self.plan, &self.wanted, again, made)?))
    }

    fn in_parts(self: Box<Self>) -> Option<Box<dyn InParts>> {
        Some(self)
    }
}

impl InParts for ToRun {
    fn study(&self) -> (&Plan, u64, u32) {
        (&self.plan, self.wanted.seed, self.runs)
    }

    fn merged(self: Box<Self>, study: Study, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let again = again(&self.asked, study.seed);
        Ok(Box::new(Forecast::of(self.scenario, &self.plan, study, &self.wanted, again, made)?))
    }
}
