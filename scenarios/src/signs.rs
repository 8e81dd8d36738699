//! Signs that cannot be seen, or that make two different names look the same (Unicode Standard Annexes 15 and 44).

use unicode_normalization::UnicodeNormalization;

/// Longest name of a thing \[characters\].
pub(crate) const LONGEST_NAME: usize = 80;

/// Letters and marks that show nothing although their category says otherwise (Default_Ignorable_Code_Point of Unicode,
/// and the blank Braille pattern).
const BLANK: &[(char, char)] = &[
    ('\u{34F}', '\u{34F}'),
    ('\u{115F}', '\u{1160}'),
    ('\u{17B4}', '\u{17B5}'),
    ('\u{180B}', '\u{180F}'),
    ('\u{2800}', '\u{2800}'),
    ('\u{3164}', '\u{3164}'),
    ('\u{FE00}', '\u{FE0F}'),
    ('\u{FFA0}', '\u{FFA0}'),
    ('\u{E0100}', '\u{E01EF}'),
];

/// Whether a sign cannot be seen, turns the direction of what follows, or stands for nothing: control and format
/// characters, ends of lines, spaces other than the usual one, unassigned and private code points. These are what Rust's `Debug`
/// escapes.
pub(crate) fn hidden(sign: char) -> bool {
    if sign.is_ascii() {
        return sign.is_ascii_control();
    }
    // Behind a letter: a mark that stands alone is escaped as well.
    let shown = ['a', sign].iter().collect::<String>().escape_debug().nth(1) == Some(sign);
    !shown || BLANK.iter().any(|(first, last)| (*first..=*last).contains(&sign))
}

/// The first sign of a text that cannot be seen, written as its code point: `U+202E`.
pub(crate) fn first_hidden(text: &str) -> Option<String> {
    text.chars().find(|sign| hidden(*sign)).map(|sign| format!("U+{:04X}", u32::from(sign)))
}

/// A text fit for a terminal, a page or a message: what cannot be seen is written as its code point.
///
/// ```
/// assert_eq!(scenarios::escaped("north\u{202E}\u{1b}[1m.toml"), "north\\u{202e}\\u{1b}[1m.toml");
/// assert_eq!(scenarios::escaped("größer ± ½"), "größer ± ½");
/// ```
pub fn escaped(text: &str) -> String {
    if !text.chars().any(hidden) {
        return text.to_owned();
    }
    let mut shown = String::with_capacity(text.len() + 16);
    for sign in text.chars() {
        if hidden(sign) { shown.extend(sign.escape_unicode()) } else { shown.push(sign) }
    }
    shown
}

/// As [`escaped`], with the ends of lines kept.
///
/// ```
/// assert_eq!(scenarios::escaped_lines("a\nb\u{7}"), "a\nb\\u{7}");
/// ```
pub fn escaped_lines(text: &str) -> String {
    text.split('\n').map(escaped).collect::<Vec<_>>().join("\n")
}

/// A file name fit for a terminal, a page or a message.
///
/// ```
/// assert_eq!(scenarios::shown_path(std::path::Path::new("a\u{1b}.toml")), "a\\u{1b}.toml");
/// ```
pub fn shown_path(path: &std::path::Path) -> String {
    escaped(&path.display().to_string())
}

/// A text fit to be shown in a message: cut short, what cannot be seen written as its code point.
pub(crate) fn printable(text: &str) -> String {
    let cut: String = text.chars().take(LONGEST_NAME).collect();
    escaped(&cut)
}

/// A text with letters and their marks put together (NFC), as it is kept.
pub(crate) fn composed(text: &str) -> String {
    if text.is_ascii() { text.to_owned() } else { text.nfc().collect() }
}

/// What two names that look alike have in common (NFKC, spaces as one).
pub(crate) fn likeness(name: &str) -> String {
    if name.is_ascii() && !name.contains("  ") {
        return name.to_owned();
    }
    let one: String = name.nfkc().collect();
    one.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_seen_is_hidden_and_what_can_is_not() {
        for sign in [
            '\u{0}',
            '\t',
            '\u{1b}',
            '\u{7f}',
            '\u{85}',
            '\u{a0}',
            '\u{ad}',
            '\u{200b}',
            '\u{200d}',
            '\u{200e}',
            '\u{202e}',
            '\u{2028}',
            '\u{2066}',
            '\u{2800}',
            '\u{3000}',
            '\u{3164}',
            '\u{fe0f}',
            '\u{feff}',
            '\u{e000}',
            '\u{378}',
            '\u{ffff}',
            '\u{e0041}',
            '\u{10ffff}',
        ] {
            assert!(hidden(sign), "U+{:04X}", u32::from(sign));
        }
        for sign in "aZ 0-_.\"'éßñЖ中あ한ع½€°²³×–’𝄞🚜\u{301}".chars() {
            assert!(!hidden(sign), "{sign}");
        }
    }

    #[test]
    fn what_is_hidden_is_so_by_its_category() {
        use unicode_properties::{GeneralCategory as Category, UnicodeGeneralCategory};
        let blank = |sign| BLANK.iter().any(|(first, last)| (*first..=*last).contains(&sign));
        for sign in ('\u{80}'..=char::MAX).filter(|sign| !blank(*sign)) {
            let by_category = matches!(
                sign.general_category(),
                Category::Control
                    | Category::Format
                    | Category::PrivateUse
                    | Category::LineSeparator
                    | Category::ParagraphSeparator
                    | Category::SpaceSeparator
            );
            // Which code points are assigned is for each version of Unicode to say.
            let is_settled = sign < '\u{370}' || by_category || sign.is_alphanumeric();
            if is_settled {
                assert_eq!(hidden(sign), by_category, "U+{:04X}", u32::from(sign));
            }
        }
    }

    #[test]
    fn names_that_look_alike_have_the_same_likeness() {
        assert_eq!(composed("e\u{301}"), "é");
        for (a, b) in [("é", "e\u{301}"), ("m²", "m2"), ("ﬁeld", "field"), ("Ａ", "A"), ("a  b", "a b")]
        {
            assert_eq!(likeness(a), likeness(b));
        }
        assert_ne!(likeness("North"), likeness("north"));
    }

    #[test]
    fn the_first_hidden_sign_is_named_by_its_code_point() {
        assert_eq!(first_hidden("ab\u{200b}c"), Some("U+200B".to_owned()));
        assert_eq!(first_hidden("ab c"), None);
    }
}
