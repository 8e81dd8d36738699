//! Small words of the sentence: articles, plurals, numbers, lists.

/// The article of a name that takes one: `the pile`, but `bed A` and `rows 1 and 2`.
pub(super) fn article(name: &str) -> &'static str {
    let plain = name.chars().all(|c| !c.is_uppercase() && !c.is_numeric());
    if plain && own_article(name).is_none() && !name.is_empty() { "the " } else { "" }
}

/// The article that is part of a name, with the rest of it. A capital `A` is a letter.
fn own_article(name: &str) -> Option<(&str, &str)> {
    let (first, rest) = name.split_once(' ')?;
    let small = first.to_lowercase();
    let is_one = ["the", "a", "an", "my", "our", "your", "his", "her", "their"].contains(&small.as_str());
    (is_one && first != "A").then_some((first, rest))
}

/// A name within a sentence, without the article it may take: `pile`, `bed A`, `the Beast`.
pub(super) fn as_said(name: &str) -> String {
    own_article(name)
        .map_or_else(|| name.to_owned(), |(article, rest)| format!("{} {rest}", article.to_lowercase()))
}

/// A name with its article within a sentence: `the pile`, `bed A`, `the Beast`.
pub(super) fn within(name: &str) -> String {
    format!("{}{}", article(name), as_said(name))
}

/// The same where a sentence begins: `The pile`, `bed A`, `The Beast`.
pub(super) fn beginning(name: &str) -> String {
    let has_article = !article(name).is_empty() || own_article(name).is_some();
    if has_article { capital(&within(name)) } else { name.to_owned() }
}

/// A name after a number or `each`: `pile`, `bed A`, `Beast`.
pub(super) fn bare(name: &str) -> &str {
    own_article(name).map_or(name, |(_, rest)| rest)
}

/// With a capital letter first.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
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
    fn a_name_with_an_article_of_its_own_is_said_as_people_say_it() {
        for (name, inside, first, after_a_number) in [
            ("pile", "the pile", "The pile", "pile"),
            ("The Beast", "the Beast", "The Beast", "Beast"),
            ("the yard", "the yard", "The yard", "yard"),
            ("My Tractor", "my Tractor", "My Tractor", "Tractor"),
            ("bed A", "bed A", "bed A", "bed A"),
            ("A side", "A side", "A side", "A side"),
            ("Bob of The Hill", "Bob of The Hill", "Bob of The Hill", "Bob of The Hill"),
        ] {
            let said = [&within(name), &beginning(name), bare(name)];
            assert_eq!(said, [inside, first, after_a_number]);
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
