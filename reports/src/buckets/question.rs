//! How buckets are asked for.

use super::{BUCKETS, Buckets, Jobs, Usage, Wanted};
use crate::ask::{
    self, ALTERNATIVE, Answered, AnyOpt, Asked, CHANGE, FileWanted, Folder, JOB, JOB_FILE, Load, MOST_RUNS,
    Opt, Prepared, Question, Reader, Ready, percent, whole,
};
use crate::asked_money::{Money, hourly};
use crate::failure::Failure;
use scenarios::{BucketList, Scenario};
use sim::Outcome;
use std::path::PathBuf;

/// Fewer do not know the range of what is saved.
const LEAST_RUNS: u32 = 100;
/// Most jobs that a year may have.
const MOST_JOBS: f64 = 5_000.0;
/// Highest interest that is taken for one.
const MOST_INTEREST: f64 = 1.0;

const LIST: FileWanted = FileWanted {
    name: "list",
    value: "LIST.csv",
    help: "List of buckets (CSV): name, struck, heaped, width, mass, price",
    is_repeated: false,
    is_list: true,
};

const LOADER: Opt<String> =
    Opt::new("loader", "NAME", "The loader that the buckets are for [default: the only one]", |text| {
        Ok(text.to_owned())
    });

const TODAY: Opt<String> = Opt::new(
    "today",
    "NAME",
    "The bucket of the list that is on the loader today [default: the one in the file]",
    |text| Ok(text.to_owned()),
);

const JOBS_PER_YEAR: Opt<(u32, u32)> =
    Opt::new("jobs-per-year", "FROM..TO", "Jobs like this one in a year: a number, or fewest and most", jobs)
        .with(&["hour-worth"])
        .hyphens()
        .typed_again(|(few, many)| format!("{few}..{many}"));

const HOUR_WORTH: Opt<Money> = Opt::new(
    "hour-worth",
    "SUM",
    "What an hour saved on a job is worth, the crew with its machine, such as '$60/h'",
    hourly,
)
.with(&["jobs-per-year"])
.hyphens()
.typed_again(|money| money.typed.clone());

const YEARS: Opt<u32> =
    Opt::new("years", "NUMBER", "Years that the bucket will be used", |text| whole(text, 1, 50))
        .usually("8")
        .typed_again(ToString::to_string);

const INTEREST: Opt<f64> = Opt::new("interest", "SHARE", "Yearly interest on the money", interest)
    .usually("6 %")
    .hyphens()
    .typed_again(|share| percent(*share));

const BARROWS: Opt<u32> =
    Opt::new("barrows", "NUMBER", "Hand barrows to try in place of the loader; 0 for none", |text| {
        whole(text, 0, 20)
    })
    .usually("1")
    .typed_again(ToString::to_string);

const RUNS: Opt<u32> =
    Opt::new("runs", "NUMBER", "Runs of each bucket", |text| whole(text, LEAST_RUNS, MOST_RUNS))
        .usually("2000")
        .typed_again(ToString::to_string);

const SEED: Opt<u64> = ask::SEED
    .means("Seed of the random draws; the same seed and files give the same answer on any number of threads");

/// Would another bucket pay?
pub static QUESTION: Question = Question {
    name: "buckets",
    about: "Try the buckets of a list: may the loader lift them, do they pass the gates, what do they save, do they pay",
    examples: "\
Examples:
  heapcast buckets arena.toml buckets.csv
  heapcast buckets arena.toml buckets.csv --today \"today's bucket\"
  heapcast buckets arena.toml buckets.csv --jobs-per-year 20..35 --hour-worth '$60/h'
  heapcast buckets yard.toml buckets.csv --loader \"compact tractor\" --barrows 3

The list is a CSV file with a heading line, each figure with its unit; only name and heaped are needed:
  name,          struck,   heaped,    width,  mass,    price
  chip bucket,   16 ft3,   20 ft3,    66 in,  230 lb,  $890

Each bucket of the list is tried on the loader on the same days and loads as today's: whether a full one may be lifted, whether it
passes the gates, how many minutes it saves, and with --jobs-per-year and --hour-worth whether it pays. An hour is what the
crew and its machine are worth to you; prices in the file are not counted besides. The folder then holds report.html,
summary.json, buckets.csv and the charts as SVG.",
    files: &[JOB_FILE, LIST],
    options: &[
        JOB,
        &[&LOADER, &TODAY, &JOBS_PER_YEAR, &HOUR_WORTH, &YEARS, &INTEREST, &BARROWS, &RUNS, &SEED],
    ],
    folder: Some(Folder { name: "buckets", files: &BUCKETS, has_run_rows: false }),
    in_parts: false,
    prepared,
};

/// Whole numbers of jobs in a year.
fn jobs(text: &str) -> Result<(u32, u32), String> {
    let [few, many] = scenarios::typed::range(text)?;
    let whole = few.fract() == 0.0 && many.fract() == 0.0;
    if whole && (1.0..=MOST_JOBS).contains(&many) {
        Ok((few as u32, many as u32))
    } else {
        Err(format!("write whole numbers of jobs, at most {MOST_JOBS}, such as 25 or 20..35"))
    }
}

