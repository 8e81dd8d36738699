//! heapcast against general-purpose simulation libraries: the same two jobs, the same answers, the time a load takes.

mod actors;
mod contest;
mod draws;
mod floor;
mod heapcast;
#[path = "../../sim/benches/engine/jobs.rs"]
#[allow(dead_code, reason = "shared with the benchmarks")]
mod jobs;
mod processes;
mod simpy;
mod table;

use clap::Parser;
use contest::{Answers, Contestant, Work};
use std::path::PathBuf;
use std::process::ExitCode;

/// Means further apart than this many standard errors of their difference are not the same answer. One honest comparison in
/// sixteen thousand would be.
const ERRORS_APART: f64 = 4.0;

/// Runs two jobs in heapcast and in general-purpose simulation libraries, checks that the answers agree, and prints how long
/// a load takes. One thread, round by round; figures are medians over the rounds, ratios those within one round.
#[derive(Parser)]
struct Args {
    /// A Python that has what requirements.txt names.
    #[arg(long, value_name = "PATH", default_value = "python3")]
    python: PathBuf,
    /// Leave Python out.
    #[arg(long, conflicts_with = "python")]
    without_python: bool,
    /// How many rounds.
    #[arg(long, value_name = "N", default_value_t = 7, value_parser = clap::value_parser!(u32).range(1..=1000))]
    rounds: u32,
    /// One small round, to see that everything still runs and agrees; the times mean nothing.
    #[arg(long, conflicts_with = "rounds")]
    once: bool,
    /// Print the tables as Markdown.
    #[arg(long)]
    markdown: bool,
}

/// What a contestant has shown of one job: a time for each round, and all its answers.
#[derive(Default)]
pub struct Shown {
    pub ns_per_load: Vec<f64>,
    pub answers: Option<Answers>,
}

/// A contestant with what it has shown of both jobs.
pub struct Row {
    pub name: String,
    pub shown: [Shown; 2],
}

fn main() -> ExitCode {
    match compare(&Args::parse()) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn compare(args: &Args) -> anyhow::Result<ExitCode> {
    let (rounds, share) = if args.once { (1, 10) } else { (args.rounds, 1) };
    let contestants = contestants(args)?;
    let mut rows: Vec<Row> =
        contestants.iter().map(|c| Row { name: c.name.clone(), shown: Default::default() }).collect();
    for round in 0..rounds {
        for (work, nth) in Work::BOTH.into_iter().zip(0..) {
            for (contestant, row) in contestants.iter().zip(&mut rows) {
                let runs = (contestant.runs[nth] / share).max(20);
                let pass = (contestant.pass)(work, runs, u64::from(round + 1))?;
                let shown = &mut row.shown[nth];
                shown.ns_per_load.push(pass.ns_per_load);
                if let Some(answers) = pass.answers {
                    shown.answers.get_or_insert_default().merge(&answers);
                }
            }
        }
    }
    println!("{}", table::times(&rows, args.markdown));
    println!("\n{}", table::answers(&rows, args.markdown));
    let apart = disagreements(&rows);
    for sentence in &apart {
        eprintln!("error: {sentence}");
    }
    Ok(if apart.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// The floor, heapcast (which all are measured by) and the libraries.
fn contestants(args: &Args) -> anyhow::Result<Vec<Contestant>> {
    let laws = draws::Laws::new()?;
    let mut contestants = vec![
        floor::contestant(laws),
        heapcast::contestant()?,
        contest::library(
            format!("odem-rs {}, processes", locked_version("odem-rs")?),
            [6_000, 600],
            laws,
            processes::one_and_one,
            processes::yard,
        ),
        contest::library(
            format!("NeXosim {}, actors", locked_version("nexosim")?),
            [1_500, 100],
            laws,
            actors::one_and_one,
            actors::yard,
        ),
    ];
    if !args.without_python {
        match simpy::contestant(&args.python)? {
            Ok(simpy) => contestants.push(simpy),
            Err(why) => println!("SimPy is left out: {why}\n"),
        }
    }
    Ok(contestants)
}

/// The version of a package that Cargo.lock names.
fn locked_version(package: &str) -> anyhow::Result<&'static str> {
    let lock = include_str!("Cargo.lock");
    lock.split_once(&format!("name = \"{package}\"\nversion = \""))
        .and_then(|(_, rest)| rest.split('"').next())
        .ok_or_else(|| anyhow::anyhow!("Cargo.lock does not name {package}"))
}

/// A sentence for each mean that is not heapcast's.
fn disagreements(rows: &[Row]) -> Vec<String> {
    let mut sentences = Vec::new();
    for (work, nth) in Work::BOTH.into_iter().zip(0..) {
        let Some(own) = rows[heapcast::ROW].shown[nth].answers else { continue };
        for row in rows.iter().skip(heapcast::ROW + 1) {
            let Some(theirs) = row.shown[nth].answers else { continue };
            let figures =
                [("completion", theirs.completion_s, own.completion_s), ("loads", theirs.loads, own.loads)];
            for (what, theirs, own) in figures {
                let apart = theirs.errors_apart(&own);
                if apart.is_nan() || apart.abs() > ERRORS_APART {
                    let (name, work) = (&row.name, work.name());
                    let (theirs, own) = (theirs.mean(), own.mean());
                    sentences.push(format!(
                        "{name}, {work}: mean {what} {theirs:.2} and heapcast's {own:.2} lie {apart:.1} standard errors \
                         apart, more than {ERRORS_APART}"
                    ));
                }
            }
        }
    }
    sentences
}
