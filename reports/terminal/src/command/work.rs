//! How work is done: on how many threads, and whether its progress is shown.

use crate::cli::SayArgs;
use crate::failure::Failure;
use crate::progress::Telling;

/// Whether progress is shown.
pub(super) fn telling(say: SayArgs) -> Telling {
    if say.quiet { Telling::Never } else { Telling::OnTerminal }
}

/// Works with so many threads, or with all there are.
pub(super) fn with_threads<T: Send>(
    threads: Option<u16>,
    work: impl FnOnce() -> T + Send,
) -> Result<T, Failure> {
    match threads {
        None => Ok(work()),
        Some(n) => Ok(rayon::ThreadPoolBuilder::new().num_threads(usize::from(n)).build()?.install(work)),
    }
}
