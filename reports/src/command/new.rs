//! `heapcast new`: a commented scenario file to start from.

use crate::cli::{AnswerArgs, NewArgs};
use crate::failure::Failure;
use crate::say;
use dialoguer::{Input, Select};
use scenarios::units::System;
use scenarios::{Answers, Selection, shipped, starter};
use std::fs::{self, File};
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::Path;

pub(super) fn run(args: &NewArgs) -> Result<(), Failure> {
    if args.file.exists() {
        return Err(Failure::FileExists(args.file.clone()));
    }
    let text = match &args.from {
        Some(name) => copy_of(name)?,
        None if args.answers.is_empty() && on_terminal() => starter(&ask()?),
        None => starter(&answers(&args.answers)),
    };
    let shown = args.file.display().to_string();
    let folder = args.file.parent().unwrap_or(Path::new("."));
    // An answer that makes no sense is told like any other problem of a file, before there is one.
    if args.from.is_none() {
        scenarios::read_text(&text, &shown, folder, &Selection::default())?;
    }
    write_new(&args.file, &text)?;
    say::out(&format!(
        "Wrote {shown}. Read it, change what is different on your job, then:\n  heapcast check {shown}\n  heapcast \
         forecast {shown}\n"
    ))
}

fn copy_of(name: &str) -> Result<String, Failure> {
    let plain = name.trim_end_matches(".toml");
    let found = shipped().iter().find(|(shipped, _)| shipped.trim_end_matches(".toml") == plain);
    found.map(|(_, text)| (*text).to_owned()).ok_or_else(|| {
        let names: Vec<&str> = shipped().iter().map(|(name, _)| *name).collect();
        Failure::Asked(format!("no shipped scenario is called \"{name}\"; there are: {}", names.join(", ")))
    })
}

fn on_terminal() -> bool {
    std::io::stdin().is_terminal() && std::io::stderr().is_terminal()
}

/// The flags over the usual answers.
fn answers(args: &AnswerArgs) -> Answers {
    let usual = Answers::usual(args.units.unwrap_or(System::Us));
    let args = args.clone();
    Answers {
        title: args.title.unwrap_or(usual.title),
        units: usual.units,
        material: args.material.unwrap_or(usual.material),
        volume: args.volume.unwrap_or(usual.volume),
        bucket: args.bucket.unwrap_or(usual.bucket),
        distance: args.distance.unwrap_or(usual.distance),
        rakers: args.rakers.unwrap_or(usual.rakers),
        gate: args.gate.or(usual.gate),
        start: args.start.unwrap_or(usual.start),
    }
}

/// Asks question by question; Enter takes the usual answer.
fn ask() -> Result<Answers, Failure> {
    say::aside("Enter takes the answer in brackets. Every figure is typed with its unit.\n");
    let systems = [System::Us, System::Metric];
    let names = ["US: yards, feet, pounds, gallons", "metric: metres, kilograms, litres"];
    let chosen = Select::new().with_prompt("Units").items(names).default(0).interact()?;
    let usual = Answers::usual(systems.get(chosen).copied().unwrap_or(System::Us));
    let text = |prompt: &str, usual: String| {
        Input::<String>::new().with_prompt(prompt).default(usual).interact_text().map_err(Failure::from)
    };
    let gate: String = Input::new()
        .with_prompt("Clear width of a gate on the way, if there is one")
        .allow_empty(true)
        .default(usual.gate.clone().unwrap_or_default())
        .show_default(false)
        .interact_text()?;
    Ok(Answers {
        title: text("What is the job called", usual.title)?,
        units: usual.units,
        material: text("Material", usual.material)?,
        volume: text("Loose volume to move", usual.volume)?,
        bucket: text("Heaped capacity of the bucket", usual.bucket)?,
        distance: text("Distance from the pile to the middle of the ground", usual.distance)?,
        gate: Some(gate.trim().to_owned()).filter(|width| !width.is_empty()),
        rakers: Input::new().with_prompt("People who rake").default(usual.rakers).interact_text()?,
        start: text("Start of the day", usual.start)?,
    })
}

/// Writes a file that must not be there yet; on an error none is left.
fn write_new(file: &Path, text: &str) -> Result<(), Failure> {
    let failed = |error: std::io::Error| match error.kind() {
        ErrorKind::AlreadyExists => Failure::FileExists(file.to_owned()),
        _ => Failure::NewFile { file: file.to_owned(), error },
    };
    let mut new = File::create_new(file).map_err(failed)?;
    new.write_all(text.as_bytes()).and_then(|()| new.sync_all()).map_err(|error| {
        // What is half-written helps nobody; the first error is the one told.
        let _ = fs::remove_file(file);
        failed(error)
    })
}
