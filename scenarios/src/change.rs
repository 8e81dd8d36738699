//! A change of a job, typed on the command line: a key of the file, or a trade's word for several, and its new value.

use crate::signs::{composed, first_hidden};
use std::fmt;
use std::str::FromStr;

/// Longest change that is taken \[characters\].
const LONGEST: usize = 1000;

/// Longest name of several changes \[characters\].
const LONGEST_NAME: usize = 80;

/// A key and its new value: a key of the file (`loader.compact tractor.heaped`), or one of the trade's words of
/// [`Knob`](crate::Knob) (`rakers`, `loaders`, `bucket`, `haul`, `room`).
///
/// The value is what would stand in the file (`3`, `"22 ft3"`, `[ "12:00-12:30" ]`); a text needs no quotes.
///
/// ```
/// use scenarios::Change;
/// let change: Change = "loader.compact tractor.heaped = 22 ft3".parse().unwrap();
/// assert_eq!((change.key.as_str(), change.value.as_str()), ("loader.compact tractor.heaped", "22 ft3"));
/// assert_eq!("rakers=2".parse::<Change>().unwrap().to_string(), "rakers = 2");
/// assert!("22 ft3".parse::<Change>().unwrap_err().contains("no \"=\""));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The key, with dots between its pieces; quotes keep a name with a dot in it together.
    pub key: String,
    /// The value as typed.
    pub value: String,
}

impl fmt::Display for Change {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} = {}", self.key, self.value)
    }
}

impl FromStr for Change {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let such = "write KEY = VALUE, such as \"rakers = 2\" or \"loader.compact tractor.heaped = 22 ft3\"";
        if text.chars().count() > LONGEST {
            return Err(format!("this is too long for a change; {such}"));
        }
        if let Some(sign) = first_hidden(text.trim()) {
            return Err(format!("this has a sign in it that cannot be seen ({sign}); {such}"));
        }
        let Some(at) = outside_quotes(text, '=').next() else {
            return Err(format!("there is no \"=\" in \"{}\"; {such}", text.trim()));
        };
        let (key, value) = (text[..at].trim(), text[at + 1..].trim());
        match (key.is_empty(), value.is_empty()) {
            (true, _) => Err(format!("no key stands before the \"=\"; {such}")),
            (_, true) => Err(format!("no value stands after the \"=\"; {such}")),
            _ => Ok(Self { key: composed(key), value: composed(value) }),
        }
    }
}

/// Changes that belong together, with a name of their own if they have one: `NAME: KEY = VALUE; KEY = VALUE`.
///
/// ```
/// use scenarios::Variant;
/// let variant: Variant = "bigger bucket: bucket = 22 ft3; loader.tractor.loading = 24 s".parse().unwrap();
/// assert_eq!(variant.name.as_deref(), Some("bigger bucket"));
/// assert_eq!(variant.changes.len(), 2);
/// assert_eq!("shift.start = 7:00".parse::<Variant>().unwrap().name, None);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Variant {
    /// What it is called.
    pub name: Option<String>,
    /// Its changes, at least one.
    pub changes: Vec<Change>,
}

impl Variant {
    /// What it is called, or its changes in one line.
    pub fn label(&self) -> String {
        self.name.clone().unwrap_or_else(|| in_one_line(&self.changes))
    }
}

impl FromStr for Variant {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let key_ends = outside_quotes(text, '=').next().unwrap_or(text.len());
        let colon = outside_quotes(&text[..key_ends], ':').last();
        let (name, rest) = match colon {
            None => (None, text),
            Some(at) => (Some(text[..at].trim()), &text[at + 1..]),
        };
        if name == Some("") {
            return Err(
                "no name stands before the \":\"; write NAME: KEY = VALUE, or leave the \":\" out".into()
            );
        }
        if let Some(name) = name
            && (first_hidden(name).is_some() || name.chars().count() > LONGEST_NAME)
        {
            return Err(format!(
                "the name before the \":\" is too long or has signs in it that cannot be seen; write at most \
                 {LONGEST_NAME} characters on one line"
            ));
        }
        let mut changes = Vec::new();
        let mut from = 0;
        for at in outside_brackets(rest, ';').chain([rest.len()]) {
            let part = &rest[from..at];
            from = at + 1;
            if !part.trim().is_empty() {
                changes.push(part.parse()?);
            }
        }
        if changes.is_empty() {
            return Err("nothing is changed; write KEY = VALUE, several with \";\" between them".into());
        }
        Ok(Self { name: name.map(composed), changes })
    }
}

