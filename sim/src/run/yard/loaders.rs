//! A plain loader's cycle.

use super::{Next, GivenUp, Run};
use crate::activity::{LoaderActivity as L, Micros};
use crate::luck::Kind;
use crate::plan::whole;
use crate::run::choose::Choice;
use crate::run::state::{Heap, Leg};

impl Run<'_> {
    /// Enters a stretch of time in the loader's books.
    #[inline]
    pub(super) fn spend(&mut self, loader: usize, on: L, time: Micros) {
        self.s.loaders[loader].times[on as usize] += time;
    }

    pub(super) fn schedule(&mut self, loader: usize, next: Next, at: Micros) {
        self.s.loaders[loader].next = next;
        self.s.calendar.set(self.s.crews.len() + loader, at);
    }

    /// The loader has no event until somebody else's gives it one.
    pub(super) fn stand(&mut self, loader: usize, since: Micros) {
        let state = &mut self.s.loaders[loader];
        (state.next, state.since) = (Next::None, since);
        self.s.calendar.clear_slot(self.s.crews.len() + loader);
    }

    pub(super) fn loader_goes_on(&mut self, loader: usize) -> Result<(), GivenUp> {
        let now = self.now;
        match self.s.loaders[loader].next {
            Next::Out => self.come_along(loader, Leg::Out, now),
            Next::Back => self.come_along(loader, Leg::Back, now),
            Next::TurnAtFace => self.turn_comes(loader),
            Next::DumpEnds => self.dump_ends(loader),
            Next::None => return Err(GivenUp),
        }
        Ok(())
    }

    /// Sets out on a leg at `at`, which may lie ahead where nobody can interfere before.
    pub(super) fn set_out(&mut self, loader: usize, leg: Leg, at: Micros) {
        let (plan, state) = (self.plan, &mut self.s.loaders[loader]);
        let route = plan.routes.get(state.route);
        let (mean_us, noise) = match leg {
            Leg::Out => (route.haul_us, plan.noise.haul.at(state.luck.bits(Kind::Haul))),
            Leg::Back => (route.return_us, plan.noise.return_leg.at(state.luck.bits(Kind::Return))),
        };
        state.factor = self.pace.travel * noise;
        state.driving = whole(mean_us * state.factor);
        (state.driven, state.passed) = (0, 0);
        self.drive_on(loader, leg, [at; 3]);
    }

    /// Enters a wait at a pass, a passing and the drive that follows, each with its beginning, to the next pass or the end
    /// of the leg.
    fn drive_on(&mut self, loader: usize, leg: Leg, [waits, passes, drives]: [Micros; 3]) {
        let state = &mut self.s.loaders[loader];
        let pass = self.plan.routes.get(state.route).passes(leg).get(state.passed);
        let driven = pass.map_or(state.driving, |(_, share)| whole(state.driving as f64 * share));
        let until = drives + driven - state.driven;
        state.driven = driven;
        state.times[L::WaitingForPass as usize] += passes - waits;
        state.times[L::Passing as usize] += drives - passes;
        match leg {
            Leg::Out => state.times[L::Hauling as usize] += until - drives,
            Leg::Back => {
                state.times[L::Returning as usize] += until - drives;
                state.stretch = [waits, passes, drives, until];
            }
        }
        // A lone loader meets nobody before the zone. Where nothing more is to be loaded, its way back may outlast the job.
        if self.alone && !state.last_leg && (leg == Leg::Back || pass.is_some()) {
            return self.come_along(loader, leg, until);
        }
        self.schedule(loader, if leg == Leg::Out { Next::Out } else { Next::Back }, until);
    }

    /// Comes to the next pass of its way, or to its end.
    fn come_along(&mut self, loader: usize, leg: Leg, at: Micros) {
        let state = &mut self.s.loaders[loader];
        match (self.plan.routes.get(state.route).passes(leg).get(state.passed), leg) {
            (Some((pass, _)), _) => {
                // First come, first served, and nobody leaves a pass's line: the end is known on arrival.
                let length = whole(self.plan.passes[*pass].passing_us * state.factor);
                state.passed += 1;
                let start = take_a_place(&mut self.s.passes[*pass], at, length);
                self.drive_on(loader, leg, [at, start, start + length]);
            }
            (None, Leg::Out) => self.arrive_at_zone(loader),
            (None, Leg::Back) if state.last_leg || self.over.is_some() => self.done(loader, at),
            (None, Leg::Back) => {
                state.route = state.next_route;
                self.arrive_at_face(loader, at);
            }
        }
    }

    fn arrive_at_zone(&mut self, loader: usize) {
        let zone = self.s.loaders[loader].zone;
        if self.s.zones[zone].free > 0 {
            self.dump(loader);
        } else {
            self.s.zones[zone].queue.push_back(loader);
            self.stand(loader, self.now);
        }
    }

    /// A heap has been raked out: the next in line dumps.
    pub(super) fn room_is_free(&mut self, zone: usize) {
        self.s.zones[zone].free += 1;
        if let Some(loader) = self.s.zones[zone].queue.pop_front() {
            self.spend(loader, L::WaitingForRoom, self.now - self.s.loaders[loader].since);
            self.dump(loader);
        }
    }

    fn dump(&mut self, loader: usize) {
        let (plan, state) = (self.plan, &mut self.s.loaders[loader]);
        let (zone, machine) = (state.zone, &plan.loaders[loader]);
        let mean_us = machine.dump_us + machine.spread_us_per_m3 * state.volume;
        let noise = plan.noise.dump.at(state.luck.bits(Kind::Dump));
        let length = whole(mean_us * (self.pace.load * noise));
        state.times[L::Dumping as usize] += length;
        let place = &mut self.s.zones[zone];
        place.free -= 1;
        place.bound -= 1;
        place.dumping += 1;
        if plan.stand_clear && place.dumping == 1 {
            self.rakers_stand_clear(zone);
        }
        self.schedule(loader, Next::DumpEnds, self.now + length);
    }

    fn dump_ends(&mut self, loader: usize) {
        let state = &self.s.loaders[loader];
        let (zone, came_by) = (state.zone, state.route);
        let heap =
            Heap { load: state.load, luck: state.luck, volume: state.volume, number: self.s.next_heap };
        self.s.next_heap += 1;
        let place = &mut self.s.zones[zone];
        place.dumping -= 1;
        place.heaps.push_back(heap);
        if place.dumping == 0 && self.plan.stand_clear {
            self.rakers_step_in(zone);
        }
        self.s.heaps_waiting += 1;
        self.rakers_look();
        match self.choose(loader) {
            Choice::Go { .. } => {
                let state = &mut self.s.loaders[loader];
                state.next_route = state.route;
                // Where no way leads from this zone to the pile of the next load, it goes back the way it came.
                state.route = self.plan.routes.between(loader, zone, state.pile).unwrap_or(came_by);
            }
            _ => self.s.loaders[loader].last_leg = true,
        }
        self.set_out(loader, Leg::Back, self.now);
    }

    pub(super) fn done(&mut self, loader: usize, at: Micros) {
        self.stand(loader, at);
        self.s.loaders[loader].last_leg = true;
        self.look_whether_over();
    }
}

/// Takes the place that is free first for so long, from `at` or from when it is free. Returns the start.
#[inline]
pub(super) fn take_a_place(free_at: &mut [Micros], at: Micros, length: Micros) -> Micros {
    let first = match free_at {
        [only] => Some(only),
        all => all.iter_mut().min(),
    };
    first.map_or(at, |free_at| {
        let start = at.max(*free_at);
        *free_at = start + length;
        start
    })
}
