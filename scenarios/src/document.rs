//! The text of a file as a tree of values that know where they stand.

use std::collections::BTreeMap;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use toml_writer::{ToTomlValue, TomlStringBuilder};

/// Longest excerpt of a value as typed \[characters\].
const EXCERPT: usize = 70;

/// A value and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Node {
    /// Place in the text \[bytes\].
    pub(crate) span: Range<usize>,
    /// The value as typed, cut short; empty for a table under its own heading.
    pub(crate) typed: String,
    /// The value.
    pub(crate) value: Value,
}

/// What can be typed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Value {
    Text(String),
    Whole(i64),
    Number(f64),
    Truth(bool),
    Time(toml::value::Datetime),
    List(Vec<Node>),
    Table(Table),
}

impl Value {
    /// What a person calls it, with its article.
    pub(crate) fn name(&self) -> &'static str {
        match self {
            Value::Text(_) => "a text",
            Value::Whole(_) => "a whole number",
            Value::Number(_) => "a number",
            Value::Truth(_) => "true or false",
            Value::Time(_) => "a date or time",
            Value::List(_) => "a list",
            Value::Table(_) => "a table",
        }
    }
}

/// Keys with their values.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Table {
    /// Values by key.
    pub(crate) entries: BTreeMap<String, Entry>,
}

/// A value under a key.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Entry {
    /// Place of the key in the text \[bytes\].
    pub(crate) key_span: Range<usize>,
    /// The value.
    pub(crate) node: Node,
}

impl Table {
    /// The value under a key.
    pub(crate) fn get(&self, key: &str) -> Option<&Node> {
        self.entries.get(key).map(|entry| &entry.node)
    }

    /// Entries in the order of the text.
    pub(crate) fn in_order(&self) -> Vec<(&str, &Entry)> {
        let mut entries: Vec<_> = self.entries.iter().map(|(key, entry)| (key.as_str(), entry)).collect();
        entries.sort_by_key(|(_, entry)| entry.key_span.start);
        entries
    }
}

/// A fault of the notation itself.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fault {
    /// Place in the text \[bytes\], if known.
    pub(crate) span: Option<Range<usize>>,
    /// What is wrong.
    pub(crate) what: String,
    /// What would be right.
    pub(crate) right: String,
}

/// Takes a text apart.
///
/// # Errors
/// All faults of the notation, at most one a line.
pub(crate) fn parse(text: &str) -> Result<Table, Vec<Fault>> {
    let (table, errors) = DeTable::parse_recoverable(text);
    if errors.is_empty() {
        let mut faults = Vec::new();
        let table = table_of(table.get_ref(), text, &mut faults);
        return if faults.is_empty() { Ok(table) } else { Err(faults) };
    }
    let mut faults: Vec<_> = errors.iter().map(|error| fault(error, text)).collect();
    faults.sort_by_key(|fault| fault.span.as_ref().map_or(usize::MAX, |span| span.start));
    let (mut counted, mut line, mut last) = (0, 0, None);
    faults.retain(|fault| {
        let start = fault.span.as_ref().map_or(text.len(), |span| span.start.min(text.len()));
        line += text.as_bytes()[counted..start].iter().filter(|b| **b == b'\n').count();
        counted = start;
        last.replace(line) != Some(line)
    });
    faults.truncate(crate::diagnostics::MOST_PROBLEMS);
    Err(faults)
}

/// Takes a value apart that stands alone.
///
/// # Errors
/// All faults of the notation; none where it is more than one value.
pub(crate) fn alone(typed: &str) -> Result<Value, Vec<Fault>> {
    let mut entries = parse(&format!("x = {typed}"))?.entries;
    match (entries.remove("x"), entries.is_empty()) {
        (Some(entry), true) => Ok(entry.node.value),
        _ => Err(Vec::new()),
    }
}

/// A text as TOML writes it.
pub(crate) fn quoted(text: &str) -> String {
    TomlStringBuilder::new(text).as_default().to_toml_value()
}

/// Whether a word processor has been at the quotes.
fn curly(text: &str) -> bool {
    text.contains(['“', '”', '„', '«', '»', '‘', '’'])
}

fn fault(error: &toml::de::Error, text: &str) -> Fault {
    let message = error.message().to_owned();
    let too_deep = message.contains("recurs");
    let (what, right) = if too_deep {
        (
            "not valid TOML: nested far too deeply".into(),
            "a key has two or three dots or brackets at the most".into(),
        )
    } else if message.starts_with("duplicate key") {
        ("this stands here twice".into(), "keep one of the two".into())
    } else if error.span().is_some_and(|span| curly(text.get(span).unwrap_or_default())) {
        ("these are curly quotes".into(), "use straight quotes, as in \"4 in\"".into())
    } else if message.contains("invalid basic string") || message.contains("string") {
        (
            format!("not valid TOML: {message}"),
            "a text begins and ends with the same quotes on one line".into(),
        )
    } else {
        let right = "write key = value, texts and quantities in quotes, such as depth = \"4 in\"";
        (format!("not valid TOML: {message}"), right.into())
    };
    let span = error.span().or_else(|| if too_deep { most_dots(text) } else { None });
    Fault { span, what, right }
}

