//! Lines of a table in text and their cells, with their places in the text (RFC 4180, but a cell ends with its line).

use std::ops::Range;

/// What stands between cells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Delimiter {
    Comma,
    Semicolon,
    Tab,
}

/// A cell.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cell {
    /// Where it stands in the text, quotes included.
    pub(super) span: Range<usize>,
    /// What it says, without spaces around it.
    pub(super) text: String,
    /// Whether a quote opened in it is closed.
    pub(super) closed: bool,
}

impl Delimiter {
    /// The one a heading line is written with.
    pub(super) fn of(heading: &str) -> Self {
        match heading {
            heading if heading.contains(',') => Self::Comma,
            heading if heading.contains(';') => Self::Semicolon,
            heading if heading.contains('\t') => Self::Tab,
            _ => Self::Comma,
        }
    }

    fn sign(self) -> char {
        match self {
            Self::Comma => ',',
            Self::Semicolon => ';',
            Self::Tab => '\t',
        }
    }
}

/// Lines that are neither blank nor a comment, without their ends and without a byte order mark.
pub(super) fn lines(text: &str) -> impl Iterator<Item = Range<usize>> + '_ {
    let start = text.len() - text.trim_start_matches('\u{feff}').len();
    let mut at = start;
    text[start..].split_inclusive('\n').filter_map(move |line| {
        let from = at;
        at += line.len();
        let line = line.trim_end_matches(['\n', '\r']);
        // A spreadsheet leaves lines of nothing but delimiters below its last row.
        let blank = line.chars().all(|c| c.is_whitespace() || ",;\t".contains(c));
        (!blank && !line.trim_start().starts_with('#')).then_some(from..from + line.len())
    })
}

/// The cells of a line.
pub(super) fn cells(text: &str, line: Range<usize>, delimiter: Delimiter) -> Vec<Cell> {
    let (mut all, mut from) = (Vec::new(), line.start);
    let (mut quoted, mut blank) = (false, true);
    for (i, c) in text[line.clone()].char_indices() {
        match c {
            '"' if quoted => quoted = false,
            // A doubled quote closes and opens again; any other stands only at the beginning of a cell.
            '"' if blank
                || text[..line.start + i].ends_with('"') && text[from..].trim_start().starts_with('"') =>
            {
                quoted = true;
            }
            c if c == delimiter.sign() && !quoted => {
                all.push(cell(text, from..line.start + i, true));
                (from, blank) = (line.start + i + 1, true);
                continue;
            }
            _ => {}
        }
        blank = blank && c.is_whitespace();
    }
    all.push(cell(text, from..line.end, !quoted));
    all
}

fn cell(text: &str, span: Range<usize>, closed: bool) -> Cell {
    let whole = &text[span.clone()];
    let trimmed = whole.trim();
    let start = span.start + (whole.len() - whole.trim_start().len());
    let inner = trimmed.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    let text = match inner {
        Some(inner) if closed => inner.replace("\"\"", "\"").trim().to_owned(),
        _ => trimmed.to_owned(),
    };
    Cell { span: start..start + trimmed.len(), text, closed }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(line: &str) -> Vec<String> {
        cells(line, 0..line.len(), Delimiter::Comma).into_iter().map(|cell| cell.text).collect()
    }

    #[test]
    fn cells_are_cut_at_delimiters_outside_quotes() {
        assert_eq!(texts("a, b ,,\"c, d\" "), ["a", "b", "", "c, d"]);
        assert_eq!(texts("\"the \"\"wide\"\" one\",8 ft3"), ["the \"wide\" one", "8 ft3"]);
        assert_eq!(texts(""), [""]);
    }

    #[test]
    fn the_inch_mark_is_no_quote() {
        assert_eq!(texts("wide,60\",8 ft3"), ["wide", "60\"", "8 ft3"]);
        assert_eq!(texts("wide,5' 6\",8 ft3"), ["wide", "5' 6\"", "8 ft3"]);
    }

    #[test]
    fn a_quote_left_open_is_known() {
        let open = cells("a,\"b,c", 0..6, Delimiter::Comma);
        assert_eq!((open.len(), open[1].closed, open[1].span.clone()), (2, false, 2..6));
    }

    #[test]
    fn blank_lines_comments_and_the_mark_at_the_beginning_are_passed_over() {
        let text = "\u{feff}# list\n\nname,heaped\r\n  \n# more\nx,9 l\n,,\n";
        let found: Vec<&str> = lines(text).map(|line| &text[line]).collect();
        assert_eq!(found, ["name,heaped", "x,9 l"]);
        assert_eq!([",", ";", "\t", "x"].map(Delimiter::of).map(Delimiter::sign), [',', ';', '\t', ',']);
    }
}
