//! What every named thing of a file begins with.

use crate::diagnostics::{At, Place};

/// The name of a thing, and the place where it stands.
#[derive(Clone, Debug)]
pub(crate) struct Named {
    pub(crate) name: Option<At<String>>,
    pub(crate) place: Place,
}

impl Named {
    /// The name for messages.
    pub(crate) fn shown(&self) -> &str {
        self.name.as_ref().map_or("", |name| name.value.as_str())
    }
}
