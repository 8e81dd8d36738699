//! A loader at a face: its turn, its load and the way out.

use super::choose::Choice;
use super::load::{Draws, Load, lesser};
use super::loader::{Place, Stage};
use super::queue::UNKNOWN;
use super::travel::Ahead;
use super::what::What;
use super::{MOST_LOADS, Run};
use crate::activity::{LoaderActivity as L, Micros};
use crate::observe::Observer;
use crate::plan::{Leg, Reaches};

impl<O: Observer> Run<'_, O> {
    /// Loads at once, or in its turn. During a rest nobody begins a load.
    #[inline(always)]
    pub(super) fn arrive_at_face(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        let pile = state.pile;
        (state.stage, state.server) = (Stage::AtFace, pile);
        if self.s.resting.is_none() && self.s.queues[pile].is_empty() {
            let start = self.s.places[pile].free_at();
            if start <= self.now {
                return self.turn_at_face(loader);
            }
            if self.turn_is_sure(loader, start) && self.loads_ahead(loader, start, Ahead::default()) {
                return;
            }
        }
        self.join_queue(loader);
    }

    /// The same, out of the way of those that return to the face.
    #[cold]
    pub(super) fn begins_at_face(&mut self, loader: usize) {
        self.arrive_at_face(loader);
    }

    /// Whether the loader loads then, and so much is left of zone and pile afterwards that nobody who chooses meanwhile
    /// could tell the difference. With one pile all load in the order in which they come.
    #[inline(always)]
    fn turn_is_sure(&self, loader: usize, start: Micros) -> bool {
        let (plan, state) = (self.plan, &self.s.loaders[loader]);
        plan.piles.len() == 1
            && plan.surplus_zone.is_none()
            && start < self.s.next_change
            && self.s.places[state.pile].all_are_known()
            && {
                let left = lesser(self.s.piles[state.pile].stock, self.s.zones[state.zone].open);
                left - state.machine.bucketful(self.draws.fill) >= plan.negligible_m3
            }
    }

    /// The loader's turn at the face: it loads, or finds that it must choose again.
    #[inline(always)]
    pub(super) fn turn_at_face(&mut self, loader: usize) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        let goes_on = self.s.wants(self.plan, zone) && self.s.has_material(self.plan, pile, zone);
        if goes_on || self.finds_another_zone(loader, pile) {
            self.load(loader);
        }
    }

    /// Nothing is left for the loader to do as it had chosen: it chooses again. Whether it loads here.
    #[cold]
    fn finds_another_zone(&mut self, loader: usize, pile: usize) -> bool {
        self.unbind(loader);
        match self.choose(loader) {
            Choice::Go if self.s.loaders[loader].pile == pile => return true,
            Choice::Go => self.begins_at_face(loader),
            Choice::AwaitDelivery => self.awaits(loader, Place::Pile),
            Choice::Nothing => self.done(loader),
        }
        false
    }

    #[inline(always)]
    fn load(&mut self, loader: usize) {
        if self.s.next_load == MOST_LOADS {
            return;
        }
        if !self.loads_ahead(loader, self.now, Ahead::default()) {
            let load = self.next_load(loader);
            self.takes(loader, load);
            self.s.places[self.s.loaders[loader].pile].take(UNKNOWN);
            self.step(loader, Stage::Loading, load.loading, What::Step);
        }
        if self.plan.surplus_zone.is_some_and(|surplus| self.s.wants(self.plan, surplus)) {
            self.wake_those_who_wait();
        }
    }

    /// The next load, if this loader takes it where it is bound for.
    #[inline(always)]
    fn next_load(&self, loader: usize) -> Load {
        let (plan, state) = (self.plan, &self.s.loaders[loader]);
        let takes_all = self.s.takes_surplus(plan, state.zone);
        let open = if takes_all { f64::INFINITY } else { self.s.zones[state.zone].open };
        let bucketful = state.machine.bucketful(self.draws.fill);
        let volume = lesser(lesser(bucketful, self.s.piles[state.pile].stock), open);
        Load::new(self.s.next_load, volume, &state.machine, &self.draws)
    }

    /// The load is the loader's.
    #[inline(always)]
    fn takes(&mut self, loader: usize, load: Load) {
        let state = &mut self.s.loaders[loader];
        state.load = load;
        state.loads += 1;
        let (pile, zone) = (&mut self.s.piles[state.pile], &mut self.s.zones[state.zone]);
        let needed_more = zone.open >= zone.least;
        pile.stock -= load.volume;
        zone.open -= load.volume;
        if pile.stock < pile.least || (needed_more && zone.open < zone.least) {
            self.s.options_change(self.plan);
        }
        self.s.next_load += 1;
        self.s.in_play += 1;
        self.draws = Draws::new(&self.plan.noise, &self.pace, self.streams.load(self.s.next_load));
    }

    /// Goes back if it is not there yet, waits until `start`, loads and hauls, where all of it is known.
    #[inline]
    fn loads_ahead(&mut self, loader: usize, start: Micros, back: Ahead) -> bool {
        if O::EVERY_STEP || self.s.next_load == MOST_LOADS {
            return false;
        }
        let load = self.next_load(loader);
        let mut leg = self.leg(self.s.loaders[loader].route, Leg::Out, load.out);
        let (out, reaches) = self.drive_ahead(&mut leg);
        let state = &mut self.s.loaders[loader];
        if !state.runs_through(back.in_all() + load.loading + out.in_all()) {
            return false;
        }
        self.takes(loader, load);
        let state = &mut self.s.loaders[loader];
        state.leg = leg;
        state.account(self.now);
        state.spend(L::Passing, back.passing);
        state.spend(L::Returning, back.driving);
        state.spend(L::WaitingForFace, start - state.since);
        state.spend(L::Loading, load.loading);
        state.spend(L::Passing, out.passing);
        state.spend(L::Hauling, out.driving);
        self.s.places[state.pile].take(start + load.loading);
        self.hauled_ahead(loader, reaches);
        true
    }

    /// A loader alone on the job waits for room that is sure to come, and dumps.
    #[inline(always)]
    fn hauled_ahead(&mut self, loader: usize, reaches: Reaches) {
        if self.s.loaders.len() > 1 || !self.dumps_ahead(loader) {
            self.arrives_later(loader, Stage::Driving(Leg::Out), reaches.into());
        }
    }

    #[inline(always)]
    fn dumps_ahead(&mut self, loader: usize) -> bool {
        let (stand_clear, room_at) = (self.plan.stand_clear, self.room_at(loader));
        let state = &mut self.s.loaders[loader];
        let (zone, dumping, begins) = (state.zone, state.load.dumping, state.since.max(room_at));
        // What rakers stand clear is entered ahead: nobody may look at their accounts before it is over.
        let ends_in_time = begins < self.s.next_change - dumping;
        // A dump of no length ends before a raker whose heap ends with it begins another.
        if room_at == UNKNOWN
            || dumping == 0
            || (stand_clear && !ends_in_time)
            || !state.runs_through(dumping)
        {
            return false;
        }
        state.spend(L::WaitingForRoom, begins - state.since);
        state.spend(L::Dumping, dumping);
        if stand_clear {
            self.rakers_will_stand_clear(zone, begins, begins + dumping);
        }
        self.takes_room(loader);
        self.arrives_later(loader, Stage::Dumping, What::Dumped);
        true
    }

    /// From when on there is room where the loader is bound for, if no other loader comes: when the first of the heaps that
    /// are being raked there is raked out. Not known where the work stops before, or another raker could come and be quicker.
    #[inline(always)]
    fn room_at(&self, loader: usize) -> Micros {
        let zone = self.s.loaders[loader].zone;
        let place = &self.s.zones[zone];
        if place.free > 0 {
            return 0;
        }
        let (mut rakers, mut first) = (0, UNKNOWN);
        for crew in self.with_a_heap_in(zone) {
            rakers += 1;
            first = first.min(self.s.calendar.time_of(self.s.slot_of_crew(crew)).unwrap_or(UNKNOWN));
        }
        let nobody_comes = place.heaps.is_empty() || rakers == self.s.crews.len();
        if nobody_comes && first < self.s.next_closing { first } else { UNKNOWN }
    }

    /// A loader alone on the job goes back, loads and hauls in one, if it loads before the clock changes anything.
    #[inline(always)]
    pub(super) fn round_trip(&mut self, loader: usize) -> bool {
        if O::EVERY_STEP || self.s.loaders.len() > 1 || self.s.resting.is_some() {
            return false;
        }
        let state = &self.s.loaders[loader];
        let (route, next) = (state.route, state.next_route);
        let (back, _) = self.drive_ahead(&mut self.leg(route, Leg::Back, state.load.back));
        let start = self.now + back.in_all();
        if start >= self.s.next_change {
            return false;
        }
        self.s.loaders[loader].route = next;
        let goes = self.loads_ahead(loader, start, back);
        if !goes {
            self.s.loaders[loader].route = route;
        }
        goes
    }
}