/// Changes in one line, as a short label.
pub(crate) fn in_one_line(changes: &[Change]) -> String {
    changes.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")
}

/// Where a sign stands outside of quotes.
pub(crate) fn outside_quotes(text: &str, sign: char) -> impl Iterator<Item = usize> {
    outside(text, sign, "", "")
}

/// Where a sign stands outside of quotes and brackets.
fn outside_brackets(text: &str, sign: char) -> impl Iterator<Item = usize> {
    outside(text, sign, "[{", "]}")
}

/// Where a sign stands outside of quotes and of the brackets named. A quote begins only where a piece does: the foot mark
/// in `6'` is none.
fn outside(text: &str, sign: char, open: &str, close: &str) -> impl Iterator<Item = usize> {
    let (mut quote, mut depth, mut before) = (None, 0_usize, ' ');
    text.char_indices().filter_map(move |(at, c)| {
        let begins = before.is_whitespace() || ".=[{,:;".contains(before);
        if !c.is_whitespace() || quote.is_some() {
            before = c;
        }
        match quote {
            Some(end) => {
                quote = if c == end { None } else { quote };
                return None;
            }
            None if begins && (c == '"' || c == '\'') => quote = Some(c),
            None if open.contains(c) => depth += 1,
            None if close.contains(c) => depth = depth.saturating_sub(1),
            None => {}
        }
        (c == sign && depth == 0).then_some(at)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn change(text: &str) -> (String, String) {
        let change: Change = text.parse().unwrap();
        (change.key, change.value)
    }

    #[test]
    fn a_change_is_cut_at_the_first_equals_sign_outside_quotes() {
        let cut = |key: &str, value: &str| (key.to_owned(), value.to_owned());
        assert_eq!(change(" rakers =2 "), cut("rakers", "2"));
        assert_eq!(change("zone.\"a = b\".room = 3"), cut("zone.\"a = b\".room", "3"));
        assert_eq!(
            change("loader.x.loading = { low = \"9 s\" }"),
            cut("loader.x.loading", "{ low = \"9 s\" }")
        );
        for (bad, words) in [("", "no \"=\""), ("x", "no \"=\""), ("= 3", "no key"), ("a =", "no value")] {
            let said = bad.parse::<Change>().unwrap_err();
            assert!(said.contains(words) && said.contains("such as"), "{bad}: {said}");
        }
        assert!("a = b\nc = d".parse::<Change>().unwrap_err().contains("cannot be seen"));
        assert!(format!("a = {}", "x".repeat(2000)).parse::<Change>().unwrap_err().contains("too long"));
    }

    #[test]
    fn several_changes_may_share_a_name() {
        let variant: Variant =
            "by hand: rakers = 3; loader.x.loading = { low = \"1;2 s\" };".parse().unwrap();
        assert_eq!(variant.label(), "by hand");
        assert_eq!(variant.changes.len(), 2);
        assert_eq!(variant.changes[1].value, "{ low = \"1;2 s\" }");
        let plain: Variant = "rakers = 3; room = 2".parse().unwrap();
        assert_eq!(plain.label(), "rakers = 3; room = 2");
        let clock: Variant = "early: shift.start = 7:00".parse().unwrap();
        assert_eq!((clock.label(), clock.changes[0].value.as_str()), ("early".into(), "7:00"));
        for (bad, words) in [(": rakers = 2", "no name"), ("x: ", "nothing is changed"), ("x: y", "no \"=\"")]
        {
            assert!(bad.parse::<Variant>().unwrap_err().contains(words), "{bad}");
        }
        for name in ["a\u{5}b".to_owned(), "x".repeat(81)] {
            let said = format!("{name}: rakers = 2").parse::<Variant>().unwrap_err();
            assert!(said.contains("on one line") && !said.contains(&name), "{said}");
        }
    }

    #[test]
    fn a_foot_mark_opens_no_quote() {
        assert_eq!("loader.x.width = 5' 6\"; rakers = 2".parse::<Variant>().unwrap().changes.len(), 2);
    }
}
