//! From text to a checked scenario.

mod alternatives;
mod changes;
mod turn;

pub(crate) use changes::Asked;
pub(crate) use turn::mean_haul;

use crate::build::chance::Statements;
use crate::build::{self, Built};
use crate::check;
use crate::diagnostics::{Diagnostics, Place, Said};
use crate::document::{self, Table};
use crate::files::Files;
use crate::knob::Knob;
use crate::problem::{Problem, Refusal};
use crate::raw::{self, RawAlternative};
use crate::scenario::{Assumption, Scenario, Selection};
use crate::signs::{composed, escaped};
use crate::units::System;
use crate::{caution, hash};
use alternatives::{choose, try_alternative};
use changes::Mark;
use sim::Plan;
use std::path::Path;
use std::sync::Arc;
use turn::Before;

/// A scenario file that has been read and in which nothing was found wrong: neither with the job as it stands nor with any of
/// its alternatives. Whoever wants several scenarios of one file reads it once.
///
/// ```
/// use scenarios::{JobFile, Selection, Texts};
/// let (name, text) = scenarios::shipped()[6];
/// let file = JobFile::of_text(text, name, Texts::default()).unwrap();
/// let changes = vec!["rakers = 2".parse().unwrap()];
/// let two = file.scenario(&Selection { changes, ..Selection::default() }).unwrap();
/// assert_eq!((two.job.rakers.len(), two.name().as_str()), (2, "rakers = 2"));
/// ```
#[derive(Clone, Debug)]
pub struct JobFile {
    file: String,
    text: String,
    files: Arc<dyn Files>,
    table: Table,
    /// The job as it stands, as typed and made.
    base: Arc<Made>,
    alternatives: Vec<RawAlternative>,
    /// The job with each of the alternatives.
    with: Vec<Arc<Made>>,
    /// The units it uses most, whatever is changed.
    system: System,
}

impl JobFile {
    /// Reads the text of a file; those it names are asked of `files`.
    ///
    /// # Errors
    /// Everything that is wrong with it, in one go.
    pub fn of_text(text: &str, file: &str, files: impl Files + 'static) -> Result<Self, Refusal> {
        let refuse = |problems| Err(Refusal { file: file.to_owned(), text: text.to_owned(), problems });
        let mut diagnostics = Diagnostics::new(file, text, &files);
        let table = match document::parse(text) {
            Ok(table) => table,
            Err(faults) => {
                for fault in faults {
                    let place = Place { span: fault.span, ..Place::default() };
                    diagnostics.problem(&place, "", fault.what, fault.right);
                }
                return refuse(diagnostics.into_problems());
            }
        };
        if table.entries.is_empty() {
            let right = "begin with [material], [[zone]], [[stockpile]], [[loader]] and [[raker]]";
            diagnostics.problem(&Place::default(), "", "this file is empty", right);
            return refuse(diagnostics.into_problems());
        }
        let alternatives = raw::alternatives(&table, &mut diagnostics);
        let base = make(&table, Units::default(), &mut diagnostics);
        let system = diagnostics.usual_system();
        let units = Units { wanted: None, used_most: Some(system) };
        let mut with = Vec::new();
        for alternative in &alternatives {
            if diagnostics.is_full() {
                break;
            }
            let own = Diagnostics::new(file, text, &files);
            with.extend(try_alternative(alternative, &table, own, units, &mut diagnostics).map(Arc::new));
        }
        match base {
            Some(base) if diagnostics.is_clean() && with.len() == alternatives.len() => Ok(Self {
                file: file.to_owned(),
                text: text.to_owned(),
                files: Arc::new(files),
                table,
                base: Arc::new(base),
                alternatives,
                with,
                system,
            }),
            _ => {
                if diagnostics.is_clean() {
                    diagnostics.problem(&Place::default(), "", "the job could not be made", PROGRAM);
                }
                refuse(diagnostics.into_problems())
            }
        }
    }

