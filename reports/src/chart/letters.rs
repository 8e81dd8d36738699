//! How wide text is, without asking for a font: the reader's sans-serif is not known when the figure is drawn.
//!
//! Advance widths are those of a wide sans-serif of free licence (DejaVu Sans). Most others are narrower, so a box
//! measured here is rather too large than too small and labels that do not touch here do not touch on the page.

/// Widths of the printable ASCII characters from space on \[hundredths of the letter size\].
const WIDTHS: [u8; 95] = [
    32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64,
    34, 34, 84, 84, 84, 53, 100, 68, 69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79, 60, 79, 69, 63,
    61, 73, 68, 99, 69, 61, 69, 39, 34, 39, 84, 50, 50, 61, 63, 55, 63, 62, 35, 63, 63, 28, 28, 58, 28, 97,
    63, 61, 63, 63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84,
];

/// How much wider bold letters are than plain ones, at the most for running text.
const BOLD: f64 = 1.13;

/// What stands for the part of a name that is left out.
const REST: char = '…';

/// Weight of letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    /// Labels.
    Plain,
    /// Titles.
    Bold,
}

fn letter(c: char) -> f64 {
    let code = c as usize;
    match code {
        32..=126 => f64::from(WIDTHS[code - 32]) / 100.0,
        0..=0x24f => 0.7,
        0x250..=0x1fff => 1.0,
        _ => 1.1,
    }
}

/// Width of a line of text set in letters of `px` \[px\].
pub(super) fn width(text: &str, px: f64, weight: Weight) -> f64 {
    let plain: f64 = text.chars().map(letter).sum::<f64>() * px;
    match weight {
        Weight::Plain => plain,
        Weight::Bold => plain * BOLD,
    }
}

/// The text, or as much of it as fits into `room` with an ellipsis behind it.
pub(super) fn shorten(text: &str, px: f64, weight: Weight, room: f64) -> String {
    if width(text, px, weight) <= room {
        return text.to_owned();
    }
    let mut kept: String = text.to_owned();
    while kept.pop().is_some() {
        let line = format!("{}{REST}", kept.trim_end());
        if width(&line, px, weight) <= room {
            return line;
        }
    }
    REST.to_string()
}

/// Breaks text into at most `most` lines that fit into `room`; what does not fit into the last is cut with an
/// ellipsis. Words too long for a line are broken.
pub(super) fn wrap(text: &str, px: f64, weight: Weight, room: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut rest = text.trim();
    while !rest.is_empty() {
        if lines.len() + 1 >= most {
            lines.push(shorten(rest, px, weight, room));
            break;
        }
        let cut = break_at(rest, px, weight, room);
        lines.push(rest[..cut].trim_end().to_owned());
        rest = rest[cut..].trim_start();
    }
    lines
}

/// The same number of lines as [`wrap`] makes, of as equal a length as the words allow.
pub(super) fn balance(text: &str, px: f64, weight: Weight, room: f64, most: usize) -> Vec<String> {
    let mut best = wrap(text, px, weight, room, most);
    let mut room = room;
    for _ in 0..30 {
        room *= 0.97;
        let narrower = wrap(text, px, weight, room, best.len());
        // Shortened or broken words would be too high a price.
        if narrower.concat().replace(' ', "") != best.concat().replace(' ', "")
            || narrower.len() != best.len()
        {
            break;
        }
        best = narrower;
    }
    best
}

/// A name in at most `most` lines. Where it is cut, a short last word (a number, as a rule) is kept, so that names which
/// differ only there stay apart.
pub(super) fn wrap_name(name: &str, px: f64, room: f64, most: usize) -> Vec<String> {
    let mut lines = wrap(name, px, Weight::Plain, room, most);
    let last_word = name.trim().rsplit(' ').next().unwrap_or("");
    let tail = format!(" {last_word}");
    let tail_width = width(&tail, px, Weight::Plain);
    if let Some(line) = lines.last_mut().filter(|line| line.ends_with(REST) && tail_width < room * 0.4) {
        let kept = format!("{}{REST}", line.trim_end_matches(REST));
        let kept = shorten(&format!("{kept}{REST}"), px, Weight::Plain, room - tail_width);
        *line = format!("{kept}{tail}");
    }
    lines
}

