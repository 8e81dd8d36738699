//! Which jobs are meant: files, alternatives and changes, each under a name of its own.

use crate::cli::CompareArgs;
use crate::failure::Failure;
use crate::files;
use reports::compare::MOST_CHOICES;
use scenarios::{Scenario, Selection, Variant};
use std::path::Path;

/// The jobs to be compared, read and named, the first being what the others are compared with.
///
/// # Errors
/// Everything that is wrong with any of the files, or with their number.
pub(super) fn choices(args: &CompareArgs) -> Result<Vec<(String, Scenario)>, Failure> {
    let [first, others @ ..] = args.files.as_slice() else {
        return Err(Failure::asked("name a scenario file".into()));
    };
    let selection = |alternative: Option<&str>, variant: Option<&Variant>| Selection {
        alternative: alternative.map(str::to_owned),
        changes: variant.map_or_else(Vec::new, |variant| variant.changes.clone()),
        units: args.units,
    };
    let file = files::job_file(first)?;
    let base = file.scenario(&selection(None, None))?;
    let nothing_said = others.is_empty() && args.alternatives.is_empty() && args.changes.is_empty();
    let alternatives = if nothing_said { base.alternatives.clone() } else { args.alternatives.clone() };
    let count = 1 + others.len() + alternatives.len() + args.changes.len();
    counted(count, &base)?;
    let mut all = vec![(if others.is_empty() { base.name() } else { stem(first) }, base)];
    for other in others {
        all.push((stem(other), files::scenario(other, &selection(None, None))?));
    }
    for name in &alternatives {
        all.push((name.trim().to_owned(), file.scenario(&selection(Some(name), None))?));
    }
    for variant in &args.changes {
        all.push((variant.label(), file.scenario(&selection(None, Some(variant)))?));
    }
    tell_apart(&mut all);
    Ok(all)
}

fn counted(count: usize, base: &Scenario) -> Result<(), Failure> {
    let file = &base.file;
    match count {
        0 | 1 => Err(Failure::asked(format!(
            "there is nothing to compare: {file} has no alternatives; name a second file, add an [[alternative]] to it, or try \
             --change \"rakers = 2\""
        ))),
        n if n > MOST_CHOICES => Err(Failure::asked(format!(
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
