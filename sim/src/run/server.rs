//! Faces, passes and rooms: so many at once, first come, first served.
//!
//! Whoever takes a place at a face or pass tells when it will be free again, where that is known. Then the next need no
//! event of it: it knows on arrival when its turn comes, and in a queue the first has its turn as an event of its own.

use super::Run;
use super::loader::Stage;
use super::queue::UNKNOWN;
use super::row::bits;
use super::state::Scratch;
use super::what::What;
use crate::activity::Micros;
use crate::observe::Observer;

impl Scratch {
    pub(super) fn cleaning(&self) -> bool {
        self.finish.is_some()
    }

    /// When a place is free, as far as is known.
    #[inline(always)]
    fn free_at(&self, server: usize) -> Micros {
        match server.checked_sub(self.places.len()) {
            None => self.places[server].free_at(),
            Some(zone) if self.zones[zone].free > 0 => 0,
            Some(_) => UNKNOWN,
        }
    }
}

impl<O: Observer> Run<'_, O> {
    #[inline(always)]
    pub(super) fn pass(&self, pass: usize) -> usize {
        self.plan.piles.len() + pass
    }

    #[inline(always)]
    pub(super) fn room_of(&self, zone: usize) -> usize {
        self.s.places.len() + zone
    }

    /// Notes whether the turn of the first in this queue has come, or when it will.
    #[inline(always)]
    fn look_at(&mut self, server: usize) {
        if !self.s.queues[server].is_empty() {
            self.look_at_first(server);
        }
    }

    fn look_at_first(&mut self, server: usize) {
        let Some(first) = self.s.queues[server].first() else { return };
        if self.s.resting.is_some() && !self.s.cleaning() {
            return;
        }
        let (free_at, slot) = (self.s.free_at(server), self.s.slot_of_loader(first));
        if free_at <= self.now {
            self.s.ready |= 1 << first;
        } else if free_at != UNKNOWN && self.s.calendar.time_of(slot).is_none() {
            self.s.calendar.set(slot, free_at, What::Turn);
        }
    }

    /// Notes of all queues whether or when they can be served.
    pub(super) fn look_at_all_queues(&mut self) {
        self.forget_turns();
        (0..self.s.queues.len()).for_each(|server| self.look_at(server));
    }

    /// Nobody in a queue is served until it is looked at again.
    pub(super) fn forget_turns(&mut self) {
        self.s.ready = 0;
        for loader in 0..self.s.loaders.len() {
            if matches!(self.s.loaders[loader].stage, Stage::AtFace | Stage::AtPass(_)) {
                self.s.calendar.clear_slot(self.s.slot_of_loader(loader));
            }
        }
    }

    /// Waits for its turn.
    pub(super) fn join_queue(&mut self, loader: usize) {
        let server = self.s.loaders[loader].server;
        self.s.queues[server].push(loader);
        self.s.loaders[loader].place_in_queue = self.s.next_place_in_queue;
        self.s.next_place_in_queue += 1;
        self.look_at(server);
        self.turn_to_waiting(loader);
    }

    /// Of those whose turn has come, serves the one that has stood longest.
    pub(super) fn a_queue_is_served(&mut self) -> bool {
        let Some(loader) = bits(self.s.ready).min_by_key(|l| self.s.loaders[*l].place_in_queue) else {
            return false;
        };
        self.s.ready &= !(1 << loader);
        self.s.calendar.clear_slot(self.s.slot_of_loader(loader));
        self.is_served(loader);
        true
    }

    /// The loader is the first of its queue, and its turn has come.
    #[inline(never)]
    pub(super) fn is_served(&mut self, loader: usize) {
        let server = self.s.loaders[loader].server;
        self.s.queues[server].pop();
        match self.s.loaders[loader].stage {
            Stage::AtPass(leg) => self.go_through(loader, leg),
            Stage::AtRoom => self.dump(loader),
            _ => self.turn_at_face(loader),
        }
        self.look_at(server);
    }

    /// Gives a place at a face or pass back that was held without an end.
    pub(super) fn release(&mut self, server: usize) {
        self.s.places[server].give_back(self.now);
        self.look_at(server);
    }

    /// There is room for one more heap.
    #[inline(always)]
    pub(super) fn gives_room(&mut self, zone: usize) {
        self.s.zones[zone].free += 1;
        self.look_at(self.room_of(zone));
    }
}
