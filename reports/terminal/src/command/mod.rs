//! What each command does.

mod ask;
mod effort;
mod keys;
mod materials;
mod new;
mod parts;
mod work;

use crate::cli::Typed;
use crate::failure::Failure;

/// Does what was asked.
///
/// # Errors
/// Whatever kept it from being done; nothing is written then.
pub(crate) fn run(typed: &Typed) -> Result<(), Failure> {
    match typed {
        Typed::Ask(ask) => ask::run(ask),
        Typed::Materials(args) => materials::run(args),
        Typed::Keys(args) => keys::run(args),
        Typed::New(args) => new::run(args),
    }
}
