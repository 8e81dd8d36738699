//! An answer, kept until the page has taken what it wants of it.

use crate::refused::Refused;
use crate::{Thrown, thrown};
use reports::answer::{Answer, Document, MOST_ROWS, RunRows};
use reports::ask::Question;
use reports::render::screen::plain;
use std::cell::OnceCell;
use std::path::Path;
use wasm_bindgen::prelude::*;

/// An answer.
#[wasm_bindgen]
pub struct Answered {
    folder: &'static str,
    answer: Box<dyn Answer + Send>,
    /// Put together when the first of them is wanted.
    files: OnceCell<Vec<Document>>,
}

impl Answered {
    pub(crate) fn new(question: &Question, answer: Box<dyn Answer + Send>) -> Self {
        let folder = question.folder.map_or("", |folder| folder.name);
        Self { folder, answer, files: OnceCell::new() }
    }

    fn files(&self) -> Result<&[Document], Refused> {
        if let Some(files) = self.files.get() {
            return Ok(files);
        }
        let files = self.answer.files(RunRows { most: MOST_ROWS as usize, compress: false })?;
        Ok(self.files.get_or_init(|| files))
    }

    fn named(&self, name: &str) -> Result<&Document, Refused> {
        let found = self.files()?.iter().find(|file| file.name == name);
        found.ok_or_else(|| Refused::Message(format!("the answer has no file \"{name}\"")))
    }

    fn document(&self) -> Result<String, Refused> {
        Ok(String::from_utf8_lossy(&self.answer.json()?).into_owned())
    }
}

#[wasm_bindgen]
impl Answered {
    /// The answer in one line, plain text.
    pub fn headline(&self) -> String {
        self.answer.headline()
    }

    /// The first screen as data.
    ///
    /// # Errors
    /// If it cannot be put together.
    pub fn card(&self) -> Thrown<String> {
        serde_json::to_string(&self.answer.card()).map_err(|error| thrown(error.into()))
    }

    /// The screen of the terminal with all tables, so many columns wide, plain text.
    pub fn screen(&self, columns: u16) -> String {
        plain(&self.answer.full(Path::new(self.folder), columns))
    }

    /// All of it for programs, as in the terminal.
    ///
    /// # Errors
    /// If it cannot be put together.
    pub fn json(&self) -> Thrown<String> {
        self.document().map_err(thrown)
    }

    /// The names of all files.
    ///
    /// # Errors
    /// If one of them cannot be put together.
    pub fn names(&self) -> Thrown<String> {
        let names = self.files().map(|files| files.iter().map(|file| file.name).collect::<Vec<_>>());
        Ok(serde_json::Value::from(names.map_err(thrown)?).to_string())
    }

    /// A file, byte for byte that of the terminal.
    ///
    /// # Errors
    /// If there is none of this name, or it cannot be put together.
    pub fn file(&self, name: &str) -> Thrown<Vec<u8>> {
        self.named(name).map(|file| file.bytes.clone()).map_err(thrown)
    }
}
