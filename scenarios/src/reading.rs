//! From text to a checked scenario.

mod alternatives;
mod changes;
mod turn;

pub(crate) use changes::Asked;
pub(crate) use turn::mean_haul;

use crate::build::{self, Built};
use crate::change::Change;
use crate::check;
use crate::document::{self, Table};
use crate::knob::Knob;
use crate::ledger::{Ledger, Place};
use crate::problem::{Problem, Refusal};
use crate::raw::{self, RawAlternative};
use crate::scenario::{Scenario, Selection};
use crate::signs::{composed, escaped, shown_path};
use crate::units::System;
use crate::{caution, hash, source};
use alternatives::{choose, try_alternative};
use sim::Plan;
use std::path::{Path, PathBuf};
use turn::Before;

/// A scenario file that has been read and in which nothing was found wrong: neither with the job as it stands nor with any of
/// its alternatives. Whoever wants several scenarios of one file reads it once.
///
/// ```
/// use scenarios::{JobFile, Selection};
/// let (name, text) = scenarios::shipped()[6];
/// let file = JobFile::of_text(text, name, std::path::Path::new(".")).unwrap();
/// let changes = vec!["rakers = 2".parse().unwrap()];
/// let two = file.scenario(&Selection { changes, ..Selection::default() }).unwrap();
/// assert_eq!((two.job.rakers.len(), two.name().as_str()), (2, "rakers = 2"));
/// ```
#[derive(Clone, Debug)]
pub struct JobFile {
    file: String,
    text: String,
    folder: PathBuf,
    table: Table,
    alternatives: Vec<RawAlternative>,
    /// The units it uses most, whatever is changed.
    system: System,
}

impl JobFile {
    /// Reads a file.
    ///
    /// # Errors
    /// Everything that is wrong with it, in one go.
    pub fn open(path: &Path) -> Result<Self, Refusal> {
        let file = shown_path(path);
        let folder = path.parent().unwrap_or(Path::new(""));
        match source::text(path) {
            Ok(text) => Self::of_text(&text, &file, folder),
            Err(unread) => Err(unread.refusal(file)),
        }
    }