/// A yearly interest as a share.
fn interest(text: &str) -> Result<f64, String> {
    let right = "write a yearly interest from 0 % to 100 %, such as \"6 %\"";
    let share = scenarios::typed::percent(text).map_err(|why| format!("{why}; {right}"))?;
    if (0.0..=MOST_INTEREST).contains(&share) { Ok(share) } else { Err(right.into()) }
}

struct ToRun {
    jobs: Jobs,
    command: String,
}

fn prepared(asked: &Asked, reader: &dyn Reader) -> Ready {
    let scenario = reader.job(asked.file())?.scenario(&asked.selection())?;
    let list = reader.buckets(asked.files().last().map_or(asked.file(), PathBuf::as_path))?;
    one_currency(&scenario, &list)?;
    let wanted = Wanted {
        loader: loader(asked.maybe(&LOADER).as_deref(), &scenario)?,
        today: asked.maybe(&TODAY).map(|name| today(&name, &list)).transpose()?,
        barrows: asked.value(&BARROWS)?,
        seed: asked.value(&SEED)?,
        runs: asked.value(&RUNS)?,
        usage: usage(asked, &scenario, &list)?,
    };
    let told: &[&dyn AnyOpt] = match wanted.usage {
        Some(_) => &[
            &ALTERNATIVE,
            &CHANGE,
            &LOADER,
            &TODAY,
            &JOBS_PER_YEAR,
            &HOUR_WORTH,
            &YEARS,
            &INTEREST,
            &BARROWS,
            &SEED,
            &RUNS,
        ],
        None => &[&ALTERNATIVE, &CHANGE, &LOADER, &TODAY, &BARROWS, &SEED, &RUNS],
    };
    Ok(Box::new(ToRun { command: asked.command(told, &[]), jobs: Jobs::new(scenario, list, wanted)? }))
}

fn loader(name: Option<&str>, scenario: &Scenario) -> Result<usize, Failure> {
    let loaders = &scenario.job.loaders;
    let names: Vec<String> = loaders.iter().map(|loader| format!("\"{}\"", loader.name)).collect();
    let names = names.join(", ");
    let Some(name) = name.map(str::trim) else {
        return match loaders.len() {
            1 => Ok(0),
            n => Err(Failure::Asked(format!(
                "{} has {n} loaders; say which one the buckets are for with --loader: {names}; nothing was written",
                scenario.file
            ))),
        };
    };
    loaders.iter().position(|loader| loader.name == name).ok_or_else(|| {
        Failure::Asked(format!(
            "--loader \"{name}\": {} has no such loader; there is {names}; nothing was written",
            scenario.file
        ))
    })
}

fn today(name: &str, list: &BucketList) -> Result<usize, Failure> {
    let wrong = |why: String| Failure::Asked(format!("--today \"{name}\": {why}; nothing was written"));
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
    Err(Failure::Asked(format!(
        "{} is priced in \"{prices}\", {} in \"{file}\"; write both in one currency; nothing was written",
        list.file, scenario.file
    )))
}

fn usage(asked: &Asked, scenario: &Scenario, list: &BucketList) -> Result<Option<Usage>, Failure> {
    let (Some(jobs_per_year), Some(worth)) = (asked.maybe(&JOBS_PER_YEAR), asked.maybe(&HOUR_WORTH)) else {
        return Ok(None);
    };
    let known = [(&list.file, &list.currency), (&scenario.file, &scenario.currency)];
    if let Some((file, other)) = known.into_iter().find(|(_, c)| !c.is_empty() && **c != worth.currency) {
        return Err(Failure::Asked(format!(
            "--hour-worth \"{}\": {file} is priced in \"{other}\"; write it in the same currency; nothing was written",
            worth.typed
        )));
    }
    Ok(Some(Usage {
        jobs_per_year,
        // Hourly sums are typed for an hour and kept as such.
        hour_worth: worth.sum,
        currency: worth.currency,
        years: asked.value(&YEARS)?,
        interest: asked.value(&INTEREST)?,
    }))
}

impl Prepared for ToRun {
    fn further_files(&self) -> Vec<PathBuf> {
        self.jobs.scenario.observed_files.clone()
    }

    fn load(&self) -> Option<Load<'_>> {
        let Jobs { today, wanted, .. } = &self.jobs;
        Some(Load {
            kept: size_of::<Outcome>() as f64,
            option: ("--runs", wanted.runs),
            ..Load::of(vec![today], wanted.seed, self.jobs.runs_at_most())
        })
    }

    fn run(self: Box<Self>, made: &(dyn Fn(u32) + Sync)) -> Answered {
        let buckets = Buckets::new(self.jobs, self.command, made)?;
        let findings = super::findings::buckets(&buckets);
        Ok(Box::new((buckets, findings)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn jobs_are_whole_and_rise() {
        assert_eq!(jobs("20..35"), Ok((20, 35)));
        assert_eq!(jobs("25"), Ok((25, 25)));
        for wrong in ["5..2", "0", "2.5", "-3", "many", "", "10000"] {
            assert!(jobs(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn an_interest_is_a_share_of_nothing_to_all() {
        assert_eq!(interest("6 %"), Ok(0.06));
        assert_eq!(interest("0 %"), Ok(0.0));
        for wrong in ["-200 %", "-1 %", "101 %", "6", "much", ""] {
            assert!(interest(wrong).is_err(), "{wrong}");
        }
    }
}
