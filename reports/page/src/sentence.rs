//! The sentence of a job, for a page that shows its values as buttons.

use scenarios::Sentence;
use scenarios::sentence::{Add, Clause, Further, Part, Value};
use serde_json::json;

/// All of it.
pub(crate) fn json(sentence: &Sentence) -> serde_json::Value {
    json!({
        "clauses": sentence.clauses.iter().map(clause).collect::<Vec<_>>(),
        "usual": sentence.usual,
        "further": sentence.further.iter().map(further).collect::<Vec<_>>(),
    })
}

fn clause(clause: &Clause) -> serde_json::Value {
    json!({
        "kind": clause.kind,
        "name": clause.name,
        "parts": clause.parts.iter().map(part).collect::<Vec<_>>(),
        "add": clause.add.as_ref().map(|Add { kind, words }| json!({ "kind": kind, "words": words })),
        "can_remove": clause.can_remove,
        "is_quiet": clause.is_quiet,
    })
}

fn part(part: &Part) -> serde_json::Value {
    match part {
        Part::Words(words) => json!({ "words": words }),
        Part::Value(of) => json!({ "value": value(of) }),
    }
}

fn value(value: &Value) -> serde_json::Value {
    json!({
        "key": value.key,
        "words": value.words,
        "typed": value.typed,
        "usual": value.usual,
        "title": value.title,
        "help": value.help,
        "limits": value.limits,
        "less": value.less,
        "more": value.more,
        "choices": value.choices,
        "units": value.units,
    })
}

fn further(further: &Further) -> serde_json::Value {
    json!({ "key": further.key, "words": further.words })
}
