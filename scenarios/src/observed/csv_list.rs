//! One column of a CSV file. Of a file that is no list of figures nothing is said but that it is none.

use crate::nearest::nearest;
use crate::signs::printable;
use crate::units::amount;

/// Longest heading that is shown \[characters\].
const LONGEST_HEADING: usize = 40;
/// Lines looked at to tell whether a column holds figures.
const LOOKED_AT: usize = 200;

/// Why a column is not read.
pub(super) enum Unread {
    /// It is not there; what would be right.
    NoColumn(String),
    /// Its heading stands there twice.
    Twice,
    NotCsv(String),
}

/// The cells of a column that are not blank, with their lines.
pub(super) fn column_of(bytes: &[u8], column: &str) -> Result<Vec<(u64, String)>, Unread> {
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(bytes);
    let headings = reader.headers().map_err(not_csv)?.clone();
    let mut found = headings.iter().enumerate().filter(|(_, heading)| *heading == column);
    let Some((index, _)) = found.next() else {
        return Err(Unread::NoColumn(remedy(bytes, column)));
    };
    if found.next().is_some() {
        return Err(Unread::Twice);
    }
    let mut cells = Vec::new();
    for record in reader.records() {
        let record = record.map_err(not_csv)?;
        let line = record.position().map_or(0, csv::Position::line);
        match record.get(index) {
            Some(cell) if !cell.is_empty() => cells.push((line, cell.to_owned())),
            _ => {}
        }
    }
    Ok(cells)
}

fn not_csv(error: csv::Error) -> Unread {
    let line = error.position().map_or(1, csv::Position::line);
    Unread::NotCsv(match error.kind() {
        csv::ErrorKind::Utf8 { .. } => format!("line {line} is not UTF-8 text"),
        csv::ErrorKind::UnequalLengths { expected_len, len, .. } => {
            format!("line {line} has {len} columns where the heading has {expected_len}")
        }
        _ => format!("line {line} is not CSV"),
    })
}

/// Whether at least half of these cells are figures.
pub(super) fn mostly_figures<'c>(cells: impl Iterator<Item = &'c str>) -> bool {
    let (mut all, mut figures) = (0, 0);
    for cell in cells.filter(|cell| !cell.is_empty()).take(LOOKED_AT) {
        all += 1;
        figures += usize::from(amount::parse(cell).is_ok());
    }
    all > 0 && 2 * figures >= all
}

/// What to name instead of a column that is not there: only headings of columns of figures are told.
fn remedy(bytes: &[u8], column: &str) -> String {
    let headings = headings_of_figures(bytes);
    let none = "name one of the columns in the heading line".to_owned();
    match nearest(column, headings.iter().map(String::as_str)) {
        Some(near) => format!("the nearest is \"{}\"", printable(near)),
        None if headings.is_empty() => none,
        None => format!("its columns of figures are {}", headings.join(", ")).chars().take(200).collect(),
    }
}

fn headings_of_figures(bytes: &[u8]) -> Vec<String> {
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).flexible(true).from_reader(bytes);
    let Ok(headings) = reader.headers().cloned() else {
        return Vec::new();
    };
    // A first line of figures is no heading.
    if headings.iter().any(|heading| heading.starts_with(|c: char| c.is_ascii_digit())) {
        return Vec::new();
    }
    let rows: Vec<csv::StringRecord> = reader.records().take(LOOKED_AT).map_while(Result::ok).collect();
    let of_figures = |(i, heading): (usize, &str)| {
        let short = !heading.is_empty() && heading.chars().count() <= LONGEST_HEADING;
        let figures = mostly_figures(rows.iter().filter_map(|row| row.get(i)));
        (short && figures).then(|| printable(heading))
    };
    headings.iter().enumerate().filter_map(of_figures).take(12).collect()
}
