//! A file on disk, read as text.

use crate::files::{self, NotRead};
use crate::nearest::nearest;
use crate::problem::{Problem, Refusal};
use crate::signs::escaped;
use std::path::Path;

/// Largest scenario file \[bytes\].
const LARGEST: u64 = 1_000_000;

/// Why a file is not read: what is wrong, what would be right, and where in the bytes.
pub(crate) struct Unread {
    pub(crate) what: String,
    pub(crate) right: String,
    /// Line counted from 1; 0 = the whole file.
    pub(crate) line: usize,
}

impl Unread {
    /// The refusal of a file that could not be read.
    pub(crate) fn refusal(self, file: String) -> Refusal {
        let problem = Problem {
            file: file.clone(),
            span: None,
            line: self.line,
            column: usize::from(self.line > 0),
            key: String::new(),
            value: String::new(),
            what: self.what,
            right: self.right,
        };
        Refusal { file, text: String::new(), problems: vec![problem] }
    }
}

/// The kind of file that is read, for messages.
pub(crate) struct Wanted {
    name: &'static str,
    ending: &'static str,
    missing: &'static str,
    form: &'static str,
}

impl Wanted {
    const SCENARIO: Self = Self {
        name: "scenario file",
        ending: ".toml",
        missing: "write a new one with heapcast new",
        form: "a scenario file is plain text in TOML",
    };
    /// A list of buckets.
    pub(crate) const BUCKETS: Self = Self {
        name: "list of buckets",
        ending: ".csv",
        missing: "write one with the heading line: name, struck, heaped, width, mass, price",
        form: "a list of buckets is plain text in CSV; save it from the spreadsheet as CSV in UTF-8",
    };
}

/// Reads a scenario file as UTF-8 text.
pub(crate) fn text(path: &Path) -> Result<String, Unread> {
    text_of(path, &Wanted::SCENARIO)
}

/// Reads a file as UTF-8 text.
pub(crate) fn text_of(path: &Path, wanted: &Wanted) -> Result<String, Unread> {
    let Wanted { name, ending, .. } = wanted;
    let whole = |what: String, right: &str| Unread { what, right: right.to_owned(), line: 0 };
    let bytes = files::bytes(path, LARGEST).map_err(|not_read| {
        let right = match &not_read {
            NotRead::Missing => beside(path, ending).unwrap_or_else(|| wanted.missing.into()),
            NotRead::BrokenLink => format!("put the file there again, or name a {name} that is there"),
            NotRead::Forbidden => "ask for the right to read it".into(),
            NotRead::Folder => format!("name a {name} in it, ending in {ending}"),
            NotRead::Special => format!("name a {name}, ending in {ending}"),
            NotRead::TooLarge(_) => format!("a {name} is far smaller; is this the file you mean?"),
            NotRead::Other(_) => format!("name a {name}"),
        };
        whole(not_read.what(), &right)
    })?;
    if bytes.contains(&0) {
        return Err(whole("this is not a text file".into(), wanted.form));
    }
    String::from_utf8(bytes).map_err(|error| {
        let good = error.utf8_error().valid_up_to();
        let before = error.as_bytes().get(..good).unwrap_or_default();
        Unread {
            what: "this line is not UTF-8 text".into(),
            right: "save the file as UTF-8".into(),
            line: before.iter().filter(|byte| **byte == b'\n').count() + 1,
        }
    })
}

/// The file of the same kind in the same folder whose name is nearest.
fn beside(path: &Path, ending: &str) -> Option<String> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .ok()?
        .take(1000)
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(ending))
        .collect();
    names.sort();
    let name = path.file_name()?.to_str()?;
    nearest(name, names.iter().map(String::as_str))
        .map(|near| format!("the nearest beside it is \"{}\"", escaped(near)))
}

#[cfg(test)]
mod tests;
