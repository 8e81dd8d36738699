//! A loader's cycle in a yard.

use super::{GivenUp, Heap, Next, Run};
use crate::activity::{LoaderActivity as L, Micros};
use crate::plan::whole;
use crate::run::choose::Choice;
use crate::run::state::Leg;

impl Run<'_> {
    /// Enters a stretch of time in the loader's books.
    #[inline(always)]
    pub(super) fn spend(&mut self, loader: usize, on: L, time: Micros) {
        self.s.loaders[loader].times[on as usize] += time;
    }

    #[inline(always)]
    pub(super) fn schedule(&mut self, loader: usize, next: Next, at: Micros) {
        self.s.loaders[loader].next = next;
        self.s.loader_events.set(loader, at);
    }

    /// The loader has no event until somebody else's gives it one.
    pub(super) fn stand(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        (state.next, state.since) = (Next::None, self.now);
        self.s.loader_events.clear_slot(loader);
    }

    #[inline(always)]
    pub(super) fn loader_goes_on(&mut self, loader: usize) -> Result<(), GivenUp> {
        match self.s.loaders[loader].next {
            Next::PassOut => self.go_through(loader, Leg::Out),
            Next::Zone => self.arrive_at_zone(loader),
            Next::DumpEnds => self.dump_ends(loader),
            Next::PassBack => self.go_through(loader, Leg::Back),
            Next::Face => self.arrive_at_pile(loader),
            Next::TurnAtFace => self.turn_comes(loader),
            Next::None => return Err(GivenUp),
        }
        Ok(())
    }

    /// Sets out on a leg at `at`, which may lie ahead where nobody can interfere before.
    #[inline(always)]
    pub(super) fn set_out(&mut self, loader: usize, leg: Leg, factor: f64, at: Micros) {
        let state = &mut self.s.loaders[loader];
        let route = self.plan.routes.get(state.route);
        let mean_us = if leg == Leg::Out { route.haul_us } else { route.return_us };
        (state.factor, state.driving, state.driven) = (factor, whole(mean_us * factor), 0);
        state.stretch = self.s.ways.begin(state.route, leg);
        self.drive_on(loader, leg, [at; 3]);
    }

    /// Enters a wait at a pass, a passing and the drive that follows, each with its beginning, to the next pass or the end
    /// of the leg.
    #[inline(always)]
    fn drive_on(&mut self, loader: usize, leg: Leg, [waits, passes, drives]: [Micros; 3]) {
        let state = &mut self.s.loaders[loader];
        let stretch = self.s.ways.get(state.stretch);
        let driven = stretch.driven(state.driving);
        let until = drives + driven - state.driven;
        state.driven = driven;
        state.times[L::WaitingForPass as usize] += passes - waits;
        state.times[L::Passing as usize] += drives - passes;
        if leg == Leg::Back {
            state.entered = [waits, passes, drives, until];
        }
        let on = if leg == Leg::Out { L::Hauling } else { L::Returning };
        state.times[on as usize] += until - drives;
        let (zone, next) = (state.zone, stretch.next);
        if leg == Leg::Out && next == Next::Zone && self.dump_is_sure(zone) {
            return self.dump(loader, until);
        }
        self.schedule(loader, next, until);
    }

    /// Whether everybody bound for the zone finds room, whoever comes first, and no raker need stand clear.
    #[inline(always)]
    fn dump_is_sure(&self, zone: usize) -> bool {
        let place = &self.s.zones[zone];
        place.free >= place.bound && !self.plan.stand_clear
    }

    /// First come, first served, and nobody leaves a pass's line: the end is known on arrival.
    #[inline(always)]
    fn go_through(&mut self, loader: usize, leg: Leg) {
        let state = &mut self.s.loaders[loader];
        let stretch = self.s.ways.get(state.stretch);
        let length = whole(stretch.passing_us * state.factor);
        state.stretch += 1;
        let start = self.s.passes[stretch.pass].take(self.now, length);
        self.drive_on(loader, leg, [self.now, start, start + length]);
    }

    fn arrive_at_pile(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        if state.last_leg || self.over.is_some() {
            return self.done(loader);
        }
        state.route = state.next_route;
        self.arrive_at_face(loader);
    }

    fn arrive_at_zone(&mut self, loader: usize) {
        let zone = self.s.loaders[loader].zone;
        let place = &mut self.s.zones[zone];
        if place.free > 0 {
            self.dump(loader, self.now);
        } else if place.last_dump >= self.now {
            // It has overtaken somebody whose dump is entered already.
            self.give_up();
        } else {
            place.queue.push_back(loader);
            self.stand(loader);
        }
    }

    /// A heap has been raked out: the next in line dumps.
    pub(super) fn room_is_free(&mut self, zone: usize) {
        self.s.zones[zone].free += 1;
        if let Some(loader) = self.s.zones[zone].queue.pop_front() {
            self.spend(loader, L::WaitingForRoom, self.now - self.s.loaders[loader].since);
            self.dump(loader, self.now);
        }
    }

    /// Dumps from `at` on, which may lie ahead where the dump is sure.
    #[inline(always)]
    fn dump(&mut self, loader: usize, at: Micros) {
        let state = &mut self.s.loaders[loader];
        let (zone, length) = (state.zone, state.dump);
        state.times[L::Dumping as usize] += length;
        let place = &mut self.s.zones[zone];
        place.free -= 1;
        place.bound -= 1;
        place.dumping += 1;
        place.last_dump = place.last_dump.max(at);
        if self.plan.stand_clear && place.dumping == 1 {
            self.rakers_stand_clear(zone);
        }
        self.schedule(loader, Next::DumpEnds, at + length);
    }

    #[inline(always)]
    fn dump_ends(&mut self, loader: usize) {
        let state = &self.s.loaders[loader];
        let (zone, came_by) = (state.zone, state.route);
        let heap = Heap { volume: state.volume, raking: state.raking, number: self.s.next_heap };
        self.s.next_heap += 1;
        let place = &mut self.s.zones[zone];
        place.dumping -= 1;
        if place.dumping == 0 && self.plan.stand_clear {
            self.rakers_step_in(zone);
        }
        self.heap_lies_ready(zone, heap);
        match self.choose(loader) {
            Choice::Go { .. } => {
                let state = &mut self.s.loaders[loader];
                state.next_route = state.route;
                // Where no way leads from this zone to the pile of the next load, it goes back the way it came.
                state.route = self.plan.routes.between(loader, zone, state.pile).unwrap_or(came_by);
            }
            _ => self.s.loaders[loader].last_leg = true,
        }
        self.set_out(loader, Leg::Back, self.s.loaders[loader].back, self.now);
    }

    pub(super) fn done(&mut self, loader: usize) {
        self.stand(loader);
        self.s.loaders[loader].last_leg = true;
        self.look_whether_over();
    }
}
