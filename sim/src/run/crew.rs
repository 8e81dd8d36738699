//! The state of a crew: one raker, or all of them if they work together.

use super::load::Heap;
use crate::activity::{Micros, RakerActivity, SECOND};
use crate::plan::Plan;

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
    /// Time raked in all once the heap in hand is done.
    pub(super) raked: Micros,
    /// Of that, time raked on earlier days.
    pub(super) raked_before_today: Micros,
    /// Share of the fresh rate that it has for its next heap, known beforehand so that nobody waits for it.
    pub(super) freshness: f64,
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
            raked: 0,
            raked_before_today: 0,
            freshness: 1.0,
            us_per_m3,
        }
    }

    /// The time up to now goes into the accounts.
    #[inline(always)]
    pub(super) fn account(&mut self, now: Micros) {
        self.times[self.activity as usize] += now - self.since;
        self.since = now;
    }

    /// Tires by so much raking.
    #[inline(always)]
    pub(super) fn tires(&mut self, plan: &Plan, raking: Micros) {
        self.raked += raking;
        if let Some(fatigue) = plan.fatigue {
            let hours = (self.raked - self.raked_before_today) as f64 / (3_600 * SECOND) as f64;
            self.freshness = (1.0 - fatigue.share_per_h * hours).max(fatigue.floor);
        }
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
