//! What is wrong with a file, said so that it can be put right.

use crate::signs::escaped;
use std::fmt;
use std::ops::Range;

/// One thing that is wrong with a scenario file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// Name of the file as typed.
    pub file: String,
    /// Where it stands in the text \[bytes\]; `None` if it concerns the whole file.
    pub span: Option<Range<usize>>,
    /// Line, counted from 1; 0 = the whole file.
    pub line: usize,
    /// Column in characters, counted from 1; 0 = the whole file.
    pub column: usize,
    /// The key it concerns, in words: `zone "north".depth`; may be empty.
    pub key: String,
    /// The value as typed; may be empty.
    pub value: String,
    /// What is wrong.
    pub what: String,
    /// What would be right; may be empty.
    pub right: String,
}

impl fmt::Display for Problem {
    /// One line in which everything can be seen.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&escaped(&self.file))?;
        if self.line > 0 {
            write!(f, ":{}:{}", self.line, self.column)?;
        }
        f.write_str(": ")?;
        let (key, value) = (escaped(&self.key), escaped(&self.value));
        match (key.is_empty(), value.is_empty()) {
            (false, false) => write!(f, "{key} = {value}: ")?,
            (false, true) => write!(f, "{key}: ")?,
            (true, false) => write!(f, "{value}: ")?,
            (true, true) => {}
        }
        f.write_str(&escaped(&self.what))?;
        if !self.right.is_empty() {
            write!(f, "; {}", escaped(&self.right))?;
        }
        Ok(())
    }
}

/// A scenario file that is not accepted, with everything that is wrong with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Name of the file as typed.
    pub file: String,
    /// Its text, for showing the lines concerned; empty if it could not be read.
    pub text: String,
    /// What is wrong, in the order of the file, at least one.
    pub problems: Vec<Problem>,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, problem) in self.problems.iter().enumerate() {
            if i > 0 {
                f.write_str("\n")?;
            }
            problem.fmt(f)?;
        }
        Ok(())
    }
}

impl std::error::Error for Refusal {}
