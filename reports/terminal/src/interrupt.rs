//! Signals: what was being prepared is removed, and what was there before is left whole.
//!
//! The exit code is 128 and the number of the signal. A signal that was ignored when the command started (`nohup`, a job in
//! the background) stays ignored.

use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Times that removing is tried: a file may just be being made there.
const TRIES: u32 = 100;

/// Knows what has to be removed when the command is stopped.
#[derive(Clone, Debug, Default)]
pub(crate) struct Interrupt {
    remove: Arc<Mutex<Option<PathBuf>>>,
}

/// While it lives, a stop waits.
pub(crate) struct Held<'a>(MutexGuard<'a, Option<PathBuf>>);

impl Interrupt {
    /// One that nobody triggers.
    #[cfg(test)]
    pub(crate) fn none() -> Self {
        Self::default()
    }

    /// Listens to every request to end. A process has only one of these.
    pub(crate) fn listen() -> Self {
        let interrupt = Self::default();
        let stopped = interrupt.clone();
        listen(move |signal| stopped.stop(signal));
        interrupt
    }

    /// Removes what was being prepared and ends. Whoever holds a stop off is waited for; nobody goes on after it.
    fn stop(&self, signal: i32) -> ! {
        let workplace = self.lock();
        if let Some(folder) = workplace.as_ref() {
            for _ in 0..TRIES {
                match fs::remove_dir_all(folder) {
                    // There is nobody left to tell.
                    Ok(()) => break,
                    Err(error) if error.kind() == ErrorKind::NotFound => break,
                    Err(_) => {}
                }
            }
        }
        std::process::exit(128 + signal)
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
    /// All is in place: the owner of the workplace removes what is left of it.
    pub(crate) fn nothing_to_remove(&mut self) {
        *self.0 = None;
    }
}

#[cfg(unix)]
fn listen(stop: impl Fn(i32) + Send + 'static) {
    use signal_hook::consts::signal::{SIGALRM, SIGHUP, SIGINT, SIGQUIT, SIGTERM, SIGUSR1, SIGUSR2};
    use signal_hook::consts::signal::{SIGVTALRM, SIGXCPU, SIGXFSZ};
    let ends = [SIGHUP, SIGINT, SIGQUIT, SIGTERM, SIGALRM, SIGVTALRM, SIGUSR1, SIGUSR2, SIGXCPU, SIGXFSZ];
    let ignored = ignored();
    let heard = ends.into_iter().filter(|signal| ignored >> (signal - 1) & 1 == 0);
    // Where no handler can be set, the system's own stops the process; the next run tidies up.
    let Ok(mut signals) = signal_hook::iterator::Signals::new(heard) else { return };
    std::thread::spawn(move || {
        // A file that may not grow is told by whoever writes it.
        signals.forever().filter(|signal| *signal != SIGXFSZ).for_each(stop);
    });
}

/// Signals that were ignored from the start, one bit each. Other systems than Linux do not say it in a file.
#[cfg(unix)]
fn ignored() -> u64 {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()).unwrap_or_default()
}

#[cfg(not(unix))]
fn listen(stop: impl Fn(i32) + Send + 'static) {
    const CTRL_C: i32 = 2;
    // Where no handler can be set, the system's own stops the process; the next run tidies up.
    let _ = ctrlc::set_handler(move || stop(CTRL_C));
}
