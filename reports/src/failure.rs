//! What can go wrong, and with which exit code: 1 where something could not be carried out, 2 where what was typed is
//! wrong, 128 and the number of the signal where one ended it.

use crate::output_folder::OutputError;
use scenarios::Refusal;
use std::path::{Path, PathBuf};

/// Why a command did not end well.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// The scenario file is not accepted.
    #[error(transparent)]
    Refused(#[from] Box<Refusal>),
    /// The model has no meaning for the job.
    #[error("{file}: {error}")]
    Job {
        /// The scenario file as typed.
        file: String,
        /// What is wrong with the job.
        error: sim::JobError,
    },
    /// Something typed on the command line does not go with the file.
    #[error("{0}")]
    Asked(String),
    /// A run can make no progress.
    #[error("the job gets stuck: {0}")]
    Stuck(#[from] sim::RunError),
    /// A run of the job in this file can make no progress.
    #[error("{file}: the job gets stuck: {error}")]
    StuckIn {
        /// The scenario file as typed.
        file: String,
        /// Why it gets stuck.
        error: sim::RunError,
    },
    /// A run can make no progress at one point of several.
    #[error("with {point} the job gets stuck: {error}")]
    StuckAt {
        /// What was changed there.
        point: String,
        /// Why it gets stuck.
        error: sim::RunError,
    },
    /// An improvement cannot be tried out.
    #[error("cannot work out what would help: {0}")]
    Relief(#[from] sim::ReliefError),
    /// Files cannot be written.
    #[error(transparent)]
    Output(#[from] OutputError),
    /// A new file would overwrite another.
    #[error("{} is there already; it is left as it is. Name another file", .0.display())]
    FileExists(PathBuf),
    /// A new file cannot be written.
    #[error("cannot write {}: {error}", .file.display())]
    NewFile {
        /// The file.
        file: PathBuf,
        /// Why not.
        error: std::io::Error,
    },
    /// Results cannot be put into a file format.
    #[error("cannot put the results into {file}: {error}")]
    Export {
        /// The file.
        file: &'static str,
        /// Why not.
        error: String,
    },
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
    /// The exit code it ends with.
    pub fn code(&self) -> u8 {
        match self {
            Self::Refused(_) | Self::Job { .. } | Self::Asked(_) => 2,
            Self::Output(error) if error.is_asked_wrongly() => 2,
            _ => 1,
        }
    }

    /// The same, with the file that the job is in.
    #[must_use]
    pub fn in_file(self, file: &Path) -> Self {
        match self {
            Self::Stuck(error) => Self::StuckIn { file: scenarios::shown_path(file), error },
            other => other,
        }
    }

    /// Whether it only means that whoever read the output has gone.
    pub fn is_broken_pipe(&self) -> bool {
        matches!(self, Self::Standard(error) if error.kind() == std::io::ErrorKind::BrokenPipe)
    }
}

impl From<Refusal> for Failure {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(Box::new(refusal))
    }
}
