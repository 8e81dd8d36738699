//! `heapcast compare`: which of several jobs is the best.

mod choices;

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, show, telling, with_threads};
use crate::cli::CompareArgs;
use crate::failure::Failure;
use crate::progress::Progress;
use reports::asked::minutes_s;
use reports::compare::findings::comparison as findings;
use reports::compare::{Comparison, Prefer, Wanted};
use reports::provenance::typed;
use scenarios::Scenario;

pub(super) fn run(args: &CompareArgs) -> Result<(), Failure> {
    let wanted = Wanted {
        seed: args.seed,
        runs: args.runs,
        most: args.most.max(args.runs),
        confidence: args.confidence,
        prefer: args.prefer,
        within: None,
    };
    let jobs = choices::choices(args)?;
    let within = args.within.as_deref().map(|typed| within(typed, args.prefer, &jobs)).transpose()?;
    let wanted = Wanted { within, ..wanted };
    let folder = folder(
        &args.out,
        &reports::compare::COMPARISON,
        &args.files,
        jobs.iter().map(|(_, scenario)| scenario),
    )?;
    if let Some(effort) = effort(args, &jobs)? {
        effort.say(&args.limits, args.threads)?;
    }
    let comparison = with_threads(args.threads, || make(args, jobs, &wanted))??;
    let says = findings(&comparison);
    show(&(comparison, says), folder, args.rows, &args.out, args.say)
}

/// What the runs will take: the first ones surely, the most of each at the most.
fn effort(args: &CompareArgs, jobs: &[(String, Scenario)]) -> Result<Option<Effort>, Failure> {
    let plans = jobs.iter().map(|(_, scenario)| plan(scenario)).collect::<Result<Vec<_>, _>>()?;
    let paces: Option<Vec<Pace>> = plans.iter().map(|plan| Pace::of(plan, args.seed)).collect();
    let Some(pace) = paces.and_then(|paces| Pace::mean(&paces)) else { return Ok(None) };
    let (jobs, most) = (jobs.len() as f64, args.most.max(args.runs));
    let rows = jobs * f64::from(most.min(args.rows.rows));
    let (least, most) = (jobs * f64::from(args.runs), jobs * f64::from(most));
    let option = if args.most > args.runs { ("--most", args.most) } else { ("--runs", args.runs) };
    Ok(Some(Effort { pace, least, most, kept: OUTCOME, replayed: 0.0, rows, option }))
}

/// A difference that does not matter, as a time or as money.
fn within(typed: &str, prefer: Prefer, jobs: &[(String, Scenario)]) -> Result<f64, Failure> {
    let wrong = |why: String| Failure::asked(format!("--within \"{typed}\": {why}"));
    match prefer {
        Prefer::Time => minutes_s(typed).map_err(wrong),
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

/// Makes all runs.
fn make(args: &CompareArgs, jobs: Vec<(String, Scenario)>, wanted: &Wanted) -> Result<Comparison, Failure> {
    // Nobody knows how many it will take.
    let progress = Progress::new(None, telling(args.say));
    let comparison = Comparison::new(jobs, wanted, command(args), |n| progress.made(n));
    progress.finish();
    Ok(comparison?)
}

/// The command that gives the same answer again.
fn command(args: &CompareArgs) -> String {
    let mut flags: Vec<(&str, String)> = Vec::new();
    flags.extend(args.alternatives.iter().map(|name| ("alternative", name.clone())));
    flags.extend(args.changes.iter().map(|variant| ("change", choices::as_typed(variant))));
    if args.prefer == Prefer::Cost {
        flags.push(("prefer", "cost".into()));
    }
    flags.extend(args.within.iter().map(|within| ("within", within.clone())));
    flags.push(("confidence", ((args.confidence * 1e5).round() / 1e3).to_string()));
    flags.push(("seed", args.seed.to_string()));
    flags.extend([("runs", args.runs.to_string()), ("most", args.most.to_string())]);
    typed("compare", &args.files, &flags)
}
