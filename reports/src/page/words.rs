//! Small things the sections say alike.

use crate::findings::capital;

/// `a`, `a and b`, `a, b and c`.
pub(super) fn and_list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// `1 load`, `71 loads`, `1,200 loads`.
pub(super) fn count(n: u64, what: &str) -> String {
    let plural = if n == 1 { "" } else { "s" };
    format!("{} {what}{plural}", number(n))
}

/// A whole number with commas from ten thousand on.
pub(super) fn number(n: u64) -> String {
    scenarios::units::figure(n as f64)
}

/// With a capital at its start and a full stop at its end.
pub(super) fn sentence(words: &str) -> String {
    let words = words.trim();
    let stop = if words.is_empty() || words.ends_with(['.', '!', '?', ':']) { "" } else { "." };
    format!("{}{stop}", capital(words))
}

/// `Saturday, 18 April 2026`.
pub(super) fn date(date: jiff::civil::Date) -> String {
    date.strftime("%A, %-d %B %Y").to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_joined_as_people_do() {
        let list = |n: usize| and_list(&["a", "b", "c"].map(str::to_owned)[..n]);
        assert_eq!([list(0), list(1), list(2), list(3)], ["", "a", "a and b", "a, b and c"]);
    }

    #[test]
    fn a_sentence_gets_its_capital_and_one_full_stop() {
        assert_eq!(sentence("order one more truckload"), "Order one more truckload.");
        assert_eq!(sentence("Keep clear."), "Keep clear.");
        assert_eq!(sentence(" "), "");
    }

    #[test]
    fn a_date_is_said_with_its_weekday() {
        assert_eq!(date(jiff::civil::date(2026, 4, 18)), "Saturday, 18 April 2026");
    }
}
