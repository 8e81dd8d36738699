//! Why there is no answer, for a page.

use reports::ask::Fault;
use reports::failure::Failure;
use scenarios::{Problem, escaped};
use serde::Serialize;

/// Why there is no answer.
#[derive(Debug, Serialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Refused {
    /// What is wrong, each at its place.
    Problems(Vec<ProblemJson>),
    /// What is wrong, as a whole.
    Message(String),
}

/// One thing that is wrong. Nothing in it is hidden from the eye.
#[derive(Debug, Serialize)]
pub(crate) struct ProblemJson {
    file: String,
    /// Counted from 1; 0 = the whole file.
    line: usize,
    column: usize,
    key: String,
    value: String,
    what: String,
    right: String,
    /// All of it in a line.
    words: String,
}

impl Refused {
    /// As the message of an error.
    pub(crate) fn json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }
}

/// What was handed in is not what it should be: a fault of the page.
impl From<serde_json::Error> for Refused {
    fn from(error: serde_json::Error) -> Self {
        Self::Message(format!("the page asked in a way that is not understood: {error}"))
    }
}

impl From<&Problem> for ProblemJson {
    fn from(problem: &Problem) -> Self {
        Self {
            file: escaped(&problem.file),
            line: problem.line,
            column: problem.column,
            key: escaped(&problem.key),
            value: escaped(&problem.value),
            what: escaped(&problem.what),
            right: escaped(&problem.right),
            words: problem.to_string(),
        }
    }
}

impl From<&Fault> for ProblemJson {
    fn from(fault: &Fault) -> Self {
        let [key, what, words] = [&fault.option, &fault.words, &fault.to_string()].map(|text| escaped(text));
        let nothing = String::new;
        Self { file: nothing(), line: 0, column: 0, key, value: nothing(), what, right: nothing(), words }
    }
}

impl From<&scenarios::Fault> for ProblemJson {
    fn from(fault: &scenarios::Fault) -> Self {
        let [what, right, words] = [&fault.what, &fault.right, &fault.to_string()].map(|text| escaped(text));
        let nothing = String::new;
        Self { file: nothing(), line: 0, column: 0, key: nothing(), value: nothing(), what, right, words }
    }
}

impl From<Vec<Fault>> for Refused {
    fn from(faults: Vec<Fault>) -> Self {
        Self::Problems(faults.iter().map(ProblemJson::from).collect())
    }
}

impl From<scenarios::Refusal> for Refused {
    fn from(refusal: scenarios::Refusal) -> Self {
        Self::Problems(refusal.problems.iter().map(ProblemJson::from).collect())
    }
}

impl From<Failure> for Refused {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Refused(refusal) => (*refusal).into(),
            other => Self::Message(scenarios::escaped_lines(&other.to_string())),
        }
    }
}
