//! `heapcast quote`: what to ask for the job.

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, selection, show, telling, with_threads};
use crate::cli::QuoteArgs;
use crate::failure::Failure;
use crate::progress::Progress;
use reports::asked_money::Money;
use reports::provenance::command_line;
use reports::quote as documents;
use reports::quote::findings::Asked;
use reports::quote::{Quote, is_known};
use scenarios::Scenario;

pub(super) fn run(args: &QuoteArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    is_known(&scenario)?;
    let asked = asked(args, &scenario)?;
    let plan = plan(&scenario)?;
    let folder = folder(&args.out, &documents::QUOTE, std::slice::from_ref(&args.job.file), [&scenario])?;
    if let Some(pace) = Pace::of(&plan, args.study.seed) {
        let (runs, rows) = (f64::from(args.study.runs), f64::from(args.study.runs.min(args.rows.rows)));
        let option = ("--runs", args.study.runs);
        let effort =
            Effort { pace, least: runs, most: runs, kept: 2.0 * OUTCOME, replayed: 0.0, rows, option };
        effort.say(&args.limits, args.study.threads)?;
    }
    let quote = with_threads(args.study.threads, || make(args, scenario, asked))??;
    show(&quote, folder, args.rows, &args.out, args.say)
}

/// What is wanted, in the currency of the file.
fn asked(args: &QuoteArgs, scenario: &Scenario) -> Result<Asked, Failure> {
    let sum = |option: &str, money: &Option<Money>| match money {
        Some(money) if money.currency != scenario.currency => Err(Failure::asked(format!(
            "--{option}: \"{}\" is not the currency of {}: its prices are in \"{}\"; nothing was written",
            money.currency, scenario.file, scenario.currency
        ))),
        other => Ok(other.as_ref().map(|money| money.sum)),
    };
    Ok(Asked {
        risk: args.risk,
        margin: args.margin,
        price: sum("price", &args.price)?,
        rate: sum("rate", &args.rate)?,
    })
}

/// Makes all runs.
fn make(args: &QuoteArgs, scenario: Scenario, asked: Asked) -> Result<Quote, Failure> {
    let progress = Progress::new(Some(args.study.runs.into()), telling(args.say));
    let percent = |share: f64| format!("{} %", (share * 1e8).round() / 1e6);
    let mut flags = vec![("risk", percent(args.risk))];
    flags.extend(args.margin.map(|margin| ("margin", percent(margin))));
    flags.extend(args.price.as_ref().map(|price| ("price", price.typed.clone())));
    flags.extend(args.rate.as_ref().map(|rate| ("rate", rate.typed.clone())));
    let command = |runs: u32| {
        flags.push(("runs", runs.to_string()));
        command_line("quote", &args.job.file, &selection(&args.job), args.study.seed, &flags)
    };
    let quote =
        Quote::new(scenario, asked, (args.study.seed, args.study.runs), command, |n| progress.made(n));
    progress.finish();
    Ok(quote?)
}
