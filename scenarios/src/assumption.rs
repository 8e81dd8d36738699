//! What was assumed while a file was read.

/// Something the file does not say that has been assumed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Assumption {
    /// The key that would say it, such as `loader.compact tractor.loading`.
    pub key: String,
    /// What is assumed, in one line.
    pub words: String,
    /// Where it comes from: a source with its status, or "common practice, no source".
    pub from: String,
}
