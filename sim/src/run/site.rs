//! The state of the site: its zones and piles.

use super::load::Heap;
use crate::activity::Micros;
use std::collections::VecDeque;

#[derive(Clone, Debug, Default)]
pub(super) struct ZoneState {
    /// What it really takes.
    pub(super) needs: f64,
    /// How much of it must be open that it is served.
    pub(super) least: f64,
    /// Not yet placed nor on its way.
    pub(super) open: f64,
    pub(super) placed: f64,
    pub(super) loads: u64,
    /// Loaders that have chosen it and not yet begun to dump.
    pub(super) bound: u32,
    /// Loaders that dump, where rakers stand clear of them.
    pub(super) dumping: u32,
    /// When a dump that was entered ahead begins and ends; the last, where none is to come.
    pub(super) dump_ahead: (Micros, Micros),
    /// Places for heaps; below zero while a loader is on its way to one that will be free when it comes.
    pub(super) free: i64,
    pub(super) heaps: VecDeque<Heap>,
    pub(super) walkers: usize,
    /// Rakers who work here or walk here, a bit for each crew.
    pub(super) crews: u64,
}

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct PileState {
    pub(super) stock: f64,
    /// How much of it must be there that it is used.
    pub(super) least: f64,
    /// Deliveries still to come.
    pub(super) due: u32,
}

impl ZoneState {
    /// How long a raker who begins now stands clear of the dump that was entered ahead, before so much is raked.
    #[inline(always)]
    pub(super) fn standing_clear(&self, now: Micros, length: Micros) -> Micros {
        let (begins, ends) = self.dump_ahead;
        if now < ends && now + length > begins { ends - begins.max(now) } else { 0 }
    }

    pub(super) fn reset(&mut self, needs: f64, least: f64, room: u32) {
        (self.needs, self.least, self.open, self.placed, self.loads) = (needs, least, needs, 0.0, 0);
        (self.bound, self.dumping, self.walkers, self.crews, self.free) = (0, 0, 0, 0, i64::from(room));
        self.dump_ahead = (0, 0);
        self.heaps.clear();
    }
}
