//! What can go wrong, and with which exit code: 1 where something could not be carried out, 2 where what was typed is
//! wrong, 128 and the number of the signal where one ended it.

use crate::output_folder::OutputError;
use reports::failure::Failure as NoAnswer;
use scenarios::Refusal;
use std::path::{Path, PathBuf};

/// Why a command did not end well.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Failure {
    /// The scenario file is not accepted.
    #[error(transparent)]
    Refused(#[from] Box<Refusal>),
    /// There is no answer to what was asked.
    #[error(transparent)]
    NoAnswer(NoAnswer),
    /// Files cannot be written.
    #[error(transparent)]
    Output(#[from] OutputError),
    /// A new file would overwrite another.
    #[error("{} is there already; it is left as it is. Name another file", .0.display())]
    FileExists(PathBuf),
    /// A new file cannot be written.
    #[error("cannot write {}: {error}", .file.display())]
    NewFile { file: PathBuf, error: std::io::Error },
    /// Standard output cannot be written.
    #[error("cannot write to standard output: {0}")]
    Standard(std::io::Error),
    /// The wish for so many threads cannot be met.
    #[error("cannot start the threads: {0}")]
    Threads(#[from] rayon::ThreadPoolBuildError),
    /// The person cannot be asked, or stopped answering.
    #[error("no answer: {0}")]
    Answers(#[from] dialoguer::Error),
}

impl Failure {
    /// Something typed on the command line does not make sense.
    pub(crate) fn asked(words: String) -> Self {
        Self::NoAnswer(NoAnswer::Asked(words))
    }

    /// The exit code it ends with.
    pub(crate) fn code(&self) -> u8 {
        match self {
            Self::Refused(_) | Self::NoAnswer(NoAnswer::Job { .. } | NoAnswer::Asked(_)) => 2,
            Self::Output(error) if error.is_asked_wrongly() => 2,
            _ => 1,
        }
    }

    /// The same, with the file that the job is in.
    #[must_use]
    pub(crate) fn in_file(self, file: &Path) -> Self {
        match self {
            Self::NoAnswer(why) => Self::NoAnswer(why.in_file(&scenarios::shown_path(file))),
            other => other,
        }
    }

    /// Whether it only means that whoever read the output has gone.
    pub(crate) fn is_broken_pipe(&self) -> bool {
        matches!(self, Self::Standard(error) if error.kind() == std::io::ErrorKind::BrokenPipe)
    }
}

impl From<NoAnswer> for Failure {
    fn from(why: NoAnswer) -> Self {
        match why {
            NoAnswer::Refused(refusal) => Self::Refused(refusal),
            why => Self::NoAnswer(why),
        }
    }
}

impl From<Refusal> for Failure {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(Box::new(refusal))
    }
}
