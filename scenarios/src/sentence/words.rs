//! Small words of the sentence: articles, plurals, numbers, lists.

/// A name with its article where it takes one: `the pile`, but `bed A` and `rows 1 and 2`.
pub(super) fn article(name: &str) -> &'static str {
    let plain = name.chars().all(|c| !c.is_uppercase() && !c.is_numeric());
    let first = name.split(' ').next().unwrap_or_default();
    let has_one = ["the", "a", "an", "my", "our", "your", "his", "her", "their"].contains(&first);
    if plain && !has_one && !first.is_empty() { "the " } else { "" }
}

/// A number in words up to twelve.
pub(super) fn number(count: u32) -> String {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    WORDS.get(count as usize).map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// A common noun for so many: `barrow`, `barrows`. Names with capitals or numbers stay as they are.
pub(super) fn plural(name: &str, count: u32) -> String {
    let common = name.chars().all(|c| c.is_ascii_lowercase() || " -".contains(c));
    if count == 1 || !common || name.ends_with('s') {
        return name.to_owned();
    }
    let sibilant = ["x", "z", "ch", "sh"].iter().any(|end| name.ends_with(end));
    match name.strip_suffix('y').filter(|stem| !stem.ends_with(['a', 'e', 'o', 'u'])) {
        Some(stem) => format!("{stem}ies"),
        None if sibilant => format!("{name}es"),
        None => format!("{name}s"),
    }
}

/// What stands between the entries of a list: commas, and a last word.
pub(super) fn between(at: usize, count: usize, last: &'static str) -> &'static str {
    match (at, count - at) {
        (0, _) => "",
        (_, 1) => last,
        _ => ", ",
    }
}

/// A name after which a pause is made, for it has one in it.
pub(super) fn pause(name: &str) -> &'static str {
    if name.contains(',') { "," } else { "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_take_an_article_where_people_say_one() {
        for (name, said) in [
            ("pile", "the pile"),
            ("heap beside the pen", "the heap beside the pen"),
            ("bed A", "bed A"),
            ("rows 1 and 2", "rows 1 and 2"),
            ("the yard", "the yard"),
            ("", ""),
        ] {
            assert_eq!(format!("{}{name}", article(name)), said);
        }
    }

    #[test]
    fn common_nouns_have_plurals_and_names_have_none() {
        for (one, many) in [
            ("barrow", "barrows"),
            ("wheel loader", "wheel loaders"),
            ("lorry", "lorries"),
            ("tray", "trays"),
            ("winch", "winches"),
            ("Number 5", "Number 5"),
        ] {
            assert_eq!((plural(one, 1), plural(one, 3)), (one.to_owned(), many.to_owned()));
        }
        assert_eq!([number(0), number(12), number(13)], ["no", "twelve", "13"]);
    }
}
