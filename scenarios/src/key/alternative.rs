//! Keys of `[[alternative]]`.

use super::{Holds, Key, LeftOut, key};

pub(crate) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every alternative a name"),
        "\"second raker\"",
        "What the alternative is called.",
    ),
    key(
        "change",
        Holds::Changes,
        LeftOut::Needed(CHANGE_RIGHT),
        "{ \"raker.helper.count\" = 2 }",
        "What differs from the job as it stands: keys of the file with dots between kind, name and key, and their new values.",
    ),
];

/// How changes are written.
pub(crate) const CHANGE_RIGHT: &str =
    "write change = { \"loader.compact tractor.heaped\" = \"20 ft3\" }, with the file's own keys";
