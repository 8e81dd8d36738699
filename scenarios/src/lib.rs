//! The door of heapcast: scenario files, units, checks and cautions.

pub mod units;

mod caution;
mod problem;
mod scenario;
mod starter;

pub use caution::{Caution, Weight};
pub use problem::{Problem, Refusal};
pub use scenario::{Assumption, Scenario, Selection, Stated, StatedZone};
pub use starter::{Answers, starter};

use std::path::Path;

/// Reads a scenario file.
///
/// # Errors
/// Everything that is wrong with it, in one go.
pub fn read(path: &Path, selection: &Selection) -> Result<Scenario, Refusal> {
    read_text("", &path.display().to_string(), Path::new("."), selection)
}

/// Reads the text of a scenario file; files of observed values are looked for in `folder`.
///
/// # Errors
/// Everything that is wrong with it, in one go.
pub fn read_text(
    text: &str,
    file: &str,
    _folder: &Path,
    _selection: &Selection,
) -> Result<Scenario, Refusal> {
    let problem = Problem {
        file: file.into(),
        span: None,
        line: 0,
        column: 0,
        key: String::new(),
        value: String::new(),
        what: "scenario files cannot be read yet".into(),
        right: String::new(),
    };
    Err(Refusal { file: file.into(), text: text.into(), problems: vec![problem] })
}

/// The shipped scenarios: name and text.
pub fn shipped() -> &'static [(&'static str, &'static str)] {
    &[]
}
