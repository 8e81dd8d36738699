//! Why there is no answer.

/// Why there is no answer.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// A file is not accepted.
    #[error(transparent)]
    Refused(#[from] Box<scenarios::Refusal>),
    /// The model has no meaning for the job.
    #[error("{file}: {error}")]
    Job {
        /// The scenario file as typed.
        file: String,
        /// What is wrong with the job.
        error: sim::JobError,
    },
    /// What was asked does not make sense, or does not go with the file.
    #[error("{0}")]
    Asked(String),
    /// A run can make no progress.
    #[error("the job gets stuck: {0}")]
    Deadlock(#[from] sim::RunError),
    /// A run of the job in this file can make no progress.
    #[error("{file}: the job gets stuck: {error}")]
    DeadlockIn {
        /// The scenario file as typed.
        file: String,
        /// Why it makes no progress.
        error: sim::RunError,
    },
    /// A run can make no progress at one point of several.
    #[error("with {point} the job gets stuck: {error}")]
    DeadlockAt {
        /// What was changed there.
        point: String,
        /// Why it makes no progress.
        error: sim::RunError,
    },
    /// An improvement cannot be tried out.
    #[error("cannot work out what would help: {0}")]
    Relief(#[from] sim::ReliefError),
    /// Results cannot be put into a file format.
    #[error("cannot put the results into {file}: {error}")]
    Export {
        /// The file.
        file: &'static str,
        /// Why not.
        error: String,
    },
}

impl From<scenarios::Refusal> for Failure {
    fn from(refusal: scenarios::Refusal) -> Self {
        Self::Refused(Box::new(refusal))
    }
}

impl Failure {
    /// The same, with the file that the job is in, as typed.
    #[must_use]
    pub fn in_file(self, file: &str) -> Self {
        match self {
            Self::Deadlock(error) => Self::DeadlockIn { file: file.to_owned(), error },
            other => other,
        }
    }
}
