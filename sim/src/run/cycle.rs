//! A loader's cycle: choose, load, haul, dump, return.

use super::Run;
use super::choose::Choice;
use super::load::Heap;
use super::loader::{Going, LegState, Place, Stage};
use super::what::What;
use crate::activity::LoaderActivity;
use crate::observe::Observer;
use crate::plan::{Leg, Reaches};

impl<O: Observer> Run<'_, O> {
    /// The loader's event has come: a step, or what interrupts it, is over, or it is its turn.
    #[inline(always)]
    pub(super) fn loader_ends(&mut self, loader: usize) {
        let state = &self.s.loaders[loader];
        match (state.going, state.stage) {
            (Going::On, Stage::AtFace | Stage::AtPass(_)) => return self.s.ready |= 1 << loader,
            (Going::On, Stage::SetUp) => self.s.loaders[loader].stage = Stage::Choosing(Place::Pile),
            (Going::On, Stage::Loading | Stage::Passing(_)) => self.release(state.server),
            (Going::On, Stage::Dumping) => return self.dumped(loader),
            (Going::On, _) => {}
            (going, _) => return self.stops_or_goes_on(loader, going),
        }
        self.s.pending |= 1 << loader;
    }

    /// The loader has dumped, and goes on.
    #[inline(never)]
    pub(super) fn dumped(&mut self, loader: usize) {
        self.s.pending |= 1 << loader;
        let state = &self.s.loaders[loader];
        let (zone, heap) = (state.zone, Heap::new(&state.load, self.s.next_heap));
        self.s.next_heap += 1;
        let place = &mut self.s.zones[zone];
        if place.dumping > 0 {
            place.dumping -= 1;
            if place.dumping == 0 {
                self.rakers_step_in(zone);
            }
        }
        if self.plan.all_spread {
            self.heap_is_raked_out(&heap, zone);
        } else {
            self.s.zones[zone].heaps.push_back(heap);
            self.s.heaps_waiting += 1;
            self.s.unclaimed = true;
            self.s.rakers_look |= self.s.idle != 0;
        }
    }

    /// The lowest loader that goes on now takes its next step.
    pub(super) fn a_loader_goes_on(&mut self) -> bool {
        while self.s.pending != 0 {
            let loader = self.s.pending.trailing_zeros() as usize;
            self.s.pending &= self.s.pending - 1;
            if self.goes_on(loader) {
                return true;
            }
        }
        false
    }

    fn goes_on(&mut self, loader: usize) -> bool {
        match self.s.loaders[loader].stage {
            Stage::Choosing(_) if self.s.resting.is_some() && !self.s.over => {
                self.s.held |= 1 << loader;
                self.turn(loader, LoaderActivity::OnBreak);
                return false;
            }
            stage @ (Stage::Choosing(_) | Stage::Dumping) => {
                let at_pile = stage == Stage::Choosing(Place::Pile);
                self.choose_and_go(loader, if at_pile { Place::Pile } else { Place::Zone });
            }
            Stage::Loading => self.hauls(loader),
            Stage::Driving(leg) => self.arrives(loader, leg),
            Stage::Passing(leg) => {
                let on = self.s.loaders[loader].leg;
                self.drive_on(loader, leg, LegState { stretch: on.stretch + 1, ..on });
            }
            _ => return false,
        }
        true
    }

    #[inline(always)]
    fn choose_and_go(&mut self, loader: usize, place: Place) {
        let came_from = (self.s.loaders[loader].zone, self.s.loaders[loader].route);
        match (self.choose(loader), place) {
            (Choice::Go, Place::Pile) => self.begins_at_face(loader),
            (Choice::Go, Place::Zone) => self.returns(loader, came_from),
            (Choice::AwaitDelivery, _) => self.awaits(loader, place),
            (Choice::Nothing, Place::Pile) => self.done(loader),
            (Choice::Nothing, Place::Zone) => {
                self.s.loaders[loader].last_leg = true;
                self.set_out_back(loader);
            }
        }
    }

    /// Returns to the pile of the next load. Where no way leads there from this zone, it goes back the way it came, and
    /// the stretch from pile to pile costs nothing.
    #[inline]
    fn returns(&mut self, loader: usize, (zone, came_by): (usize, usize)) {
        let state = &mut self.s.loaders[loader];
        let next = state.route;
        if self.plan.routes.get(came_by).pile == state.pile {
            state.route = came_by;
        } else {
            state.route = self.plan.routes.between(loader, zone, state.pile).unwrap_or(came_by);
        }
        state.next_route = next;
        if !self.round_trip(loader) {
            self.set_out_back(loader);
        }
    }

    /// The loader is at the end of a stretch.
    #[cold]
    fn arrives(&mut self, loader: usize, leg: Leg) {
        match self.plan.routes.stretch(self.s.loaders[loader].leg.stretch).reaches {
            Reaches::PassOut | Reaches::PassBack => self.arrive_at_pass(loader, leg),
            Reaches::Zone => self.arrive_at_room(loader),
            Reaches::Pile => self.arrive_at_pile(loader),
        }
    }

    #[inline(never)]
    pub(super) fn arrive_at_pile(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        if state.last_leg || self.s.over {
            return self.done(loader);
        }
        state.route = state.next_route;
        self.arrive_at_face(loader);
    }

    pub(super) fn arrive_at_room(&mut self, loader: usize) {
        let zone = self.s.loaders[loader].zone;
        let room = self.room_of(zone);
        let state = &mut self.s.loaders[loader];
        (state.stage, state.server) = (Stage::AtRoom, room);
        if self.s.zones[zone].free > 0 && self.s.queues[room].is_empty() {
            self.dumps(loader);
        } else {
            self.join_queue(loader);
        }
    }

    /// The loader's turn in the zone has come.
    pub(super) fn dump(&mut self, loader: usize) {
        self.dumps(loader);
    }

    #[inline(always)]
    fn dumps(&mut self, loader: usize) {
        let (zone, length) = (self.s.loaders[loader].zone, self.s.loaders[loader].load.dumping);
        self.takes_room(loader);
        if self.plan.stand_clear {
            self.s.zones[zone].dumping += 1;
            if self.s.zones[zone].dumping == 1 {
                self.rakers_stand_clear(zone);
            }
        }
        self.step(loader, Stage::Dumping, length, What::Dumped);
    }

    #[inline(always)]
    pub(super) fn takes_room(&mut self, loader: usize) {
        self.unbind(loader);
        self.s.zones[self.s.loaders[loader].zone].free -= 1;
    }

    pub(super) fn done(&mut self, loader: usize) {
        self.s.loaders[loader].stage = Stage::Done;
        if self.s.cleaning() {
            self.s.loaders[loader].stage = Stage::CleanUp;
        }
        let activity = self.s.loaders[loader].stage.activity();
        self.turn(loader, activity);
        self.look_whether_over();
    }

    /// Notes the end of the work: nothing in play, and nothing more to load for anybody.
    pub(super) fn look_whether_over(&mut self) {
        if self.s.in_play == 0 && !self.s.over && self.s.nothing_more(self.plan) {
            self.s.over = true;
            self.s.note_what_is_unusual();
        }
    }
}
