//! How a quote is asked for.

use super::findings::Asked as Terms;
use super::{QUOTE, Quote, is_known};
use crate::ask::{
    ALTERNATIVE, Answered, AnyOpt, Asked, CHANGE, Folder, JOB, JOB_FILE, Load, Opt, Prepared, Question, RUNS,
    Reader, Ready, SEED, compiled, percent,
};
use crate::asked_money::{Money, hourly, price, share};
use crate::failure::Failure;
use scenarios::Scenario;
use sim::{Outcome, Plan};
use std::path::PathBuf;

const RISK: Opt<f64> =
    Opt::new("risk", "SHARE", "Risk of losing money that you take: a share of jobs like this", share)
        .usually("10 %")
        .typed_again(|share| percent(*share));

const MARGIN: Opt<f64> =
    Opt::new("margin", "SHARE", "Share of the price that is to stay with you on average", share)
        .typed_again(|share| percent(*share));

const PRICE: Opt<Money> =
    Opt::new("price", "SUM", "A price of your own to be judged, such as '$2,400'", price)
        .typed_again(|money| money.typed.clone());

const RATE: Opt<Money> = Opt::new(
    "rate",
    "SUM",
    "What you bill for an hour on the job, the whole crew together, such as '$95/h'",
    hourly,
)
.typed_again(|money| money.typed.clone());

/// What to ask for the job?
pub static QUESTION: Question = Question {
    name: "quote",
    about: "Tell what to ask for the job: a price and its risk, hours and a rate, and a page for the client",
    examples: "\
Examples:
  heapcast quote arena.toml                               the price that loses money 1 job in 10
  heapcast quote arena.toml --risk \"5 %\" --margin \"15 %\"   lose money 1 job in 20, keep 15 % of the price
  heapcast quote arena.toml --price '$2,400'              what that price carries
  heapcast quote arena.toml --rate '$95/h'                hours, a rate and a limit for the client

Write sums in single quotes: between double quotes most shells take $2 for something of their own. A margin is a share of the
price: price = mean cost / (1 - margin). Of what risk and margin ask for, the higher is quoted.

The folder then holds report.html with all costs, for you alone; client.html for the client, without them; summary.json,
cost.csv, risk.csv, runs.csv and the charts as SVG. With --rate and without --price the client is offered hours and a rate.",
    files: &[JOB_FILE],
    options: &[JOB, &[&SEED, &RUNS, &RISK, &MARGIN, &PRICE, &RATE]],
    folder: Some(Folder { name: "quote", files: &QUOTE, has_run_rows: true }),
    in_parts: false,
    prepared,
};

struct ToRun {
    scenario: Scenario,
    plan: Plan,
    terms: Terms,
    seed: u64,
    runs: u32,
    command: String,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let scenario = reader.job(asked.file())?.scenario(&asked.selection())?;
    is_known(&scenario)?;
    let told: &[&dyn AnyOpt] = &[&ALTERNATIVE, &CHANGE, &SEED, &RISK, &MARGIN, &PRICE, &RATE, &RUNS];
    Ok(Box::new(ToRun {
        terms: terms(asked, &scenario)?,
        plan: compiled(&scenario)?,
        seed: asked.value(&SEED)?,
        runs: asked.value(&RUNS)?,
        command: asked.command(told, &[]),
        scenario,
    }))
}

/// What is wanted, in the currency of the file.
fn terms(asked: &Asked, scenario: &Scenario) -> Result<Terms, Failure> {
    let sum = |option: &Opt<Money>| match asked.maybe(option) {
        Some(money) if money.currency != scenario.currency => Err(Failure::Asked(format!(
            "--{}: \"{}\" is not the currency of {}: its prices are in \"{}\"; nothing was written",
            option.name(),
            money.currency,
            scenario.file,
            scenario.currency
        ))),
        other => Ok(other.map(|money| money.sum)),
    };
    Ok(Terms {
        risk: asked.value(&RISK)?,
        margin: asked.maybe(&MARGIN),
        price: sum(&PRICE)?,
        rate: sum(&RATE)?,
    })
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.scenario.observed_files.clone()
    }

    fn load(&self) -> Option<Load<'_>> {
        Some(Load {
            kept: 2.0 * size_of::<Outcome>() as f64,
            rows: (1.0, self.runs),
            option: ("--runs", self.runs),
            ..Load::of(vec![&self.plan], self.seed, self.runs.into())
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let Self { scenario, plan, terms, seed, runs, command } = *self;
        Ok(Box::new(Quote::new(scenario, &plan, terms, (seed, runs), command, made)?))
    }
}
