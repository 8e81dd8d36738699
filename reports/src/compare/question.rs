//! How a comparison is asked for.

use super::choices::{self, as_typed, choices};
use super::findings::comparison;
use super::{COMPARISON, Comparison, Prefer, Wanted, compiled};
use crate::ask::{
    self, Answered, AnyOpt, Asked, FileWanted, Folder, Load, MOST_RUNS, Opt, Prepared, Question, Reader,
    Ready, SEED, whole,
};
use crate::asked::confidence;
use crate::failure::Failure;
use scenarios::units::System;
use scenarios::{Scenario, Variant};
use sim::{Outcome, Plan};
use std::path::PathBuf;

const ALTERNATIVE: Opt<String> =
    ask::ALTERNATIVE.means("An alternative of the first file, by its name; as often as wanted").repeated();

const CHANGE: Opt<Variant> = Opt::new(
    "change",
    "[NAME:] KEY = VALUE[; KEY = VALUE]",
    "The first file's job with something changed, by the file's own keys; as often as wanted",
    str::parse,
)
.repeated()
.typed_again(as_typed);

const WITHIN: Opt<String> = Opt::new(
    "within",
    "TIME|MONEY",
    "A difference that does not matter: a time, or money with --prefer cost [default: 5 min; 1 % of the cost]",
    |text| Ok(text.to_owned()),
);

const CONFIDENCE: Opt<f64> =
    Opt::new("confidence", "PERCENT", "How sure the answer is to be, in per cent", confidence)
        .usually("95")
        .typed_again(|confidence| ((confidence * 1e5).round() / 1e3).to_string());

const PREFER: Opt<Prefer> = Opt::new("prefer", "PREFER", "What the best is to have less of", |word| {
    Ok(if word == "cost" { Prefer::Cost } else { Prefer::Time })
})
.usually("time")
.one_of(&[("time", "Finish sooner"), ("cost", "Pay less")]);

/// Fewer do not know their own spread well enough.
const LEAST_RUNS: u32 = 200;

const RUNS: Opt<u32> = Opt::new("runs", "NUMBER", "Runs of each before any is set aside", runs)
    .usually("2000")
    .typed_again(ToString::to_string);

const MOST: Opt<u32> = Opt::new("most", "NUMBER", "Runs of any one at the most", runs)
    .usually("50000")
    .typed_again(ToString::to_string);

fn runs(text: &str) -> Result<u32, String> {
    whole(text, LEAST_RUNS, MOST_RUNS)
}

const UNITS: Opt<System> = ask::UNITS.means("Units to show [default: the first file's own]");

/// Which of several jobs is the best?
pub static QUESTION: Question = Question {
    name: "compare",
    about: "Compare jobs and say which to take",
    examples: "\
Examples:
  heapcast compare arena.toml                            the job as it stands and all its alternatives
  heapcast compare arena.toml --alternative \"a second raker\"
  heapcast compare arena.toml --change \"rakers = 2\" --change \"big bucket: bucket = 22 ft3\"
  heapcast compare one-loader.toml two-loaders.toml      separate files, the first against the second
  heapcast compare arena.toml --prefer cost --within '$20'
  heapcast compare arena.toml --within \"2 min\" --confidence 99

All of them are run on the same days and loads, and runs are made until the answer is sure: \"the best, or within 5 minutes of it
on average, 95 % sure\". Jobs that are surely worse than another get no more runs. The folder then holds report.html,
summary.json, comparison.csv, differences.csv, runs.csv and the charts as SVG.",
    files: &[FileWanted {
        name: "files",
        value: "FILE",
        help: "Scenario files (TOML); the first is what the others are compared with",
        is_repeated: true,
        is_list: false,
    }],
    options: &[&[&ALTERNATIVE, &CHANGE, &WITHIN, &CONFIDENCE, &PREFER, &RUNS, &MOST, &SEED_OF_FILES, &UNITS]],
    folder: Some(Folder { name: "comparison", files: &COMPARISON, has_run_rows: true }),
    in_parts: false,
    prepared,
};

const SEED_OF_FILES: Opt<u64> = SEED
    .means("Seed of the random draws; the same seed and files give the same answer on any number of threads");

struct ToRun {
    jobs: Vec<(String, Scenario)>,
    plans: Vec<Plan>,
    wanted: Wanted,
    command: String,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let (prefer, runs) = (asked.value(&PREFER)?, asked.value(&RUNS)?);
    let typed = choices::Typed {
        files: asked.files(),
        alternatives: asked.all(&ALTERNATIVE),
        variants: asked.all(&CHANGE),
        units: asked.maybe(&UNITS),
    };
    let jobs = choices(&typed, reader)?;
    let wanted = Wanted {
        seed: asked.value(&SEED)?,
        runs,
        most: asked.value(&MOST)?.max(runs),
        confidence: asked.value(&CONFIDENCE)?,
        prefer,
        within: asked.maybe(&WITHIN).map(|typed| within(&typed, prefer, &jobs)).transpose()?,
    };
    let plans = compiled(&jobs, prefer)?;
    Ok(Box::new(ToRun { jobs, plans, wanted, command: command(asked, prefer) }))
}

/// A difference that does not matter, as a time or as money.
fn within(typed: &str, prefer: Prefer, jobs: &[(String, Scenario)]) -> Result<f64, Failure> {
    let wrong = |why: String| Failure::Asked(format!("--within \"{typed}\": {why}"));
    match prefer {
        Prefer::Time => scenarios::typed::time(typed).map_err(wrong),
        Prefer::Cost => {
            // Between double quotes most shells take the $ for something of their own.
            let quotes = |why| wrong(format!("{why}; put it in single quotes"));
            let (sum, currency) = scenarios::typed::money(typed).map_err(quotes)?;
            let of_files = jobs.first().map_or("", |(_, scenario)| scenario.currency.as_str());
            if currency != of_files {
                return Err(wrong(format!(
                    "the files are priced in \"{of_files}\"; write it in the same currency"
                )));
            }
            if sum > 0.0 { Ok(sum) } else { Err(wrong("write a sum above 0".into())) }
        }
    }
}

/// The command that gives the same answer again.
fn command(asked: &Asked, prefer: Prefer) -> String {
    let told: &[&dyn AnyOpt] = match prefer {
        Prefer::Time => &[&ALTERNATIVE, &CHANGE, &WITHIN, &CONFIDENCE, &SEED, &RUNS, &MOST],
        Prefer::Cost => &[&ALTERNATIVE, &CHANGE, &PREFER, &WITHIN, &CONFIDENCE, &SEED, &RUNS, &MOST],
    };
    asked.command(told, &[])
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.jobs.iter().flat_map(|(_, scenario)| scenario.observed_files.clone()).collect()
    }

    /// The first runs are surely made, the most of each at the most; nobody knows how many it will take.
    fn load(&self) -> Option<Load<'_>> {
        let (jobs, Wanted { seed, runs, most, .. }) = (self.jobs.len() as f64, self.wanted);
        Some(Load {
            most: jobs * f64::from(most),
            in_all: None,
            kept: size_of::<Outcome>() as f64,
            rows: (jobs, most),
            option: if most > runs { ("--most", most) } else { ("--runs", runs) },
            ..Load::of(self.plans.iter().collect(), seed, self.jobs.len() as u64 * u64::from(runs))
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let Self { jobs, plans, wanted, command } = *self;
        let compared = Comparison::new(jobs, &plans, &wanted, command, made)?;
        let findings = comparison(&compared);
        Ok(Box::new((compared, findings)))
    }
}
