//! What every answer is: a line, a screen, a document for programs and files, prepared in memory.

use crate::card::Card;
use crate::chart::{ChartError, Figure};
use crate::failure::Failure;
use crate::findings::Warning;
use crate::provenance::Provenance;
use crate::render::ExportError;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::io::Write;
use std::path::Path;

/// What a question yields once its runs are made. Its files may be put together on several threads.
pub trait Answer: Sync {
    /// The answer in one line.
    fn headline(&self) -> String;

    /// The first screen as data.
    fn card(&self) -> Card;

    /// The first screen; the files are in `folder`.
    fn first(&self, folder: &Path, columns: u16) -> String;

    /// The screen with all tables.
    fn full(&self, folder: &Path, columns: u16) -> String;

    /// All of it for programs.
    ///
    /// # Errors
    /// If it cannot be put together.
    fn json(&self) -> Result<Vec<u8>, Failure>;

    /// What is doubtful in the file and has to be said beside the document for programs.
    fn doubtful(&self) -> Vec<Warning> {
        Vec::new()
    }

    /// What was asked for and could not be had, to be said beside the answer.
    fn besides(&self) -> Option<String> {
        None
    }

    /// All files.
    ///
    /// # Errors
    /// If one of them cannot be put together.
    fn files(&self, rows: RunRows) -> Result<Vec<Document>, Failure>;

    /// Runs that the table of runs could have rows for; 0 without such a table.
    fn runs(&self) -> u32 {
        0
    }
}

/// One file of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// Its name in the folder.
    pub name: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// One row for each run.
pub(crate) const RUNS: &str = "runs.csv";
/// The same, compressed (gzip, RFC 1952).
pub(crate) const RUNS_COMPRESSED: &str = "runs.csv.gz";

/// Rows of the table of runs where nothing else is asked for.
pub const MOST_ROWS: u32 = 10_000;

/// What is wanted of the table of runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RunRows {
    /// Runs in it at the most: the first ones.
    pub most: usize,
    /// Whether it is compressed.
    pub compress: bool,
}

impl RunRows {
    /// The table as a file.
    pub(crate) fn document(self, bytes: Result<Vec<u8>, ExportError>) -> Result<Document, Failure> {
        let plain = document(RUNS, bytes)?;
        if !self.compress {
            return Ok(plain);
        }
        let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
        let written = encoder.write_all(&plain.bytes).and_then(|()| encoder.finish());
        written
            .map(|bytes| Document { name: RUNS_COMPRESSED, bytes })
            .map_err(|error| Failure::Export { file: RUNS_COMPRESSED, error: error.to_string() })
    }
}

/// A format that will not take the results, as a failure.
pub fn failed(file: &'static str, error: &ExportError) -> Failure {
    Failure::Export { file, error: error.to_string() }
}

pub(crate) fn document(name: &'static str, bytes: Result<Vec<u8>, ExportError>) -> Result<Document, Failure> {
    Ok(Document { name, bytes: bytes.map_err(|error| failed(name, &error))? })
}

pub(crate) fn undrawn(file: &'static str, error: &ChartError) -> Failure {
    Failure::Export { file, error: error.to_string() }
}

/// A figure as one of these files, which says where it comes from.
pub(crate) fn drawing(figure: Figure, files: &[&'static str], from: &Provenance) -> Option<Document> {
    let name = files.iter().copied().find(|name| name.strip_suffix(".svg") == Some(figure.name))?;
    let bytes = format!("{}<!-- {} -->\n", figure.svg, from.words()).into_bytes();
    Some(Document { name, bytes })
}
