//! The alternatives of a file: each tried when it is read, one chosen.

use super::{Made, Units, make};
use crate::diagnostics::{Diagnostics, Place};
use crate::document::Table;
use crate::nearest::nearest;
use crate::problem::Problem;
use crate::raw::{RawAlternative, quoted};
use crate::signs::composed;

/// Makes the job with an alternative's changes; what is then wrong and was not before is told at the alternative.
pub(super) fn try_alternative(
    alternative: &RawAlternative,
    table: &Table,
    own: Diagnostics<'_>,
    units: Units,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Made> {
    let mut own = own;
    let made = alternative.apply(table, &mut own).and_then(|changed| make(&changed, units, &mut own));
    let known: Vec<Problem> = diagnostics.problems().to_vec();
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
        diagnostics.problem(
            &Place { words, path: String::new(), span },
            &problem.value,
            problem.what,
            problem.right,
        );
    }
    made
}

/// Which of the alternatives has a name; if there is none, that is a problem.
pub(super) fn choose(
    name: &str,
    alternatives: &[RawAlternative],
    diagnostics: &mut Diagnostics<'_>,
) -> Option<usize> {
    let wanted = composed(name.trim());
    let found = alternatives.iter().position(|alternative| alternative.name.value == wanted);
    if found.is_none() {
        let names: Vec<String> = alternatives.iter().map(|other| other.name.value.clone()).collect();
        let right = match nearest(name, names.iter().map(String::as_str)) {
            Some(near) => format!("the nearest is \"{near}\""),
            None if names.is_empty() => "the file has no alternatives".into(),
            None => format!("there are {}", quoted(&names)),
        };
        diagnostics.problem(
            &Place::default(),
            "",
            format!("there is no alternative called \"{name}\""),
            right,
        );
    }
    found
}
