//! Any question about a job: read, run, write, tell.

use super::effort::Effort;
use super::parts;
use super::work::{telling, with_threads};
use crate::cli::{Ask, OwnArgs, RowArgs, SayArgs};
use crate::disk::Disk;
use crate::failure::Failure;
use crate::interrupt::Interrupt;
use crate::output_folder::OutputFolder;
use crate::progress::Progress;
use crate::say;
use reports::answer::Answer;
use reports::ask::{Asked, Prepared, Question};
use std::path::{Path, PathBuf};

pub(super) fn run(ask: &Ask) -> Result<(), Failure> {
    let asked = ask.asked()?;
    answered(ask.question, &asked, &ask.own).map_err(|failure| failure.in_file(asked.file()))
}

fn answered(question: &Question, asked: &Asked, own: &OwnArgs) -> Result<(), Failure> {
    let prepared = with_threads(own.threads, || question.prepare(asked, &Disk))??;
    let (Some(folder), Some(out)) = (question.folder, &own.out) else {
        return tell(&*prepared.run(&|_| ())?, Path::new(""), own.say);
    };
    let read: Vec<PathBuf> = asked.files().iter().cloned().chain(prepared.further_files()).collect();
    let open = |names: &[&'static str]| OutputFolder::open(out, names, &read, Interrupt::listen());
    if let Some(share) = own.parts.part {
        return parts::make(share, prepared, own, out, open(&[crate::part_file::PART])?);
    }
    let folder = open(folder.files)?;
    let answer = if own.parts.merge.is_empty() { make(prepared, own) } else { parts::merged(prepared, own) }?;
    write(&*answer, folder, own)?;
    if let Some(words) = answer.besides() {
        say::aside(&format!("heapcast: {words}\n"));
    }
    tell(&*answer, out, own.say)
}

/// Makes all runs, if they are not too many.
fn make(prepared: Box<dyn Prepared>, own: &OwnArgs) -> Result<Box<dyn Answer + Send>, Failure> {
    let load = prepared.load();
    if let Some(effort) = load.as_ref().and_then(|load| Effort::of(load, own.rows)) {
        effort.say(&own.limits, own.threads)?;
    }
    let progress = Progress::new(load.and_then(|load| load.in_all), telling(own.say));
    let answer = with_threads(own.threads, || prepared.run(&|runs| progress.made(runs)))?;
    progress.finish();
    Ok(answer?)
}

/// Puts the files of an answer into place; a person who waits for it sees that something is being done.
fn write(answer: &dyn Answer, folder: OutputFolder, own: &OwnArgs) -> Result<(), Failure> {
    let progress = Progress::of("drawing the charts and writing the files", telling(own.say));
    let files = with_threads(own.threads, || answer.files(own.rows.wanted()));
    let files = files.and_then(|files| files.map_err(Failure::from));
    let written = files.and_then(|files| Ok(folder.replace(&files)?));
    progress.finish();
    written?;
    rows_left_out(answer.runs(), own.rows, own.say);
    Ok(())
}

/// Says an answer: in a line, for programs, on the first screen or with all tables.
fn tell(answer: &dyn Answer, out: &Path, say: SayArgs) -> Result<(), Failure> {
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