    /// Name of the file as typed.
    pub fn file(&self) -> &str {
        &self.file
    }

    /// Names of its alternatives, in its order.
    pub fn alternatives(&self) -> Vec<String> {
        self.alternatives.iter().map(|alternative| alternative.name.value.clone()).collect()
    }

    /// The job as it stands, or as selected: first the alternative's changes, then those asked for, in their order.
    ///
    /// # Errors
    /// What is wrong with the selection: an alternative that is not there, changes that cannot be made, or that make the job
    /// impossible; the key of each problem of a change begins with `--change "..."`.
    pub fn scenario(&self, selection: &Selection) -> Result<Scenario, Refusal> {
        let asked: Vec<Asked> = selection.changes.iter().map(Asked::by_change).collect();
        self.changed(selection, &asked)
    }

    /// As [`JobFile::scenario`], with the changes asked for in place of those of the selection.
    pub(crate) fn changed(&self, selection: &Selection, asked: &[Asked]) -> Result<Scenario, Refusal> {
        let mut diagnostics = self.diagnostics();
        let units = Units { wanted: selection.units, used_most: Some(self.system) };
        let chosen = match &selection.alternative {
            None => None,
            Some(name) => match choose(name, &self.alternatives, &mut diagnostics) {
                None => return Err(self.refusal(diagnostics.into_problems())),
                index => index,
            },
        };
        let start = chosen.map_or(&self.base, |index| &self.with[index]);
        if asked.is_empty() {
            let made = start.again(units, &mut diagnostics);
            let made = made.ok_or_else(|| self.not_made(diagnostics, &[]))?;
            return Ok(self.finished(made, selection, asked));
        }
        let table = chosen.map(|index| self.alternatives[index].apply(&self.table, &mut diagnostics));
        let mut table = table.unwrap_or_else(|| Some(self.table.clone())).unwrap_or_default();
        let marks = changes::marks(asked, &self.text);
        let mut assumed = Vec::new();
        for (i, (one, mark)) in asked.iter().zip(&marks).enumerate() {
            let before = match Knob::of(&one.change.key) {
                Knob::Key(_) => None,
                _ if i == 0 => Some(start.clone()),
                _ => {
                    let mut own = self.diagnostics();
                    match make(&table, units, &mut own) {
                        Some(made) => Some(Arc::new(made)),
                        None => return Err(self.refusal(changes::told(own.into_problems(), &marks))),
                    }
                }
            };
            let before = before.as_deref().map(|made| made.before(units));
            assumed.extend(changes::make(&one.change, mark, &mut table, before.as_ref(), &mut diagnostics));
        }
        let made = if diagnostics.is_clean() { make(&table, units, &mut diagnostics) } else { None };
        let mut made = made.ok_or_else(|| self.not_made(diagnostics, &marks))?;
        made.said.assumptions.extend(assumed.into_iter().flatten().map(|(key, words, from)| Assumption {
            key: key.into(),
            words,
            from: from.into(),
        }));
        Ok(self.finished(made, selection, asked))
    }

    fn diagnostics(&self) -> Diagnostics<'_> {
        Diagnostics::new(&self.file, &self.text, &*self.files)
    }

    /// Why a job was not made, told at the changes.
    fn not_made(&self, mut diagnostics: Diagnostics<'_>, marks: &[Mark]) -> Refusal {
        if diagnostics.is_clean() {
            diagnostics.problem(&Place::default(), "", "the job could not be made", PROGRAM);
        }
        self.refusal(changes::told(diagnostics.into_problems(), marks))
    }

    fn refusal(&self, problems: Vec<Problem>) -> Refusal {
        Refusal { file: self.file.clone(), text: self.text.clone(), problems }
    }
}

const PROGRAM: &str = "this is a fault of the program, not of the file; please report it";

