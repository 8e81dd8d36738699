//! A list of buckets to choose from: a CSV file with a heading line.

mod bucket;
mod line;
mod row;

use crate::diagnostics::{Diagnostics, MOST_PROBLEMS, Place, Read};
use crate::hash;
use crate::nearest::nearest;
use crate::problem::Refusal;
use crate::raw::in_quotes;
use crate::signs::composed;
use crate::signs::printable;
use crate::source::Source;
pub use bucket::Bucket;
use line::Line;
use row::{Cell, Delimiter};

/// Most buckets of one list.
const MOST: usize = 100;
/// The columns a list may have.
const COLUMNS: [&str; 6] = ["name", "struck", "heaped", "width", "mass", "price"];

/// A list of buckets as read.
#[derive(Clone, Debug, PartialEq)]
pub struct BucketList {
    /// Name of the file as typed.
    pub file: String,
    /// The buckets in the order of the file, 1 to 100.
    pub buckets: Vec<Bucket>,
    /// Currency of the prices as typed; empty if there are none.
    pub currency: String,
    /// SHA-256 of the file in hexadecimal digits.
    pub hash: String,
}

impl BucketList {
    /// The bucket of a name.
    ///
    /// # Errors
    /// In words, with the nearest name, if there is none.
    pub fn find(&self, name: &str) -> Result<&Bucket, String> {
        self.buckets.iter().find(|bucket| bucket.name == composed(name.trim())).ok_or_else(|| {
            let names: Vec<String> = self.buckets.iter().map(|bucket| bucket.name.clone()).collect();
            let right = match nearest(name, names.iter().map(String::as_str)) {
                Some(near) => format!("the nearest is \"{near}\""),
                None => format!("there are {}", in_quotes(&names)),
            };
            format!("{} has no bucket called \"{}\"; {right}", self.file, printable(name.trim()))
        })
    }
}

/// Reads the text of a list of buckets: CSV in UTF-8 with a heading line of `name`, `struck`, `heaped`, `width`, `mass` and `price` in
/// any order, of which only `name` and `heaped` are needed. Every figure carries its unit; cells may be blank or in_quotes;
/// lines that begin with `#` are comments; semicolons or tabs in place of commas are taken too.
///
/// # Errors
/// Everything that is wrong with it, in one go, each problem with line, column heading and value.
///
/// ```
/// let list = scenarios::buckets_text("name, heaped, price\nsmall, 8.5 ft3, $450\n\"wide, light\", 0.5 m3,\n", "b.csv").unwrap();
/// assert_eq!((list.buckets.len(), list.currency.as_str()), (2, "$"));
/// assert_eq!((list.buckets[1].name.as_str(), list.buckets[1].price), ("wide, light", None));
/// let refusal = scenarios::buckets_text("name, heaped\nsmall, 9.5 lb\n", "b.csv").unwrap_err();
/// assert_eq!(refusal.to_string(), "b.csv:2:8: bucket \"small\", heaped = 9.5 lb: this is a mass; a volume is wanted, \
///     such as \"14 ft3\" or \"0.4 m3\"");
/// ```
pub fn buckets_text(text: &str, file: &str) -> Result<BucketList, Refusal> {
    let source = Source::new(file, text);
    let mut diagnostics = Diagnostics::default();
    let buckets = read(text).join(&mut diagnostics).unwrap_or_default();
    let said = source.said(&mut diagnostics);
    if diagnostics.is_clean() && buckets.is_empty() {
        let right = "write a line for each, such as: small, 8.5 ft3";
        diagnostics.problem(&Place::default(), "", "there is no bucket in this list", right);
    }
    if !diagnostics.is_clean() {
        return Err(source.refusal(source.problems(diagnostics)));
    }
    Ok(BucketList {
        file: file.to_owned(),
        buckets,
        currency: said.currency.unwrap_or_default(),
        hash: hash::sha256(text.as_bytes(), &[]),
    })
}

fn read(text: &str) -> Read<Vec<Bucket>> {
    let mut lines = row::lines(text);
    let Some(heading) = lines.next() else {
        let right = "begin with a heading line: name, struck, heaped, width, mass, price";
        return Read::problem(&Place::default(), "", "this list is empty", right);
    };
    let delimiter = Delimiter::of(&text[heading.clone()]);
    Read::of(|diagnostics| {
        let columns = headings(&row::cells(text, heading, delimiter)).join(diagnostics)?;
        let mut buckets: Vec<Bucket> = Vec::new();
        for (i, line) in lines.enumerate() {
            if diagnostics.problems() >= MOST_PROBLEMS {
                break;
            }
            if i == MOST {
                let place = Place { words: "the list".into(), span: Some(line), ..Place::default() };
                let what = format!("there are more than {MOST} buckets");
                diagnostics.problem(&place, "", what, format!("give at most {MOST}"));
                break;
            }
            let cells = row::cells(text, line.clone(), delimiter);
            let line = Line { cells, columns: &columns, line };
            buckets.extend(line.bucket(&buckets).join(diagnostics));
        }
        Some(buckets)
    })
}

/// Which column each cell of the heading is; nothing if the rows could not be read by it.
fn headings(cells: &[Cell]) -> Read<Vec<Option<&'static str>>> {
    let place =
        |cell: &Cell| Place { words: "heading".into(), span: Some(cell.span.clone()), ..Place::default() };
    let begin = "begin with a heading line such as: name, struck, heaped, width, mass, price";
    let column_of = |word: &str| COLUMNS.into_iter().find(|column| *column == word);
    if let Some(first) = cells.first()
        && cells.iter().all(|cell| column_of(&cell.text.to_lowercase()).is_none())
    {
        return Read::problem(&place(first), "", "the first line names no column that is known", begin);
    }
    Read::of(|diagnostics| {
        let mut columns: Vec<Option<&'static str>> = Vec::new();
        for cell in cells {
            let place = place(cell);
            let word = cell.text.to_lowercase();
            let known = column_of(&word);
            match known {
                None if word.is_empty() => {}
                None => {
                    let right = match nearest(&word, COLUMNS) {
                        Some(near) => {
                            format!("the nearest known is \"{near}\"; units stand in the cells, as in 14 ft3")
                        }
                        None => format!("known columns are {}", COLUMNS.join(", ")),
                    };
                    diagnostics.problem(&place, &printable(&cell.text), "this column is not known", right);
                }
                Some(column) if columns.contains(&Some(column)) => {
                    let right = "keep one of the two";
                    diagnostics.problem(&place, column, "this column stands here twice", right);
                }
                Some(_) => {}
            }
            columns.push(known);
        }
        for needed in ["name", "heaped"] {
            if !columns.contains(&Some(needed)) && diagnostics.is_clean() {
                let what = format!("the column \"{needed}\" is missing");
                diagnostics.problem(&cells.first().map(place).unwrap_or_default(), "", what, begin);
            }
        }
        diagnostics.is_clean().then_some(columns)
    })
}

#[cfg(test)]
mod tests;
