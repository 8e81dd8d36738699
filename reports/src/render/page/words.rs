//! Small things the sections say alike.

use crate::findings::capital;

/// `a`, `a and b`, `a, b and c`.
pub(crate) fn and_list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Names as a list; copies numbered through are told as `tractor 1 to 4`.
pub(crate) fn names(all: &[&str]) -> String {
    let numbered = |name: &str| {
        let (stem, number) = name.rsplit_once(' ')?;
        Some((stem.to_owned(), number.parse::<u32>().ok()?))
    };
    if let [first, _, .., last] = all
        && let (Some((stem, from)), Some((_, to))) = (numbered(first), numbered(last))
        && (from..=to).map(|n| Some((stem.clone(), n))).eq(all.iter().map(|name| numbered(name)))
    {
        return format!("{stem} {from} to {to}");
    }
    and_list(&all.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>())
}

/// `1 load`, `71 loads`, `1,200 loads`.
pub(crate) fn count(n: u64, what: &str) -> String {
    let plural = if n == 1 { "" } else { "s" };
    format!("{} {what}{plural}", number(n))
}

/// A whole number with commas from ten thousand on.
pub(crate) fn number(n: u64) -> String {
    scenarios::units::figure(n as f64)
}

/// With a capital at its start and a full stop at its end.
pub(crate) fn sentence(words: &str) -> String {
    let words = words.trim();
    let stop = if words.is_empty() || words.ends_with(['.', '!', '?', ':']) { "" } else { "." };
    format!("{}{stop}", capital(words))
}

/// A figure and its unit kept on one line: the space after every number is one that does not break, unless another
/// number, a word such as "to" or the next sentence follows. The time of a day stays with it.
pub(crate) fn tight(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 4);
    let (mut before, mut last) = ("", "");
    for word in text.split(' ') {
        if !out.is_empty() {
            let unit = is_number(last)
                && !is_number(word)
                && !last.ends_with(['.', ',', ';', ':'])
                && !matches!(word, "to" | "and" | "in" | "more" | "less" | "lost");
            let of_day = is_number(word) && (last == "day" || before == "day" && is_number(last));
            out.push(if unit || of_day { '\u{a0}' } else { ' ' });
        }
        out.push_str(word);
        (before, last) = (last, word);
    }
    out
}

fn is_number(word: &str) -> bool {
    word.trim_start_matches(['(', '±', '-', '\u{2212}', '$']).starts_with(|c: char| c.is_ascii_digit())
}

/// `Saturday, 18 April 2026`.
pub(crate) fn date(date: time::Date) -> String {
    scenarios::calendar::whole(date).replacen(' ', ", ", 1)
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
    fn copies_numbered_through_are_not_named_one_by_one() {
        assert_eq!(names(&["tractor 1", "tractor 2", "tractor 3"]), "tractor 1 to 3");
        assert_eq!(names(&["tractor 1", "tractor 2"]), "tractor 1 and tractor 2");
        assert_eq!(names(&["tractor 1", "tractor 3", "tractor 4"]), "tractor 1, tractor 3 and tractor 4");
        assert_eq!(names(&["bed 1", "row 2", "bed 3"]), "bed 1, row 2 and bed 3");
    }

    #[test]
    fn a_sentence_gets_its_capital_and_one_full_stop() {
        assert_eq!(sentence("order one more truckload"), "Order one more truckload.");
        assert_eq!(sentence("Keep clear."), "Keep clear.");
        assert_eq!(sentence(" "), "");
    }

    #[test]
    fn a_figure_stays_with_its_unit() {
        assert_eq!(tight("3 h 56 min to 4 h"), "3\u{a0}h 56\u{a0}min to 4\u{a0}h");
        assert_eq!(tight("day 3 11:26 am"), "day\u{a0}3\u{a0}11:26\u{a0}am");
        assert_eq!(tight("66.3 yd3 to 77 yd3"), "66.3\u{a0}yd3 to 77\u{a0}yd3");
        assert_eq!(tight("± 3 min"), "± 3\u{a0}min");
        assert_eq!(tight("by 08:21. Nothing, by 2, either"), "by 08:21. Nothing, by 2, either");
    }

    #[test]
    fn a_date_is_said_with_its_weekday() {
        assert_eq!(date(scenarios::calendar::day(2026, 4, 18).unwrap()), "Saturday, 18 April 2026");
    }
}
