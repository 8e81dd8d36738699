//! The event log of a replayed run. A run that is not observed pays nothing for it.

use crate::activity::{LoaderActivity, Micros, RakerActivity};
use crate::duration::Duration;

/// One line of the event log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// When, from the start of the first day, nights included.
    pub at: Duration,
    /// What happened.
    pub event: Event,
}

/// What can happen in a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Event {
    /// From now on a loader does this.
    Loader {
        /// Index of the loader.
        loader: usize,
        /// What it turns to.
        activity: LoaderActivity,
        /// The load in its bucket or about to be, once it has a number (counted from 0).
        load: Option<u32>,
        /// The zone it is bound for or at, if any.
        zone: Option<usize>,
        /// The stockpile it is at, comes from or returns to, if any.
        stockpile: Option<usize>,
        /// The pass it waits for or goes through, if any.
        pass: Option<usize>,
        /// Volume in the bucket \[m3\].
        volume_m3: f64,
    },
    /// From now on a raker does this.
    Raker {
        /// Index of the raker.
        raker: usize,
        /// What they turn to.
        activity: RakerActivity,
        /// The load whose heap they have in hand, if any.
        load: Option<u32>,
        /// The zone they are in or walk to.
        zone: usize,
    },
    /// A heap is raked out and gives its place back.
    HeapRakedOut {
        /// The load it came from.
        load: u32,
        /// Where it lay.
        zone: usize,
        /// Its volume \[m3\].
        volume_m3: f64,
    },
    /// A truck has tipped at a stockpile.
    Delivered {
        /// Index of the stockpile.
        stockpile: usize,
        /// Volume that came \[m3\].
        volume_m3: f64,
    },
    /// A break begins, or the working day ends.
    WorkPauses {
        /// True at the end of the day.
        end_of_day: bool,
    },
    /// A break is over, or a new day starts.
    WorkResumes,
}

/// Sees everything that happens in a run.
pub(crate) trait Observer {
    /// Whether it must be shown every step. For one that need not, steps that nobody can interfere with are taken together.
    const EVERY_STEP: bool;

    /// Called at each event, in order.
    fn see(&mut self, at: Micros, event: impl FnOnce() -> Event);
}

/// Sees nothing and costs nothing.
pub(crate) struct Unobserved;

impl Observer for Unobserved {
    const EVERY_STEP: bool = false;

    #[inline(always)]
    fn see(&mut self, _: Micros, _: impl FnOnce() -> Event) {}
}

impl Observer for Vec<Entry> {
    const EVERY_STEP: bool = true;

    fn see(&mut self, at: Micros, event: impl FnOnce() -> Event) {
        self.push(Entry { at: Duration::from_micros(at), event: event() });
    }
}
