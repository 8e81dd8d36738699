//! How a sweep is asked for.

use super::findings;
use super::{Deadline, FILES, MOST_POINTS, MOST_RUNS_IN_ALL, Points, Run, Sweep, Wanted, count};
use crate::ask::{
    self, ALTERNATIVE, Answered, AnyOpt, Asked, CHANGE, Folder, JOB, JOB_FILE, Load, Opt, Prepared, Question,
    Reader, Ready,
};
use crate::asked::kept_share;
use crate::failure::Failure;
use scenarios::units::{System, clock, figure};
use scenarios::{Vary, grid, typed};
use std::path::PathBuf;

const VARY: Opt<Vary> = Opt::new(
    "vary",
    "WHAT VALUES",
    "What to vary and over which values, such as \"rakers 1..4\"; given twice, every value of one with every of the other",
    str::parse,
)
.repeated()
.required()
.typed_again(ToString::to_string);

const BY: Opt<f64> = Opt::new(
    "by",
    "CLOCK",
    "Find the cheapest that is done, clean-up included, by this time of the clock: \"15:00\", \"2:30 pm\", \"day 2 10:00\"",
    typed::clock,
)
.typed_again(|by_s| clock(*by_s, System::Metric));

const CHANCE: Opt<f64> =
    Opt::new("chance", "PERCENT", "How often it is to be done by then, in per cent", kept_share)
        .usually("80")
        .with(&["by"])
        .typed_again(|chance| ((chance * 1e6).round() / 1e4).to_string());

const SEED: Opt<u64> = ask::SEED.means("Seed of all random numbers; every point has the same random numbers");
const RUNS: Opt<u32> = ask::RUNS.means("Runs to make at every point").usually("2000");

/// Where does it stop paying?
pub static QUESTION: Question = Question {
    name: "sweep",
    about: "Run the job over a range of one or two things: where it stops paying, and the cheapest that is done in time",
    examples: "\
Examples:
  heapcast sweep arena.toml --vary \"rakers 1..4\"
  heapcast sweep arena.toml --vary \"bucket 8..20 ft3 by 2\" --by \"2:30 pm\"
  heapcast sweep arena.toml --vary \"rakers 1..4\" --vary \"haul 10..80 yd by 10\" --by 15:00 --chance 90
  heapcast sweep arena.toml --vary \"loader.compact tractor.loading = 15, 20, 30 s\" --change \"rakers = 2\"

What can vary: rakers, loaders, bucket (heaped), haul (mean), room (heaps a zone), or any key of the file with an \"=\"
behind it. A range is written 1..4 or 8..20 ft3 by 2, a list 8.5, 11, 14 ft3; at most 40 values, at most 400 points.
The folder then holds report.html, summary.json, sweep.csv (one row a point) and the charts sweep.svg and cost.svg.",
    files: &[JOB_FILE],
    options: &[JOB, &[&VARY, &BY, &CHANCE, &SEED, &RUNS]],
    folder: Some(Folder { name: "sweep", files: &FILES, has_run_rows: false }),
    in_parts: false,
    prepared,
};

/// Points from which it is told how long all of them take.
const POINTS_TRIED: usize = 8;

struct ToRun {
    points: Points,
    wanted: Wanted,
    command: String,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let (vary, runs) = (asked.all(&VARY), asked.value(&RUNS)?);
    check(&vary, runs)?;
    let file = reader.job(asked.file())?;
    let selection = asked.selection();
    let base = file.scenario(&selection)?;
    let scenarios = grid(&vary, &file, &selection)?;
    let chance = asked.value(&CHANCE)?;
    let deadline = asked.maybe(&BY).map(|by_s| Deadline { by_s, chance });
    let told: &[&dyn AnyOpt] = match deadline {
        Some(_) => &[&ALTERNATIVE, &CHANGE, &SEED, &VARY, &BY, &CHANCE, &RUNS],
        None => &[&ALTERNATIVE, &CHANGE, &SEED, &VARY, &RUNS],
    };
    Ok(Box::new(ToRun {
        points: Points::new(base, vary, scenarios)?,
        wanted: Wanted { seed: asked.value(&SEED)?, runs, deadline },
        command: asked.command(told, &[]),
    }))
}

/// What is too much, whatever the file says.
fn check(vary: &[Vary], runs: u32) -> Result<(), Failure> {
    let asked = |words: String| Err(Failure::Asked(words));
    match vary {
        [_] => {}
        [one, other] if one.knob == other.knob => {
            return asked(format!(
                "--vary \"{}\" is given twice; vary another thing with it, or give one list",
                one.knob
            ));
        }
        [_, _] => {}
        more => return asked(format!("{} things are to vary; at most two are taken", more.len())),
    }
    let points = count(vary);
    if points > MOST_POINTS {
        return asked(format!(
            "this makes {points} points; at most {MOST_POINTS} are taken: name fewer values, or a larger step with \"by\""
        ));
    }
    let in_all = points as u64 * u64::from(runs);
    if in_all > MOST_RUNS_IN_ALL {
        return asked(format!(
            "{points} points of {} runs are {} runs in all; at most {} are taken: ask for {} runs or fewer",
            figure(f64::from(runs)),
            figure(in_all as f64),
            figure(MOST_RUNS_IN_ALL as f64),
            MOST_RUNS_IN_ALL / points as u64
        ));
    }
    Ok(())
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.points.base.observed_files.clone()
    }

    fn load(&self) -> Option<Load<'_>> {
        let points = &self.points.all;
        let in_all = points.len() as u64 * u64::from(self.wanted.runs);
        let some = points.iter().step_by(points.len().div_ceil(POINTS_TRIED).max(1));
        let plans = some.map(|(_, plan)| plan).collect();
        Some(Load {
            kept: size_of::<Run>() as f64,
            option: ("--runs", self.wanted.runs),
            ..Load::of(plans, self.wanted.seed, in_all)
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let sweep = Sweep::new(self.points, &self.wanted, self.command, made)?;
        let findings = findings::sweep(&sweep);
        Ok(Box::new((sweep, findings)))
    }
}
