//! What a person types, written as TOML.

use crate::document::{Value, alone, quoted};
use crate::key::Holds;

/// A key as TOML writes it: bare, or in the only quotes that take every sign on one line.
pub(super) fn key_text(key: &str) -> String {
    let bare = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '-';
    if !key.is_empty() && key.chars().all(bare) {
        return key.to_owned();
    }
    let escaped = key.chars().map(|c| match c {
        '"' | '\\' => format!("\\{c}"),
        c if c.is_control() => format!("\\u{:04X}", u32::from(c)),
        c => c.to_string(),
    });
    format!("\"{}\"", escaped.collect::<String>())
}

/// What is typed, as it is to stand behind a key that holds this.
pub(super) fn written(typed: &str, holds: Option<Holds>, was: Option<&Value>) -> String {
    let bracketed = typed.starts_with(['{', '[']) && alone(typed).is_ok();
    let is_number =
        || typed.bytes().next().is_some_and(|b| b.is_ascii_digit()) && typed.parse::<f64>().is_ok();
    let plain = match holds {
        Some(Holds::Count(..) | Holds::CountOr(..)) => typed.parse::<u32>().is_ok(),
        Some(Holds::Truth) => matches!(typed, "true" | "false"),
        Some(Holds::Date) => {
            matches!(was, Some(Value::Time(_))) && matches!(alone(typed), Ok(Value::Time(_)))
        }
        Some(Holds::List(..)) | Some(Holds::Name) | Some(Holds::Text) | Some(Holds::Word(_)) => false,
        _ => matches!(was, Some(Value::Number(_) | Value::Whole(_))) && is_number(),
    };
    match (bracketed, plain, holds) {
        (true, ..) | (_, true, _) => typed.to_owned(),
        (_, _, Some(Holds::List(..))) => {
            let entries: Vec<String> = typed.split(',').map(|entry| quoted(entry.trim())).collect();
            format!("[ {} ]", entries.join(", "))
        }
        _ => quoted(typed),
    }
}

/// A value as a person would type it: without quotes.
pub(crate) fn typed(written: &str) -> String {
    let plain = written.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    if let Some(plain) = plain.filter(|plain| !plain.is_empty() && !plain.contains(['\\', '"', '\n'])) {
        return plain.to_owned();
    }
    match written.starts_with(['"', '\'']).then(|| alone(written)) {
        Some(Ok(Value::Text(text))) => text,
        _ => written.to_owned(),
    }
}
