//! `heapcast buckets`: would another bucket pay?

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, show, telling, with_threads};
use crate::cli::{BucketsArgs, RowArgs};
use crate::failure::Failure;
use crate::files;
use crate::progress::Progress;
use reports::buckets as documents;
use reports::buckets::findings::buckets as findings;
use reports::buckets::{Buckets, Usage, Wanted};
use reports::provenance::typed;
use scenarios::{BucketList, Scenario};

pub(super) fn run(args: &BucketsArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    let list = files::buckets(&args.list)?;
    one_currency(&scenario, &list)?;
    let wanted = Wanted {
        loader: loader(args, &scenario)?,
        today: args.today.as_deref().map(|name| today(name, &list)).transpose()?,
        barrows: args.barrows,
        seed: args.seed,
        runs: args.runs,
        usage: usage(args, &scenario, &list)?,
    };
    let folder =
        folder(&args.out, &documents::BUCKETS, &[args.job.file.clone(), args.list.clone()], [&scenario])?;
    if let Some(pace) = Pace::of(&plan(&scenario)?, args.seed) {
        let runs = Buckets::runs_at_most(&scenario, &list, &wanted) as f64;
        let option = ("--runs", args.runs);
        let effort =
            Effort { pace, least: runs, most: runs, kept: OUTCOME, replayed: 0.0, rows: 0.0, option };
        effort.say(&args.limits, args.threads)?;
    }
    let buckets = with_threads(args.threads, || make(args, scenario, list, wanted))??;
    let says = findings(&buckets);
    show(&(buckets, says), folder, RowArgs::NONE, &args.out, args.say)
}

fn loader(args: &BucketsArgs, scenario: &Scenario) -> Result<usize, Failure> {
    let loaders = &scenario.job.loaders;
    let names: Vec<String> = loaders.iter().map(|loader| format!("\"{}\"", loader.name)).collect();
    let names = names.join(", ");
    let Some(name) = args.loader.as_deref().map(str::trim) else {
        return match loaders.len() {
            1 => Ok(0),
            n => Err(Failure::asked(format!(
                "{} has {n} loaders; say which one the buckets are for with --loader: {names}; nothing was written",
                scenario.file
            ))),
        };
    };
    loaders.iter().position(|loader| loader.name == name).ok_or_else(|| {
        Failure::asked(format!(
            "--loader \"{name}\": {} has no such loader; there is {names}; nothing was written",
            scenario.file
        ))
    })
}

fn today(name: &str, list: &BucketList) -> Result<usize, Failure> {
    let wrong = |why: String| Failure::asked(format!("--today \"{name}\": {why}; nothing was written"));
    let found = list.find(name).map_err(wrong)?;
    list.buckets
        .iter()
        .position(|bucket| bucket == found)
        .ok_or_else(|| wrong("it is not in the list".into()))
}

/// Sums in two currencies cannot be compared with one another.
fn one_currency(scenario: &Scenario, list: &BucketList) -> Result<(), Failure> {
    let (file, prices) = (scenario.currency.as_str(), list.currency.as_str());
    if file.is_empty() || prices.is_empty() || file == prices {
        return Ok(());
    }
    Err(Failure::asked(format!(
        "{} is priced in \"{prices}\", {} in \"{file}\"; write both in one currency; nothing was written",
        list.file, scenario.file
    )))
}

fn usage(args: &BucketsArgs, scenario: &Scenario, list: &BucketList) -> Result<Option<Usage>, Failure> {
    let (Some(jobs_per_year), Some(worth)) = (args.jobs_per_year, &args.hour_worth) else {
        return Ok(None);
    };
    let known = [(&list.file, &list.currency), (&scenario.file, &scenario.currency)];
    if let Some((file, other)) = known.into_iter().find(|(_, c)| !c.is_empty() && **c != worth.currency) {
        return Err(Failure::asked(format!(
            "--hour-worth \"{}\": {file} is priced in \"{other}\"; write it in the same currency; nothing was written",
            worth.typed
        )));
    }
    Ok(Some(Usage {
        jobs_per_year,
        // Hourly sums are typed for an hour and kept as such.
        hour_worth: worth.sum,
        currency: worth.currency.clone(),
        years: args.years,
        interest: args.interest,
    }))
}

/// Makes all runs.
fn make(
    args: &BucketsArgs,
    scenario: Scenario,
    list: BucketList,
    wanted: Wanted,
) -> Result<Buckets, Failure> {
    let progress = Progress::new(Some(Buckets::runs_at_most(&scenario, &list, &wanted)), telling(args.say));
    let buckets = Buckets::new(scenario, list, wanted, command(args), |n| progress.made(n));
    progress.finish();
    Ok(buckets?)
}

/// The command that gives the same answer again.
fn command(args: &BucketsArgs) -> String {
    let mut flags: Vec<(&str, String)> = Vec::new();
    flags.extend(args.job.alternative.iter().map(|name| ("alternative", name.clone())));
    flags.extend(args.job.changes.iter().map(|change| ("change", change.to_string())));
    flags.extend(args.loader.iter().map(|name| ("loader", name.clone())));
    flags.extend(args.today.iter().map(|name| ("today", name.clone())));
    if let (Some((few, many)), Some(worth)) = (args.jobs_per_year, &args.hour_worth) {
        let percent = (args.interest * 1e8).round() / 1e6;
        flags.extend([
            ("jobs-per-year", format!("{few}..{many}")),
            ("hour-worth", worth.typed.clone()),
            ("years", args.years.to_string()),
            ("interest", format!("{percent} %")),
        ]);
    }
    flags.extend([
        ("barrows", args.barrows.to_string()),
        ("seed", args.seed.to_string()),
        ("runs", args.runs.to_string()),
    ]);
    typed("buckets", &[args.job.file.clone(), args.list.clone()], &flags)
}
