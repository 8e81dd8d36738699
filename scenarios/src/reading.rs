//! From text to a checked scenario.

mod alternatives;
mod changes;
mod changing;
mod made;
mod turn;

pub(crate) use changes::Asked;

use crate::assumption::Assumption;
use crate::diagnostics::{Diagnostics, MOST_PROBLEMS, Place};
use crate::document::{self, Fault};
use crate::files::Files;
use crate::problem::Refusal;
use crate::raw::{self, RawAlternative};
use crate::scenario::{Scenario, Selection};
use crate::sentence::{Clock, Sentence, Teller};
use crate::signs::{composed, escaped};
use crate::source::Source;
use crate::starter::Answers;
use crate::units::System;
use crate::{caution, hash};
use alternatives::{choose, told};
use changing::Changing;
use made::{Made, Units, make};
use std::path::Path;
use std::sync::Arc;

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
        let source = Source::new(file, text);
        let table = document::parse(text).map_err(|faults| {
            let at = |fault: Fault| {
                let place = Place { span: fault.span, ..Place::default() };
                Diagnostics::of(&place, "", fault.what, fault.right)
            };
            source.refusal(source.problems(faults.into_iter().map(at).collect()))
        })?;
        if table.entries.is_empty() {
            let right = "begin with [material], [[zone]], [[stockpile]], [[loader]] and [[raker]]";
            let empty = Diagnostics::of(&Place::default(), "", "this file is empty", right);
            return Err(source.refusal(source.problems(empty)));
        }
        let mut diagnostics = Diagnostics::default();
        let alternatives = raw::alternatives(&table, &files).join(&mut diagnostics).unwrap_or_default();
        let base = make(table.clone(), Units::default(), &source, &files).join(&mut diagnostics);
        let system = base.as_ref().map_or(System::Metric, |base| base.raw.said.system);
        let units = Units { wanted: None, used_most: Some(system) };
        let mut with = Vec::new();
        for alternative in &alternatives {
            if diagnostics.problems() >= MOST_PROBLEMS {
                break;
            }
            let tried = alternative.apply(&table).and_then(|table| make(table, units, &source, &files));
            with.extend(tried.made.map(Arc::new));
            let known = source.problems(diagnostics.clone());
            diagnostics.join(told(alternative, source.problems(tried.diagnostics), &known));
        }
        match base {
            Some(base) if diagnostics.is_clean() && with.len() == alternatives.len() => Ok(Self {
                file: file.to_owned(),
                text: text.to_owned(),
                files: Arc::new(files),
                base: Arc::new(base),
                alternatives,
                with,
                system,
            }),
            _ => Err(source.refusal(source.problems(or_own_fault(diagnostics)))),
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
        let source = Source::new(&self.file, &self.text);
        let mut diagnostics = Diagnostics::default();
        let chosen = match &selection.alternative {
            None => None,
            Some(name) => match choose(name, &self.alternatives).join(&mut diagnostics) {
                None => return Err(source.refusal(source.problems(diagnostics))),
                index => index,
            },
        };
        let start = chosen.map_or(&self.base, |index| &self.with[index]);
        let units = Units { wanted: selection.units, used_most: Some(self.system) };
        let marks = changes::marks(asked, &self.text);
        let made = match asked {
            [] => start.again(units),
            _ => Changing::new(&source, &*self.files, start, units).make_all(asked, &marks),
        };
        match made.join(&mut diagnostics) {
            Some(made) => Ok(self.finished(made, selection, asked)),
            None => {
                let problems = source.problems(or_own_fault(diagnostics));
                Err(source.refusal(changes::told(problems, &marks)))
            }
        }
    }
}

/// What came up, or, if that is nothing, that nothing could be made.
fn or_own_fault(diagnostics: Diagnostics) -> Diagnostics {
    let right = "this is a fault of the program, not of the file; please report it";
    match diagnostics.is_clean() {
        true => Diagnostics::of(&Place::default(), "", "the job could not be made", right),
        false => diagnostics,
    }
}

impl JobFile {
    /// The job as it stands as one sentence; without a system of units in those the file asks for or uses most, without a
    /// clock in the usual one beside them.
    pub fn sentence(&self, units: Option<System>, clock: Option<Clock>) -> Sentence {
        self.told(&self.base, units, clock)
    }

    fn told(&self, made: &Made, units: Option<System>, clock: Option<Clock>) -> Sentence {
        let system = units.unwrap_or(made.system);
        let clock = clock.unwrap_or(Clock::of(system));
        let usual = Answers::usual(made.raw.system());
        let teller = Teller { raw: &made.raw, built: &made.built, text: &self.text, system, clock, usual };
        teller.sentence(&made.table)
    }

    fn finished(&self, made: Made, selection: &Selection, asked: &[Asked]) -> Scenario {
        let sentence = self.told(&made, None, None);
        let Made { raw, built, assumed, system: units, .. } = made;
        let mut assumptions = raw.said.assumptions.clone();
        assumptions.extend(assumed);
        if raw.units.is_none() && selection.units.is_none() {
            let words = format!("results are shown in {units} units, which the file uses most");
            let (key, from) = ("units".into(), "as the file is written".into());
            assumptions.push(Assumption { key, words, from });
        }
        let files = &raw.said.files_read;
        let cautions = caution::all(&built.job, &built.stated, built.ordered_m3, units);
        let stem = Path::new(&self.file).file_stem().map(|stem| escaped(&stem.to_string_lossy()));
        let title = raw.title.as_ref().map(|title| title.value.clone());
        Scenario {
            title: title.or(stem).unwrap_or_else(|| self.file.clone()),
            sentence,
            file: self.file.clone(),
            hash: hash::sha256(self.text.as_bytes(), files),
            currency: raw.said.currency.clone().unwrap_or_default(),
            observed_files: files.iter().map(|file| file.path.clone()).collect(),
            date: raw.date.as_ref().map(|date| date.value),
            units,
            alternatives: self.alternatives(),
            alternative: selection.alternative.as_ref().map(|name| composed(name.trim())),
            changes: asked.iter().map(|one| one.change.clone()).collect(),
            job: built.job,
            ordered_m3: built.ordered_m3,
            assumptions,
            cautions,
            stated: built.stated,
        }
    }
}

#[cfg(test)]
mod tests;