/// The line with the most dots, for faults of depth that come without a place.
fn most_dots(text: &str) -> Option<Range<usize>> {
    let mut start = 0;
    let lines = text.split_inclusive('\n').map(|line| {
        let span = start..start + line.trim_end().len();
        start += line.len();
        (line.bytes().filter(|b| *b == b'.').count(), span)
    });
    lines.max_by_key(|(dots, _)| *dots).map(|(_, span)| span)
}

fn table_of(table: &DeTable<'_>, text: &str, faults: &mut Vec<Fault>) -> Table {
    let entries = table.iter().map(|(key, value)| {
        let node = node_of(value, text, faults);
        (key.get_ref().to_string(), Entry { key_span: key.span(), node })
    });
    Table { entries: entries.collect() }
}

fn node_of(value: &Spanned<DeValue<'_>>, text: &str, faults: &mut Vec<Fault>) -> Node {
    let span = value.span();
    let typed = excerpt(text.get(span.clone()).unwrap_or_default());
    let value = match value.get_ref() {
        DeValue::String(s) => Value::Text(s.to_string()),
        DeValue::Integer(i) => {
            let digits = i.as_str().replace('_', "");
            i64::from_str_radix(&digits, i.radix()).map_or_else(
                |_| {
                    faults.push(Fault {
                        span: Some(span.clone()),
                        what: format!("{typed} is too large for a whole number"),
                        right: "write a believable number".into(),
                    });
                    Value::Whole(0)
                },
                Value::Whole,
            )
        }
        DeValue::Float(f) => Value::Number(f.as_str().replace('_', "").parse().unwrap_or(f64::NAN)),
        DeValue::Boolean(b) => Value::Truth(*b),
        DeValue::Datetime(d) => Value::Time(*d),
        DeValue::Array(list) => Value::List(list.iter().map(|item| node_of(item, text, faults)).collect()),
        DeValue::Table(table) => Value::Table(table_of(table, text, faults)),
    };
    let heading = matches!(value, Value::Table(_)) && !typed.starts_with('{');
    Node { span, typed: if heading { String::new() } else { typed }, value }
}

fn excerpt(text: &str) -> String {
    let line = text.lines().next().unwrap_or_default();
    let cut: String = line.chars().take(EXCERPT).map(|c| if c == '\t' { ' ' } else { c }).collect();
    let mut shown = crate::signs::escaped(&cut);
    if line.chars().count() > EXCERPT || line.len() < text.len() {
        shown.push_str("...");
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_know_where_they_stand_and_how_they_were_typed() {
        let text = "title = \"Orchard\"\n[[zone]]\nname = \"north\"\nroom = 3\n";
        let table = parse(text).unwrap();
        let title = table.get("title").unwrap();
        assert_eq!(&text[title.span.clone()], "\"Orchard\"");
        assert_eq!(title.typed, "\"Orchard\"");
        let Some(Value::List(zones)) = table.get("zone").map(|node| &node.value) else {
            panic!("zones are a list")
        };
        assert_eq!(&text[zones[0].span.clone()], "[[zone]]");
        assert_eq!(zones[0].typed, "");
    }

    #[test]
    fn tabs_in_a_value_and_further_lines_of_it_do_not_reach_a_message() {
        let typed = |text: &str| parse(text).unwrap().get("a").unwrap().typed.clone();
        assert_eq!(typed("a = \"b\tc\"\n"), "\"b c\"");
        assert_eq!(typed("a = '''b\nc'''\n"), "'''b...");
    }

    #[test]
    fn every_line_that_is_no_notation_is_a_fault() {
        let faults = parse("a = 1\nb = = 2\nc = \"open\nd = 3\na = 4\n").unwrap_err();
        let starts: Vec<_> = faults.iter().map(|fault| fault.span.clone().map(|s| s.start)).collect();
        assert!(faults.len() >= 2, "{faults:?} at {starts:?}");
        assert!(faults.iter().any(|fault| fault.what == "this stands here twice"), "{faults:?}");
    }

    #[test]
    fn a_long_file_of_nothing_but_faults_is_answered_and_told_in_part() {
        assert_eq!(parse(&"=\n".repeat(100_000)).unwrap_err().len(), crate::diagnostics::MOST_PROBLEMS);
    }

    #[test]
    fn a_whole_number_beyond_belief_is_a_fault_not_a_panic() {
        assert!(parse("a = 99999999999999999999999999\n").is_err());
        assert!(parse("a = 0x_\n").is_err());
    }
}
