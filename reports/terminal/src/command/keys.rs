//! `heapcast keys`: the keys of a scenario file.

use crate::cli::KeysArgs;
use crate::failure::Failure;
use crate::say;
use scenarios::{keys, keys_called};

pub(super) fn run(args: &KeysArgs) -> Result<(), Failure> {
    let words = args.words.join(" ");
    if words.trim().is_empty() {
        return say::out(&reports::keys::key_names(&keys(), say::width()));
    }
    let found = keys_called(&words);
    if found.is_empty() {
        return Err(Failure::asked(format!(
            "no key of a scenario file goes by \"{words}\"; heapcast keys lists them all"
        )));
    }
    say::out(&reports::keys::keys(&found, say::width()))
}
