//! A progress bar on the terminal, for those who wait longer than a second.

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::io::IsTerminal;
use std::sync::Once;
use std::time::{Duration, Instant};

/// Nobody needs a bar for less.
const PATIENCE: Duration = Duration::from_secs(1);

/// Counts runs.
pub struct Progress {
    bar: ProgressBar,
    started: Instant,
    shown: Once,
    wanted: bool,
}

/// Whether a person may be told of progress.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// On a terminal.
    OnTerminal,
    /// Never.
    Never,
}

impl Progress {
    /// A bar for `runs` runs in all; `None` if nobody knows how many it will be.
    pub fn new(runs: Option<u64>, telling: Telling) -> Self {
        let style = match runs {
            Some(_) => ProgressStyle::with_template("{bar:40} {human_pos} of {human_len} runs, {eta} to go"),
            None => ProgressStyle::with_template("{spinner} {human_pos} runs"),
        };
        let bar = ProgressBar::with_draw_target(runs, ProgressDrawTarget::hidden());
        let bar = style.map_or(bar.clone(), |style| bar.with_style(style));
        let wanted = telling == Telling::OnTerminal && std::io::stderr().is_terminal();
        Self { bar, started: Instant::now(), shown: Once::new(), wanted }
    }

    /// Tells of runs that are made, from any thread.
    pub fn made(&self, runs: u32) {
        self.bar.inc(u64::from(runs));
        if self.wanted && self.started.elapsed() > PATIENCE {
            self.shown.call_once(|| self.bar.set_draw_target(ProgressDrawTarget::stderr()));
        }
    }

    /// Takes the bar off the screen.
    pub fn finish(&self) {
        self.bar.finish_and_clear();
    }
}
