//! Ctrl-C: what was being prepared is removed, and what was there before is left whole.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Exit code of a command that a person stopped: 128 and the number of the signal.
const STOPPED: i32 = 130;

/// Knows what has to be removed when the person stops the command.
#[derive(Clone, Debug, Default)]
pub struct Interrupt {
    remove: Arc<Mutex<Option<PathBuf>>>,
}

/// While it lives, a stop waits.
pub struct Held<'a>(MutexGuard<'a, Option<PathBuf>>);

impl Interrupt {
    /// One that nobody triggers.
    pub fn none() -> Self {
        Self::default()
    }

    /// Listens to Ctrl-C and to the request to end. A process has only one of these; a second call listens to nothing.
    pub fn listen() -> Self {
        let interrupt = Self::default();
        let remove = Arc::clone(&interrupt.remove);
        let handler = move || {
            let staging = remove.lock().unwrap_or_else(PoisonError::into_inner);
            if let Some(folder) = staging.as_ref() {
                // There is nobody left to tell.
                let _ = fs::remove_dir_all(folder);
            }
            std::process::exit(STOPPED);
        };
        // Where no handler can be set, the system's own stops the process: the old report is whole all the same.
        let _ = ctrlc::set_handler(handler);
        interrupt
    }

    /// Names the folder to remove.
    pub(crate) fn remove_when_stopped(&self, folder: &Path) {
        *self.lock() = Some(folder.to_owned());
    }

    /// Makes a stop wait.
    pub(crate) fn hold(&self) -> Held<'_> {
        Held(self.lock())
    }

    fn lock(&self) -> MutexGuard<'_, Option<PathBuf>> {
        self.remove.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Held<'_> {
    /// All is in place: the owner of the staging folder removes what is left of it.
    pub(crate) fn nothing_to_remove(&mut self) {
        *self.0 = None;
    }
}