/// Byte index behind the last word (or, in a long word, the last letter) that still fits.
fn break_at(text: &str, px: f64, weight: Weight, room: f64) -> usize {
    let (mut last_space, mut last_letter) = (None, None);
    for (at, c) in text.char_indices() {
        let end = at + c.len_utf8();
        if c == ' ' && !belong_together(&text[..at], &text[end..]) {
            last_space = Some(at);
        }
        if width(&text[..end], px, weight) > room {
            return last_space.or(last_letter).unwrap_or(end);
        }
        last_letter = Some(end);
    }
    text.len()
}

/// Whether a line must not end between the two: `11:30 am`, `1 h 08 min`, `day 2`.
fn belong_together(before: &str, after: &str) -> bool {
    let is_number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let letters = |word: &str| word.trim_matches(|c: char| !c.is_alphanumeric() && c != '%').to_owned();
    let last = letters(before.rsplit(' ').next().unwrap_or(""));
    let next = letters(after.split(' ').next().unwrap_or(""));
    const UNITS: [&str; 20] = [
        "am", "pm", "h", "min", "s", "%", "loads", "load", "yd", "yd3", "ft", "ft3", "m", "m3", "cm", "lb",
        "kg", "gal", "mph", "l",
    ];
    let unit = UNITS.contains(&next.as_str());
    let number_follows = ["day", "h", "min", "Run"].contains(&last.as_str()) && is_number(&next);
    is_number(&last) && (unit || next.contains(':')) || number_follows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wrapped_lines_fit_and_lose_no_word() {
        let text = "The loader waits for the rake a third of the time; nobody else waits much";
        let lines = wrap(text, 17.0, Weight::Bold, 260.0, 9);
        assert!(lines.len() > 1);
        assert!(lines.iter().all(|line| width(line, 17.0, Weight::Bold) <= 260.0), "{lines:?}");
        assert_eq!(lines.join(" "), text);
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        for (text, kept) in [
            ("all of it by 11:30 am today", "11:30 am"),
            ("it saves 1 h 08 min or more", "1 h 08 min"),
            ("done by day 2 9:53 am", "day 2 9:53 am"),
            ("a mean haul of 40 yd is the", "40 yd"),
        ] {
            for room in 60..200 {
                let lines = wrap(text, 10.0, Weight::Plain, f64::from(room), 9);
                if room > 75 {
                    assert!(lines.iter().any(|line| line.contains(kept)), "{lines:?}");
                }
            }
        }
    }

    #[test]
    fn a_name_too_long_for_its_place_ends_in_an_ellipsis() {
        let short = shorten("the long-armed loader from the upper orchard", 17.0, Weight::Plain, 120.0);
        assert!(short.ends_with('…') && short.starts_with("the long"), "{short}");
        assert!(width(&short, 17.0, Weight::Plain) <= 120.0);
        assert_eq!(shorten("barrow", 17.0, Weight::Plain, 120.0), "barrow");
    }

    #[test]
    fn balanced_lines_are_as_many_but_more_alike() {
        let text =
            "clock time; nights are squeezed to a strip; each column is 15 min of time, split by its shares";
        let length = |line: &String| width(line, 16.0, Weight::Plain);
        let (plain, even) =
            (wrap(text, 16.0, Weight::Plain, 700.0, 3), balance(text, 16.0, Weight::Plain, 700.0, 3));
        assert_eq!((plain.len(), even.len()), (2, 2));
        assert_eq!(even.join(" "), text);
        assert!(length(&even[1]) > 2.0 * length(&plain[1]), "{even:?}");
    }

    #[test]
    fn names_that_differ_in_their_last_word_stay_apart_when_cut() {
        let name =
            |n: u32| wrap_name(&format!("the long-armed loader from the upper orchard {n}"), 13.0, 117.0, 2);
        assert_ne!(name(1), name(7));
        assert!(name(7).iter().all(|line| width(line, 13.0, Weight::Plain) <= 117.0), "{:?}", name(7));
        assert!(name(7)[1].ends_with("… 7"), "{:?}", name(7));
    }

    #[test]
    fn a_word_without_spaces_is_broken_and_the_last_line_is_cut() {
        let lines = wrap(&"x".repeat(100), 10.0, Weight::Plain, 60.0, 3);
        assert_eq!(lines.len(), 3);
        assert!(lines[2].ends_with('…'));
        assert!(lines.iter().all(|line| width(line, 10.0, Weight::Plain) <= 60.0));
    }
}
