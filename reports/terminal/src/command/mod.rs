//! What each command does: read, run, write, tell.

mod buckets;
mod check;
mod compare;
mod effort;
mod forecast;
mod keys;
mod materials;
mod new;
mod quote;
mod replay;
mod sweep;

use crate::cli::{Cli, Command, JobArgs, RowArgs, SayArgs};
use crate::failure::Failure;
use crate::files;
use crate::interrupt::Interrupt;
use crate::output_folder::OutputFolder;
use crate::progress::{Progress, Telling};
use crate::say;
use reports::answer::Answer;
use reports::failure::Failure as NoAnswer;
use scenarios::{Scenario, Selection};
use std::path::{Path, PathBuf};

/// Does what was asked.
///
/// # Errors
/// Whatever kept it from being done; nothing is written then.
pub(crate) fn run(cli: &Cli) -> Result<(), Failure> {
    let (file, done) = match &cli.command {
        Command::Forecast(args) => (Some(&args.job.file), forecast::run(args)),
        Command::Compare(args) => (args.files.first(), compare::run(args)),
        Command::Quote(args) => (Some(&args.job.file), quote::run(args)),
        Command::Buckets(args) => (Some(&args.job.file), buckets::run(args)),
        Command::Sweep(args) => (Some(&args.job.file), sweep::run(args)),
        Command::Replay(args) => (Some(&args.job.file), replay::run(args)),
        Command::Check(args) => (Some(&args.job.file), check::run(args)),
        Command::Materials(args) => (None, materials::run(args)),
        Command::Keys(args) => (None, keys::run(args)),
        Command::New(args) => (None, new::run(args)),
    };
    done.map_err(|failure| match file {
        Some(file) => failure.in_file(file),
        None => failure,
    })
}

/// Reads the job wanted, with the units wanted in place of the file's.
fn read(args: &JobArgs) -> Result<Scenario, Failure> {
    Ok(files::scenario(&args.file, &selection(args))?)
}

/// The variant of the job wanted.
fn selection(args: &JobArgs) -> Selection {
    Selection { alternative: args.alternative.clone(), changes: args.changes.clone(), units: args.units }
}

/// Makes sure of the folder for the results, which replaces none of the files that are read.
fn folder<'a>(
    out: &Path,
    names: &[&'static str],
    files: &[PathBuf],
    scenarios: impl IntoIterator<Item = &'a Scenario>,
) -> Result<OutputFolder, Failure> {
    let observed = scenarios.into_iter().flat_map(|scenario| scenario.observed_files.iter().cloned());
    let read: Vec<PathBuf> = files.iter().cloned().chain(observed).collect();
    Ok(OutputFolder::open(out, names, &read, Interrupt::listen())?)
}

/// Writes the files of an answer, then says it.
fn show(
    answer: &impl Answer,
    folder: OutputFolder,
    rows: RowArgs,
    out: &Path,
    say: SayArgs,
) -> Result<(), Failure> {
    write(answer, folder, rows, say)?;
    tell(answer, out, say)
}

/// Puts the files of an answer into place; a person who waits for it sees that something is being done.
fn write(answer: &impl Answer, folder: OutputFolder, rows: RowArgs, say: SayArgs) -> Result<(), Failure> {
    let progress = Progress::of("drawing the charts and writing the files", telling(say));
    let files = answer.files(rows.wanted()).map_err(Failure::from);
    let written = files.and_then(|files| Ok(folder.replace(&files)?));
    progress.finish();
    written?;
    rows_left_out(answer.runs(), rows, say);
    Ok(())
}

/// Says an answer: in a line, for programs, on the first screen or with all tables.
fn tell(answer: &impl Answer, out: &Path, say: SayArgs) -> Result<(), Failure> {
    if say.quiet {
        return say::out(&format!("{}\n", answer.headline()));
    }
    if say.json {
        for warning in answer.doubtful() {
            say::aside(&format!("warning: {} {}\n", warning.cause, warning.remedy));
        }
        return say::out_bytes(&answer.json()?);
    }
    let width = say::width();
    say::out(&if say.full { answer.full(out, width) } else { answer.first(out, width) })
}

/// Says where the table of runs does not hold all of them.
fn rows_left_out(runs: u32, rows: RowArgs, say: SayArgs) {
    if runs > rows.rows && !say.quiet {
        let [held, of] = [rows.rows, runs].map(|n| scenarios::units::figure(f64::from(n)));
        say::aside(&format!(
            "heapcast: runs.csv holds the first {held} of {of} runs; --rows {runs} for all\n"
        ));
    }
}

fn telling(say: SayArgs) -> Telling {
    if say.quiet { Telling::Never } else { Telling::OnTerminal }
}

fn plan(scenario: &Scenario) -> Result<sim::Plan, Failure> {
    Ok(sim::Plan::new(&scenario.job).map_err(|error| NoAnswer::Job { file: scenario.file.clone(), error })?)
}

/// Works with so many threads, or with all there are.
fn with_threads<T: Send>(threads: Option<u16>, work: impl FnOnce() -> T + Send) -> Result<T, Failure> {
    match threads {
        None => Ok(work()),
        Some(n) => Ok(rayon::ThreadPoolBuilder::new().num_threads(usize::from(n)).build()?.install(work)),
    }
}