    /// Reads the text of a file; files of observed values are looked for in `folder`.
    ///
    /// # Errors
    /// Everything that is wrong with it, in one go.
    pub fn of_text(text: &str, file: &str, folder: &Path) -> Result<Self, Refusal> {
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
        let base = job(&table, Units::default(), &mut ledger);
        let system = ledger.usual_system();
        for alternative in &alternatives {
            if ledger.is_full() {
                break;
            }
            try_alternative(alternative, &table, (file, text, folder), &mut ledger);
        }
        match base {
            Some(_) if ledger.is_clean() => Ok(Self {
                file: file.to_owned(),
                text: text.to_owned(),
                folder: folder.to_owned(),
                table,
                alternatives,
                system,
            }),
            _ => {
                if ledger.is_clean() {
                    ledger.problem(&Place::default(), "", "the job could not be made", PROGRAM);
                }
                refuse(ledger.into_problems())
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
        let mut ledger = Ledger::new(&self.file, &self.text, &self.folder);
        let mut table = self.table.clone();
        if let Some(name) = &selection.alternative {
            let found = choose(name, &self.alternatives, &mut ledger);
            match found.and_then(|alternative| alternative.apply(&table, &mut ledger)) {
                Some(changed) => table = changed,
                None => return Err(self.refusal(ledger.into_problems())),
            }
        }
        let marks = changes::marks(asked, &self.text);
        let mut assumed = Vec::new();
        let units = Units { wanted: selection.units, used_most: Some(self.system) };
        for (one, mark) in asked.iter().zip(&marks) {
            let before = match self.before(&one.change, &table, units) {
                Ok(before) => before,
                Err(problems) => return Err(self.refusal(changes::told(problems, &marks))),
            };
            assumed.extend(changes::make(&one.change, mark, &mut table, before.as_ref(), &mut ledger));
        }
        let built = if ledger.is_clean() { job(&table, units, &mut ledger) } else { None };
        match built {
            Some((raw, built)) => {
                assumed.into_iter().flatten().for_each(|(key, words, from)| ledger.assume(key, words, from));
                Ok(self.finished(raw, built, selection, asked, ledger))
            }
            None => {
                if ledger.is_clean() {
                    ledger.problem(&Place::default(), "", "the job could not be made", PROGRAM);
                }
                Err(self.refusal(changes::told(ledger.into_problems(), &marks)))
            }
        }
    }

    /// The job before a change, for knobs, which turn it in proportion.
    fn before(&self, change: &Change, table: &Table, units: Units) -> Result<Option<Before>, Vec<Problem>> {
        if matches!(Knob::of(&change.key), Knob::Key(_)) {
            return Ok(None);
        }
        let mut unheard = Ledger::new(&self.file, &self.text, &self.folder);
        let Some((raw, built)) = job(table, units, &mut unheard) else {
            return Err(unheard.into_problems());
        };
        let system = units.shown(&raw, &unheard);
        Ok(Some(Before { raw, job: built.job, system }))
    }

    fn refusal(&self, problems: Vec<Problem>) -> Refusal {
        Refusal { file: self.file.clone(), text: self.text.clone(), problems }
    }
}

const PROGRAM: &str = "this is a fault of the program, not of the file; please report it";

type Job = (raw::Raw, Built);

/// Units to speak in: those wanted, those the file asks for, or those it uses most.
#[derive(Clone, Copy, Default)]
struct Units {
    wanted: Option<System>,
    used_most: Option<System>,
}

impl Units {
    fn shown(self, raw: &raw::Raw, ledger: &Ledger<'_>) -> System {
        let of_file = || raw.units.as_ref().map(|units| units.value);
        let used_most = || self.used_most.unwrap_or_else(|| ledger.usual_system());
        self.wanted.or_else(of_file).unwrap_or_else(used_most)
    }
}

/// Makes the job of a table, if nothing is wrong with it.
fn job(table: &Table, units: Units, ledger: &mut Ledger<'_>) -> Option<Job> {
    let raw = raw::read(table, ledger);
    check::check(&raw, ledger);
    let heard = build::chance::hear(&raw, ledger);
    if !ledger.is_clean() {
        return None;
    }
    let system = units.shown(&raw, ledger);
    let built = build::job(&raw, heard, system, ledger)?;
    match Plan::check(&built.job) {
        Ok(()) => Some((raw, built)),
        Err(error) => {
            ledger.problem(&Place::default(), "", error.to_string(), "change the figures concerned");
            None
        }
    }
}

impl JobFile {
    fn finished(
        &self,
        raw: raw::Raw,
        built: Built,
        selection: &Selection,
        asked: &[Asked],
        mut ledger: Ledger<'_>,
    ) -> Scenario {
        let units = Units { wanted: selection.units, used_most: Some(self.system) }.shown(&raw, &ledger);
        if raw.units.is_none() && selection.units.is_none() {
            let words = format!("results are shown in {units} units, which the file uses most");
            ledger.assume("units", words, "as the file is written");
        }
        let cautions = caution::all(&built.job, &built.stated, built.ordered_m3, units);
        let stem = Path::new(&self.file).file_stem().map(|stem| escaped(&stem.to_string_lossy()));
        Scenario {
            title: raw.title.map_or_else(|| stem.unwrap_or_else(|| self.file.clone()), |title| title.value),
            file: self.file.clone(),
            hash: hash::sha256(self.text.as_bytes(), &ledger.further_files),
            observed_files: std::mem::take(&mut ledger.files_read),
            date: raw.date.map(|date| date.value),
            units,
            currency: ledger.currency().unwrap_or_default().to_owned(),
            alternatives: self.alternatives(),
            alternative: selection.alternative.as_ref().map(|name| composed(name.trim())),
            changes: asked.iter().map(|one| one.change.clone()).collect(),
            job: built.job,
            ordered_m3: built.ordered_m3,
            assumptions: ledger.assumptions,
            cautions,
            stated: built.stated,
        }
    }
}

#[cfg(test)]
mod tests;
