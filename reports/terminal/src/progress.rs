//! Progress on the terminal, for those who wait.

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::io::IsTerminal;
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Nobody needs a bar for less; longer nobody is left without.
const PATIENCE: Duration = Duration::from_millis(700);
/// Between two movements of the bar, so that it is seen that something is being done.
const TICK: Duration = Duration::from_millis(200);

/// Counts runs, or shows what is being done.
pub(crate) struct Progress {
    bar: ProgressBar,
    is_done: Arc<(Mutex<bool>, Condvar)>,
}

/// Whether a person may be told of progress.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Telling {
    /// On a terminal.
    OnTerminal,
    /// Never.
    Never,
}

impl Progress {
    /// A bar for `runs` runs in all; `None` if nobody knows how many it will be.
    pub(crate) fn new(runs: Option<u64>, telling: Telling) -> Self {
        let style = match runs {
            Some(_) => "{bar:40} {human_pos} of {human_len} runs, {eta} to go",
            None => "{spinner} {human_pos} runs",
        };
        Self::styled(runs, style, telling)
    }

    /// Something that has no runs to count, such as `drawing the charts`.
    pub(crate) fn of(what: &'static str, telling: Telling) -> Self {
        let progress = Self::styled(None, "{spinner} {msg}, {elapsed}", telling);
        progress.bar.set_message(what);
        progress
    }

    fn styled(runs: Option<u64>, style: &str, telling: Telling) -> Self {
        let target = ProgressDrawTarget::stderr();
        if telling == Telling::OnTerminal && std::io::stderr().is_terminal() {
            Self::on(runs, style, target)
        } else {
            Self::silent(runs)
        }
    }

    fn silent(runs: Option<u64>) -> Self {
        let bar = ProgressBar::with_draw_target(runs, ProgressDrawTarget::hidden());
        Self { bar, is_done: Arc::default() }
    }

    /// It shows itself when patience is at its end, whether or not anything has been finished by then.
    fn on(runs: Option<u64>, style: &str, target: ProgressDrawTarget) -> Self {
        let progress = Self::silent(runs);
        if let Ok(style) = ProgressStyle::with_template(style) {
            progress.bar.set_style(style);
        }
        let (bar, is_done) = (progress.bar.clone(), Arc::clone(&progress.is_done));
        std::thread::spawn(move || {
            let (done, changed) = &*is_done;
            let begun = Instant::now();
            let mut done = done.lock().unwrap_or_else(PoisonError::into_inner);
            while !*done {
                let Some(left) = PATIENCE.checked_sub(begun.elapsed()).filter(|left| !left.is_zero()) else {
                    bar.set_draw_target(target);
                    bar.enable_steady_tick(TICK);
                    bar.tick();
                    return;
                };
                done = changed.wait_timeout(done, left).map_or_else(|e| e.into_inner().0, |(done, _)| done);
            }
        });
        progress
    }

    /// Tells of runs that are made, from any thread.
    pub(crate) fn made(&self, runs: u32) {
        self.bar.inc(u64::from(runs));
    }

    /// Takes the bar off the screen.
    pub(crate) fn finish(&self) {
        let (done, changed) = &*self.is_done;
        *done.lock().unwrap_or_else(PoisonError::into_inner) = true;
        changed.notify_all();
        self.bar.finish_and_clear();
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.finish();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use indicatif::InMemoryTerm;

    #[test]
    fn it_shows_itself_within_a_second_though_no_run_is_finished_and_goes_when_all_is_done() {
        let term = InMemoryTerm::new(5, 100);
        let target = ProgressDrawTarget::term_like(Box::new(term.clone()));
        let progress = Progress::on(Some(10_000), "{human_pos} of {human_len} runs", target);
        std::thread::sleep(PATIENCE / 3);
        assert_eq!(term.contents(), "", "nobody needs it yet");
        std::thread::sleep(Duration::from_millis(950) - PATIENCE / 3);
        assert_eq!(term.contents(), "0 of 10,000 runs");
        progress.made(250);
        std::thread::sleep(2 * TICK);
        assert_eq!(term.contents(), "250 of 10,000 runs");
        progress.finish();
        assert_eq!(term.contents(), "");
    }

    #[test]
    fn what_is_quickly_done_is_never_shown() {
        let term = InMemoryTerm::new(5, 100);
        let target = ProgressDrawTarget::term_like(Box::new(term.clone()));
        let progress = Progress::on(None, "{spinner}", target);
        progress.finish();
        std::thread::sleep(PATIENCE + TICK);
        assert_eq!(term.contents(), "");
    }
}
