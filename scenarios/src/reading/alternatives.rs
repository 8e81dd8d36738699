//! The alternatives of a file: each tried when it is read, one chosen.

use crate::diagnostics::{Diagnostics, Place, Read};
use crate::problem::Problem;
use crate::raw::{RawAlternative, none_called};
use crate::signs::composed;

/// What is wrong with the job of an alternative and was not before, told at the alternative.
pub(super) fn told(alternative: &RawAlternative, own: Vec<Problem>, known: &[Problem]) -> Diagnostics {
    let is_new = |problem: &Problem| {
        !known.iter().any(|other| other.span == problem.span && other.what == problem.what)
    };
    let at_alternative = |problem: Problem| {
        let inside = problem.span.as_ref().is_some_and(|span| alternative.spans.contains(span));
        let name = &alternative.name;
        let prefix = format!("alternative \"{}\"", name.value);
        let words = match problem.key.as_str() {
            "" => prefix,
            key if key.starts_with(&prefix) => key.to_owned(),
            key => format!("{prefix}: {key}"),
        };
        let span = if inside { problem.span } else { name.place.span.clone() };
        let place = Place { words, path: String::new(), span };
        Diagnostics::of(&place, &problem.value, problem.what, problem.right)
    };
    own.into_iter().filter(is_new).map(at_alternative).collect()
}

/// Which of the alternatives has a name; if there is none, that is a problem.
pub(super) fn choose(name: &str, alternatives: &[RawAlternative]) -> Read<usize> {
    let wanted = composed(name.trim());
    if let Some(found) = alternatives.iter().position(|alternative| alternative.name.value == wanted) {
        return Read::made(found);
    }
    let names: Vec<String> = alternatives.iter().map(|other| other.name.value.clone()).collect();
    let (what, right) = none_called("alternative", name, &names, "the file has no alternatives");
    Read::problem(&Place::default(), "", what, right)
}
