//! What every answer is shown with, one module a medium.

pub(crate) mod json;
pub(crate) mod page;
pub mod screen;
pub(crate) mod table;

/// Why results do not fit a format.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// A table cannot be written.
    #[error(transparent)]
    Csv(#[from] csv::Error),
    /// A table cannot be finished.
    #[error("{0}")]
    Unfinished(String),
    /// A document cannot be written.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}
