//! The journal of a replacement, and where in a workplace it and the files stand.

use serde::{Deserialize, Serialize};

/// New files.
pub(super) const NEW: &str = "new";
/// Old files, moved out of the way.
pub(super) const OLD: &str = "old";
/// The [`Journal`].
pub(super) const JOURNAL: &str = "journal.json";
/// The journal as long as it is not complete.
pub(super) const JOURNAL_DRAFT: &str = "journal.draft";

/// How to go back: for every file its name, and the SHA-256 of the new one if there is one.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Journal {
    pub(super) files: Vec<(String, Option<String>)>,
}
