//! The state of a crew: one raker, or all of them if they work together.

use super::load::Heap;
use crate::activity::{Micros, RakerActivity};

#[derive(Clone, Debug)]
pub(super) struct CrewState {
    pub(super) activity: RakerActivity,
    pub(super) since: Micros,
    pub(super) times: [Micros; RakerActivity::COUNT + 1],
    pub(super) doing: Doing,
    /// The zone it works in, or walks to.
    pub(super) zone: usize,
    /// What was left of the heap or walk when it was put down.
    pub(super) left: Micros,
    /// Time raked on earlier days.
    pub(super) raked_before_today: Micros,
    /// Fresh \[us/m3\].
    pub(super) us_per_m3: f64,
}

/// What a raker has in hand.
#[derive(Clone, Copy, Debug)]
pub(super) enum Doing {
    SetUp,
    Nothing,
    Walk,
    Heap(Heap),
    CleanUp,
}

impl CrewState {
    pub(super) fn new(us_per_m3: f64) -> Self {
        Self {
            activity: RakerActivity::SetUp,
            since: 0,
            times: [0; _],
            doing: Doing::SetUp,
            zone: 0,
            left: 0,
            raked_before_today: 0,
            us_per_m3,
        }
    }

    /// The time up to now goes into the accounts.
    #[inline(always)]
    pub(super) fn account(&mut self, now: Micros) {
        self.times[self.activity as usize] += now - self.since;
        self.since = now;
    }

    /// Enters ahead that it stands clear for so long in the midst of what it rakes.
    #[inline(always)]
    pub(super) fn stands_clear_for(&mut self, length: Micros) {
        self.times[RakerActivity::StandingClear as usize] += length;
        self.since += length;
    }

    pub(super) fn reset(&mut self, zone: usize, us_per_m3: f64) {
        *self = Self { zone, ..Self::new(us_per_m3) };
    }
}
