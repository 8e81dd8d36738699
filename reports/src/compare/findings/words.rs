//! What the findings of a comparison share in words.

use crate::compare::Comparison;
use crate::findings::capital;

/// Longest name in a sentence \[characters\].
const NAME: usize = 60;

/// A name in quotes, as far as a sentence has room for it.
pub(super) fn quoted(comparison: &Comparison, place: usize) -> String {
    let name = &comparison.choices[place].name;
    if name.chars().count() <= NAME {
        return format!("\"{name}\"");
    }
    let kept: String = name.chars().take(NAME - 1).collect();
    format!("\"{}…\"", kept.trim_end())
}

/// With its first letter a capital and a full stop; for sentences put together from parts.
pub(super) fn sentence(words: String) -> String {
    format!("{}.", capital(&words))
}
