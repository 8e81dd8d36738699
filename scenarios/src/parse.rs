//! What people type, read: pure functions from a value to what it means, or to what is wrong with it. Keys of a file, cells of
//! a list and arguments of the command line are read by the same ones.

pub(crate) mod clock;
pub(crate) mod date;
pub(crate) mod figure;

use crate::document::{Node, Value};
use crate::nearest::nearest;
use crate::signs::{self, LONGEST_NAME};
use crate::units::amount::currency_word;
use std::ops::RangeInclusive;

/// Why a value cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Wrong {
    /// What is wrong.
    pub(crate) what: String,
    /// What would be right.
    pub(crate) right: String,
}

impl Wrong {
    pub(crate) fn new(what: impl Into<String>, right: impl Into<String>) -> Self {
        Self { what: what.into(), right: right.into() }
    }
}

/// A text on one line that is neither empty nor too long, composed and without spaces around it.
pub(crate) fn text(value: &Value, right: &str) -> Result<String, Wrong> {
    let Value::Text(text) = value else {
        return Err(Wrong::new(format!("this is {}, where a text is wanted", value.name()), right));
    };
    if text.trim().is_empty() {
        return Err(Wrong::new("nothing is written here", right));
    }
    if text.chars().count() > LONGEST_NAME {
        return Err(Wrong::new("this is too long", format!("write at most {LONGEST_NAME} characters")));
    }
    match signs::first_hidden(text.trim()) {
        None => Ok(signs::composed(text.trim())),
        Some(sign) => Err(Wrong::new(
            format!("this has a sign in it that cannot be seen ({sign})"),
            "type it again on one line, with signs that can be seen",
        )),
    }
}

/// One of a few words.
pub(crate) fn word<T: Copy>(value: &Value, words: &[(&str, T)]) -> Result<T, Wrong> {
    let all = words.iter().map(|(word, _)| format!("\"{word}\"")).collect::<Vec<_>>().join(", ");
    let text = text(value, &format!("write one of {all}"))?;
    let found = words.iter().find(|(word, _)| word.eq_ignore_ascii_case(&text));
    found.map(|(_, meaning)| *meaning).ok_or_else(|| {
        let right = match nearest(&text, words.iter().map(|(word, _)| *word)) {
            Some(near) => format!("the nearest is \"{near}\"; all are {all}"),
            None => format!("write one of {all}"),
        };
        Wrong::new("this word is not known here", right)
    })
}

/// A whole number within limits.
pub(crate) fn count(value: &Value, limits: RangeInclusive<u32>) -> Result<u32, Wrong> {
    let what = match value {
        Value::Whole(count) => match u32::try_from(*count) {
            Ok(count) if limits.contains(&count) => return Ok(count),
            _ if *count == 0 => "none at all is not a count".to_owned(),
            _ if *count < 0 => "this is less than nothing".to_owned(),
            _ => "this is absurdly many".to_owned(),
        },
        other => format!("this is {}, where a count is wanted", other.name()),
    };
    let (least, most) = (limits.start(), limits.end());
    Err(Wrong::new(what, format!("write a whole number from {least} to {most}, without quotes")))
}

/// A yes or no.
pub(crate) fn truth(value: &Value) -> Result<bool, Wrong> {
    match value {
        Value::Truth(truth) => Ok(*truth),
        _ => Err(Wrong::new("this is neither true nor false", "write true or false, without quotes")),
    }
}

/// A currency: a sign or three capital letters.
pub(crate) fn currency(value: &Value) -> Result<String, Wrong> {
    let right = "write a sign or three capital letters, such as \"$\", \"€\" or \"CHF\"";
    currency_word(&text(value, right)?).ok_or_else(|| Wrong::new("this is not a currency", right))
}

/// What a list holds, for messages.
pub(crate) struct Listed<'w> {
    /// Most entries.
    pub(crate) most: usize,
    /// What is said of more of them than that.
    pub(crate) too_many: fn(usize) -> String,
    /// What is said of something else: `, where a list of ways is wanted`.
    pub(crate) wanted: &'w str,
    /// How it is written.
    pub(crate) right: &'w str,
}

/// The entries of a list.
pub(crate) fn list<'v>(value: &'v Value, listed: &Listed<'_>) -> Result<&'v [Node], Wrong> {
    let most = listed.most;
    match value {
        Value::List(list) if list.len() <= most => Ok(list),
        Value::List(list) => Err(Wrong::new((listed.too_many)(list.len()), format!("give at most {most}"))),
        other => Err(Wrong::new(format!("this is {}{}", other.name(), listed.wanted), listed.right)),
    }
}
