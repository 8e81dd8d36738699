//! `heapcast new`: a commented scenario file to start from.

use crate::cli::{AnswerArgs, NewArgs};
use crate::failure::Failure;
use crate::say;
use dialoguer::{Input, Select};
use scenarios::units::System;
use scenarios::{AnsweredPrices, Answers, LiftFigure, Selection, Texts, materials, shipped, starter};
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
    let shown = scenarios::shown_path(&args.file);
    // An answer that makes no sense is told like any other problem of a file, before there is one.
    if args.from.is_none() {
        scenarios::read_text(&text, &shown, Texts::default(), &Selection::default())?;
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
        Failure::asked(format!("no shipped scenario is called \"{name}\"; there are: {}", names.join(", ")))
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
        truckload: args.truckload.unwrap_or(usual.truckload),
        bucket: args.bucket.unwrap_or(usual.bucket),
        distance: args.distance.unwrap_or(usual.distance),
        rakers: args.rakers.unwrap_or(usual.rakers),
        gate: args.gate.or(usual.gate),
        start: args.start.unwrap_or(usual.start),
        breaks: args.breaks.unwrap_or(usual.breaks),
        lift: args.lift.given(),
        prices: AnsweredPrices {
            material: args.price,
            machine: args.machine_cost,
            operator: args.operator_cost,
            raker: args.raker_cost,
        },
    }
}

/// Asks question by question; Enter takes the usual answer, and what makes no sense is asked again.
fn ask() -> Result<Answers, Failure> {
    say::aside("Enter takes the answer in brackets. Every figure is typed with its unit.\n");
    let system = Input::<System>::new().with_prompt("Units to write in, us or metric").default(System::Us);
    let mut answers = Answers::usual(system.interact_text()?);
    question(&mut answers, "What the job is called", |a| &mut a.title)?;
    answers.material = ask_material(&answers)?;
    question(&mut answers, "Loose volume to move, or area and depth as in 1200 ft2 at 4 in", |a| {
        &mut a.volume
    })?;
    question(&mut answers, "What a truck brings at a time", |a| &mut a.truckload)?;
    question(&mut answers, "Heaped capacity of the bucket", |a| &mut a.bucket)?;
    question(&mut answers, "Distance from the pile to the middle of the ground", |a| &mut a.distance)?;
    answers.lift = ask_lift(&answers)?;
    answers.gate = may_be_left(&answers, "Clear width of a gate on the way", |a, typed| a.gate = typed)?;
    answers.rakers = Input::new().with_prompt("People who rake").default(answers.rakers).interact_text()?;
    question(&mut answers, "Start of the day", |a| &mut a.start)?;
    let breaks = may_be_left(&answers, "Breaks, as in 12:00-12:30", |a, typed| {
        a.breaks = typed.unwrap_or_default();
    })?;
    answers.breaks = breaks.unwrap_or_default();
    ask_prices(&mut answers)?;
    Ok(answers)
}

/// The usual materials as a list, and a way to type another word.
fn ask_material(answers: &Answers) -> Result<String, Failure> {
    let known = materials();
    let mut names: Vec<&str> = known.iter().map(|material| material.name.as_str()).collect();
    names.push("another word");
    let usual = names.iter().position(|name| *name == answers.material).unwrap_or_default();
    let chosen = Select::new().with_prompt("Material").items(&names).default(usual).interact()?;
    if let Some(material) = known.get(chosen) {
        return Ok(material.name.clone());
    }
    let mut other = answers.clone();
    question(&mut other, "Material", |a| &mut a.material)?;
    Ok(other.material)
}

fn ask_lift(answers: &Answers) -> Result<Option<(LiftFigure, String)>, Failure> {
    let figures = LiftFigure::ALL;
    let mut names: Vec<&str> = figures.iter().map(|figure| figure.words()).collect();
    names.push("not known");
    let prompt = "What the machine may lift: which figure stands in its manual";
    let chosen = Select::new().with_prompt(prompt).items(&names).default(figures.len()).interact()?;
    let Some(figure) = figures.get(chosen).copied() else { return Ok(None) };
    let typed = may_be_left(answers, "How much the manual says", |a, typed| {
        a.lift = typed.map(|typed| (figure, typed));
    })?;
    Ok(typed.map(|typed| (figure, typed)))
}

/// Prices: each answer is tried in the file with those before it, so that currencies agree.
fn ask_prices(answers: &mut Answers) -> Result<(), Failure> {
    type Price = fn(&mut Answers) -> &mut Option<String>;
    let questions: [(&str, Price); 4] = [
        ("Price of the material, as in $18/yd3", |a| &mut a.prices.material),
        ("What an hour of the machine costs, as in $25/h", |a| &mut a.prices.machine),
        ("What an hour of its operator costs", |a| &mut a.prices.operator),
        ("What an hour of somebody who rakes costs", |a| &mut a.prices.raker),
    ];
    for (prompt, price) in questions {
        let typed = may_be_left(answers, prompt, |a, typed| *price(a) = typed)?;
        *price(answers) = typed;
    }
    Ok(())
}

fn question(
    answers: &mut Answers,
    prompt: &str,
    field: fn(&mut Answers) -> &mut String,
) -> Result<(), Failure> {
    let before = answers.clone();
    let makes_sense = move |typed: &String| {
        let mut tried = before.clone();
        field(&mut tried).clone_from(typed);
        check(&tried)
    };
    let usual = field(answers).clone();
    let input = Input::new().with_prompt(prompt).default(usual).validate_with(makes_sense);
    *field(answers) = input.interact_text()?;
    Ok(())
}

/// A question that Enter leaves without an answer.
fn may_be_left(
    answers: &Answers,
    prompt: &str,
    put: impl Fn(&mut Answers, Option<String>),
) -> Result<Option<String>, Failure> {
    let said = |typed: &str| Some(typed.trim().to_owned()).filter(|typed| !typed.is_empty());
    let typed: String = Input::new()
        .with_prompt(format!("{prompt}, Enter if there is none"))
        .allow_empty(true)
        .validate_with(|typed: &String| {
            let mut tried = answers.clone();
            put(&mut tried, said(typed));
            check(&tried)
        })
        .interact_text()?;
    Ok(said(&typed))
}

/// What is wrong with the answers so far, in a line.
fn check(answers: &Answers) -> Result<(), String> {
    let read = scenarios::read_text(&starter(answers), "", Texts::default(), &Selection::default());
    let told = |p: &scenarios::Problem| {
        if p.right.is_empty() { p.what.clone() } else { format!("{}; {}", p.what, p.right) }
    };
    read.map(drop).map_err(|refusal| refusal.problems.first().map(told).unwrap_or_default())
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
