//! Which jobs are meant: files, alternatives and changes, each under a name of its own.

use super::MOST_CHOICES;
use crate::ask::Reader;
use crate::failure::Failure;
use scenarios::units::System;
use scenarios::{Scenario, Selection, Variant};
use std::path::{Path, PathBuf};

/// What was typed to name them.
pub(super) struct Typed<'a> {
    /// Files; alternatives and variants are of the first of them.
    pub(super) files: &'a [PathBuf],
    /// Names of alternatives.
    pub(super) alternatives: Vec<String>,
    /// Changes.
    pub(super) variants: Vec<Variant>,
    /// Units to show.
    pub(super) units: Option<System>,
}

/// The jobs to be compared, read and named, the first being what the others are compared with.
///
/// # Errors
/// Everything that is wrong with any of the files, or with their number.
pub(super) fn choices(typed: &Typed<'_>, reader: &dyn Reader) -> Result<Vec<(String, Scenario)>, Failure> {
    let [first, others @ ..] = typed.files else {
        return Err(Failure::Asked("name a scenario file".into()));
    };
    let selection = |alternative: Option<&str>, variant: Option<&Variant>| Selection {
        alternative: alternative.map(str::to_owned),
        changes: variant.map_or_else(Vec::new, |variant| variant.changes.clone()),
        units: typed.units,
    };
    let file = reader.job(first)?;
    let base = file.scenario(&selection(None, None))?;
    let nothing_said = others.is_empty() && typed.alternatives.is_empty() && typed.variants.is_empty();
    let alternatives = if nothing_said { base.alternatives.clone() } else { typed.alternatives.clone() };
    let count = 1 + others.len() + alternatives.len() + typed.variants.len();
    counted(count, &base)?;
    let mut all = vec![(if others.is_empty() { base.name() } else { stem(first) }, base)];
    for other in others {
        all.push((stem(other), reader.job(other)?.scenario(&selection(None, None))?));
    }
    for name in &alternatives {
        all.push((name.trim().to_owned(), file.scenario(&selection(Some(name), None))?));
    }
    for variant in &typed.variants {
        all.push((variant.label(), file.scenario(&selection(None, Some(variant)))?));
    }
    tell_apart(&mut all);
    Ok(all)
}

fn counted(count: usize, base: &Scenario) -> Result<(), Failure> {
    let file = &base.file;
    match count {
        0 | 1 => Err(Failure::Asked(format!(
            "there is nothing to compare: {file} has no alternatives; name a second file, add an [[alternative]] to it, or try \
             --change \"rakers = 2\""
        ))),
        n if n > MOST_CHOICES => Err(Failure::Asked(format!(
            "{n} jobs are too many to compare at once; name at most {MOST_CHOICES}, or let `heapcast sweep` go through a range"
        ))),
        _ => Ok(()),
    }
}

/// The name of a file without its folders and ending.
fn stem(file: &Path) -> String {
    let stem = file
        .file_stem()
        .map_or_else(|| file.display().to_string(), |stem| stem.to_string_lossy().into_owned());
    scenarios::escaped(&stem)
}

/// Numbers names that occur twice: `arena`, `arena (2)`.
fn tell_apart(all: &mut [(String, Scenario)]) {
    for place in 1..all.len() {
        let wanted = all[place].0.clone();
        let taken = |name: &str| all[..place].iter().any(|(other, _)| other == name);
        if taken(&wanted) {
            let numbered = (2..).map(|n: u32| format!("{wanted} ({n})"));
            let free = numbered.into_iter().find(|name| !taken(name));
            all[place].0 = free.unwrap_or(wanted);
        }
    }
}

/// A change as it could be typed again.
pub(super) fn as_typed(variant: &Variant) -> String {
    let changes: Vec<String> = variant.changes.iter().map(ToString::to_string).collect();
    let name = variant.name.as_ref().map(|name| format!("{name}: ")).unwrap_or_default();
    format!("{name}{}", changes.join("; "))
}
