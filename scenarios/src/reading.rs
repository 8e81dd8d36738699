//! From text to a checked scenario.

use crate::build::{self, Built};
use crate::check;
use crate::document::{self, Table};
use crate::ledger::{Ledger, Place};
use crate::nearest::nearest;
use crate::problem::{Problem, Refusal};
use crate::raw::{self, RawAlternative, quoted};
use crate::scenario::{Scenario, Selection};
use crate::units::System;
use crate::{caution, hash};
use sim::Plan;
use std::path::Path;

/// Reads a text; `bytes` are the file's own.
pub(crate) fn text(
    text: &str,
    file: &str,
    folder: &Path,
    selection: &Selection,
) -> Result<Scenario, Refusal> {
    let refuse = |problems| Err(Refusal { file: file.to_owned(), text: text.to_owned(), problems });
    let mut ledger = Ledger::new(file, text, folder);
    let table = match document::parse(text) {
        Ok(table) => table,
        Err(faults) => {
            for fault in faults {
                let place = Place { span: fault.span, ..Place::default() };
                ledger.problem(&place, "", fault.what, fault.right);
            }
            return refuse(ledger.into_problems());
        }
    };
    if table.entries.is_empty() {
        let right = "begin with [material], [[zone]], [[stockpile]], [[loader]] and [[raker]]";
        ledger.problem(&Place::default(), "", "this file is empty", right);
        return refuse(ledger.into_problems());
    }
    let alternatives = raw::alternatives(&table, &mut ledger);
    let base = job(&table, selection.units, &mut ledger);
    for alternative in &alternatives {
        if ledger.is_full() {
            break;
        }
        try_alternative(alternative, &table, (file, text, folder), &mut ledger);
    }
    let chosen = selection.alternative.as_ref().map(|name| choose(name, &alternatives, &mut ledger));
    if !ledger.is_clean() {
        return refuse(ledger.into_problems());
    }
    let (built, mut ledger) = match chosen.flatten() {
        None => (base, ledger),
        Some(alternative) => {
            let mut ledger = Ledger::new(file, text, folder);
            let built = alternative
                .apply(&table, &mut ledger)
                .and_then(|table| job(&table, selection.units, &mut ledger));
            (built, ledger)
        }
    };
    let Some((raw, built)) = built else {
        let right = "this is a fault of the program, not of the file; please report it";
        ledger.problem(&Place::default(), "", "the job could not be made", right);
        return refuse(ledger.into_problems());
    };
    Ok(scenario(raw, built, &alternatives, (file, text), selection, ledger))
}

type Job = (raw::Raw, Built);

/// Makes the job of a table, if nothing is wrong with it.
fn job(table: &Table, units: Option<System>, ledger: &mut Ledger<'_>) -> Option<Job> {
    let raw = raw::read(table, ledger);
    check::check(&raw, ledger);
    let heard = build::chance::hear(&raw, ledger);
    if !ledger.is_clean() {
        return None;
    }
    let system = shown_in(units, &raw, ledger);
    let built = build::job(&raw, heard, system, ledger)?;
    match Plan::check(&built.job) {
        Ok(()) => Some((raw, built)),
        Err(error) => {
            ledger.problem(&Place::default(), "", error.to_string(), "change the figures concerned");
            None
        }
    }
}

/// The units to speak in: those wanted, those the file asks for, or those it uses most.
fn shown_in(wanted: Option<System>, raw: &raw::Raw, ledger: &Ledger<'_>) -> System {
    let of_file = || raw.units.as_ref().map(|units| units.value);
    wanted.or_else(of_file).unwrap_or_else(|| ledger.usual_system())
}

/// Reads the file with an alternative's changes; what is then wrong and was not before is told at the alternative.
fn try_alternative(
    alternative: &RawAlternative,
    table: &Table,
    (file, text, folder): (&str, &str, &Path),
    ledger: &mut Ledger<'_>,
) {
    let mut own = Ledger::new(file, text, folder);
    if let Some(changed) = alternative.apply(table, &mut own) {
        job(&changed, None, &mut own);
    }
    let known: Vec<Problem> = ledger.problems().to_vec();
    for problem in own.into_problems() {
        if known.iter().any(|other| other.span == problem.span && other.what == problem.what) {
            continue;
        }
        let inside = problem.span.as_ref().is_some_and(|span| alternative.spans.contains(span));
        let name = &alternative.name;
        let prefix = format!("alternative \"{}\"", name.value);
        let words = match problem.key.as_str() {
            "" => prefix,
            key if key.starts_with(&prefix) => key.to_owned(),
            key => format!("{prefix}: {key}"),
        };
        let span = if inside { problem.span } else { name.place.span.clone() };
        ledger.problem(
            &Place { words, path: String::new(), span },
            &problem.value,
            problem.what,
            problem.right,
        );
    }
}

fn choose<'a>(
    name: &str,
    alternatives: &'a [RawAlternative],
    ledger: &mut Ledger<'_>,
) -> Option<&'a RawAlternative> {
    let found = alternatives.iter().find(|alternative| alternative.name.value == name.trim());
    if found.is_none() {
        let names: Vec<String> = alternatives.iter().map(|other| other.name.value.clone()).collect();
        let right = match nearest(name, names.iter().map(String::as_str)) {
            Some(near) => format!("the nearest is \"{near}\""),
            None if names.is_empty() => "the file has no alternatives".into(),
            None => format!("there are {}", quoted(&names)),
        };
        ledger.problem(&Place::default(), "", format!("there is no alternative called \"{name}\""), right);
    }
    found
}

fn scenario(
    raw: raw::Raw,
    built: Built,
    alternatives: &[RawAlternative],
    (file, text): (&str, &str),
    selection: &Selection,
    mut ledger: Ledger<'_>,
) -> Scenario {
    let units = shown_in(selection.units, &raw, &ledger);
    if raw.units.is_none() && selection.units.is_none() {
        let words = format!("results are shown in {units} units, which the file uses most");
        ledger.assume("units", words, "as the file is written");
    }
    let cautions = caution::all(&built.job, built.ordered_m3, built.stated.truckload_m3, units);
    let stem = Path::new(file).file_stem().map(|stem| stem.to_string_lossy().into_owned());
    Scenario {
        title: raw.title.map_or_else(|| stem.unwrap_or_else(|| file.to_owned()), |title| title.value),
        file: file.to_owned(),
        hash: hash::sha256(text.as_bytes(), &ledger.further_files),
        date: raw.date.map(|date| date.value),
        units,
        currency: ledger.currency().unwrap_or_default().to_owned(),
        alternatives: alternatives.iter().map(|alternative| alternative.name.value.clone()).collect(),
        alternative: selection.alternative.as_ref().map(|name| name.trim().to_owned()),
        job: built.job,
        ordered_m3: built.ordered_m3,
        assumptions: ledger.assumptions,
        cautions,
        stated: built.stated,
    }
}

#[cfg(test)]
mod tests;