/// A job as typed and as made from that, in which nothing is wrong.
#[derive(Clone, Debug)]
struct Made {
    raw: Arc<raw::Raw>,
    statements: Arc<Statements>,
    /// What came up when it was read.
    read: Said,
    /// What came up until it was made.
    said: Said,
    system: System,
    built: Built,
}

/// Units to speak in: those wanted, those the file asks for, or those it uses most.
#[derive(Clone, Copy, Default)]
struct Units {
    wanted: Option<System>,
    used_most: Option<System>,
}

impl Units {
    fn shown(self, raw: &raw::Raw, usual: System) -> System {
        let of_file = || raw.units.as_ref().map(|units| units.value);
        self.wanted.or_else(of_file).unwrap_or_else(|| self.used_most.unwrap_or(usual))
    }
}

/// Makes the job of a table, if nothing is wrong with it.
fn make(table: &Table, units: Units, diagnostics: &mut Diagnostics<'_>) -> Option<Made> {
    let raw = raw::read(table, diagnostics);
    check::check(&raw, diagnostics);
    let statements = build::chance::statements(&raw, diagnostics);
    if !diagnostics.is_clean() {
        return None;
    }
    let system = units.shown(&raw, diagnostics.usual_system());
    let read = diagnostics.said.clone();
    let built = build(&raw, &statements, system, diagnostics)?;
    let said = diagnostics.said.clone();
    Some(Made { raw: Arc::new(raw), statements: Arc::new(statements), read, said, system, built })
}

fn build(
    raw: &raw::Raw,
    statements: &Statements,
    system: System,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Built> {
    let built = build::job(raw, statements, system, diagnostics)?;
    match Plan::check(&built.job) {
        Ok(()) => Some(built),
        Err(error) => {
            diagnostics.problem(&Place::default(), "", error.to_string(), "change the figures concerned");
            None
        }
    }
}

impl Made {
    /// The same job, spoken of in the units wanted.
    fn again(&self, units: Units, diagnostics: &mut Diagnostics<'_>) -> Option<Made> {
        let system = units.shown(&self.raw, self.system);
        if system == self.system {
            return Some(self.clone());
        }
        diagnostics.said = self.read.clone();
        let built = build(&self.raw, &self.statements, system, diagnostics)?;
        Some(Made { said: diagnostics.said.clone(), system, built, ..self.clone() })
    }

    fn before(&self, units: Units) -> Before<'_> {
        Before { raw: &self.raw, job: &self.built.job, system: units.shown(&self.raw, self.system) }
    }
}

impl JobFile {
    fn finished(&self, made: Made, selection: &Selection, asked: &[Asked]) -> Scenario {
        let Made { raw, mut said, built, system: units, .. } = made;
        if raw.units.is_none() && selection.units.is_none() {
            let words = format!("results are shown in {units} units, which the file uses most");
            let (key, from) = ("units".into(), "as the file is written".into());
            said.assumptions.push(Assumption { key, words, from });
        }
        let cautions = caution::all(&built.job, &built.stated, built.ordered_m3, units);
        let stem = Path::new(&self.file).file_stem().map(|stem| escaped(&stem.to_string_lossy()));
        let title = raw.title.as_ref().map(|title| title.value.clone());
        Scenario {
            title: title.or(stem).unwrap_or_else(|| self.file.clone()),
            file: self.file.clone(),
            hash: hash::sha256(self.text.as_bytes(), &said.files_read),
            currency: said.currency().unwrap_or_default().to_owned(),
            observed_files: said.files_read.into_iter().map(|file| file.path).collect(),
            date: raw.date.as_ref().map(|date| date.value),
            units,
            alternatives: self.alternatives(),
            alternative: selection.alternative.as_ref().map(|name| composed(name.trim())),
            changes: asked.iter().map(|one| one.change.clone()).collect(),
            job: built.job,
            ordered_m3: built.ordered_m3,
            assumptions: said.assumptions,
            cautions,
            stated: built.stated,
        }
    }
}

#[cfg(test)]
mod tests;
