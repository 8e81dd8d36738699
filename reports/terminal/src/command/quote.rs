//! `heapcast quote`: what to ask for the job.

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, rows_left_out, selection, telling, with_threads, write};
use crate::cli::QuoteArgs;
use crate::failure::Failure;
use crate::progress::Progress;
use crate::say;
use reports::asked_money::Money;
use reports::documents::quote as documents;
use reports::findings::quote::{Asked, Terms};
use reports::findings::warnings;
use reports::provenance::command_line;
use reports::quote::{Quote, is_known};
use reports::text;
use scenarios::Scenario;

pub(super) fn run(args: &QuoteArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    is_known(&scenario)?;
    let asked = asked(args, &scenario)?;
    let plan = plan(&scenario)?;
    let folder = folder(&args.out, &documents::QUOTE, std::slice::from_ref(&args.job.file), [&scenario])?;
    if let Some(pace) = Pace::of(&plan, args.luck.seed) {
        let (runs, rows) = (f64::from(args.luck.runs), f64::from(args.luck.runs.min(args.rows.rows)));
        let option = ("--runs", args.luck.runs);
        let effort =
            Effort { pace, least: runs, most: runs, kept: 2.0 * OUTCOME, replayed: 0.0, rows, option };
        effort.say(&args.limits, args.luck.threads)?;
    }
    let quote = with_threads(args.luck.threads, || make(args, scenario, asked))??;
    write(folder, args.say, || documents::of_quote(&quote, args.rows.wanted()))?;
    rows_left_out(quote.study.runs(), args.rows, args.say);
    tell(args, &quote)
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
    let progress = Progress::new(Some(args.luck.runs.into()), telling(args.say));
    let percent = |share: f64| format!("{} %", (share * 1e8).round() / 1e6);
    let mut flags = vec![("risk", percent(args.risk))];
    flags.extend(args.margin.map(|margin| ("margin", percent(margin))));
    flags.extend(args.price.as_ref().map(|price| ("price", price.typed.clone())));
    flags.extend(args.rate.as_ref().map(|rate| ("rate", rate.typed.clone())));
    let command = |runs: u32| {
        flags.push(("runs", runs.to_string()));
        command_line("quote", &args.job.file, &selection(&args.job), args.luck.seed, &flags)
    };
    let quote = Quote::new(scenario, asked, (args.luck.seed, args.luck.runs), command, |n| progress.made(n));
    progress.finish();
    Ok(quote?)
}

fn tell(args: &QuoteArgs, quote: &Quote) -> Result<(), Failure> {
    if args.say.quiet {
        let says = &quote.says;
        let hours = matches!(quote.client.terms, Terms::Hourly { .. });
        return say::out(&format!("{}\n", if hours { &says.hours.sentence } else { &says.offer.verdict }));
    }
    if args.say.json {
        for warning in warnings(&quote.scenario.cautions).doubtful {
            say::aside(&format!("warning: {} {}\n", warning.cause, warning.remedy));
        }
        return say::out_bytes(&documents::summary(quote)?);
    }
    let width = say::width();
    if !args.say.full {
        return say::out(&text::quote_first(quote, &args.out, width));
    }
    say::out(&text::quote(quote, width))?;
    say::out(&text::quote_files(quote, &args.out, width))
}
