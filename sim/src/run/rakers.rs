//! The rakers: they take heaps, walk between zones and stand clear.

use super::Run;
use super::crew::Doing;
use super::load::Heap;
use super::row::bits;
use super::what::What;
use crate::activity::{Micros, RakerActivity};
use crate::observe::{Event, Observer};
use crate::plan::round_to_us;

impl<O: Observer> Run<'_, O> {
    /// From now on the crew does this; the time up to now goes into its accounts.
    #[inline(always)]
    pub(super) fn turn_crew(&mut self, crew: usize, activity: RakerActivity) {
        let (now, state) = (self.now, &mut self.s.crews[crew]);
        state.account(now);
        state.activity = activity;
        if !O::EVERY_STEP {
            return;
        }
        let (plan, zone, doing) = (&self.plan.crews[crew], state.zone, state.doing);
        for raker in plan.first_raker..plan.first_raker + plan.rakers {
            self.observer.see(now, || {
                let load = if let Doing::Heap(heap) = doing { Some(heap.load) } else { None };
                Event::Raker { raker, activity, load, zone }
            });
        }
    }

    /// A raker alone at its instant goes on with the next heap of its zone at once: no other free raker is there, or it
    /// would have taken that heap.
    #[inline(always)]
    pub(super) fn rakes_on(&mut self, crew: usize) -> bool {
        let state = &mut self.s.crews[crew];
        let zone = state.zone;
        if O::EVERY_STEP || self.s.resting.is_some() || self.s.zones[zone].heaps.is_empty() {
            return false;
        }
        let Doing::Heap(heap) = state.doing else { return false };
        state.account(self.now);
        self.heap_is_raked_out(&heap, zone);
        self.takes_a_heap(crew);
        self.s.rakers_look = self.s.heaps_waiting > 0 && self.s.idle != 0;
        true
    }

    /// The crew's event has come: what it had in hand is done.
    pub(super) fn crew_ends(&mut self, crew: usize) {
        let zone = self.s.crews[crew].zone;
        match self.s.crews[crew].doing {
            Doing::Heap(heap) => {
                self.put_by(crew);
                self.heap_is_raked_out(&heap, zone);
            }
            Doing::Walk => {
                self.s.zones[zone].walkers -= 1;
                self.s.unclaimed = true;
                self.put_by(crew);
            }
            Doing::SetUp => self.put_by(crew),
            Doing::Nothing | Doing::CleanUp => {}
        }
    }

    /// The crew has its hands free.
    fn put_by(&mut self, crew: usize) {
        self.s.crews[crew].doing = Doing::Nothing;
        self.s.with_a_heap &= !(1 << crew);
        self.s.idle |= 1 << crew;
        self.s.rakers_look = true;
        let activity = if self.s.resting.is_some() { RakerActivity::OnBreak } else { RakerActivity::Waiting };
        self.turn_crew(crew, activity);
    }

    pub(super) fn heap_is_raked_out(&mut self, heap: &Heap, zone: usize) {
        let (load, volume_m3) = (heap.load, heap.volume);
        let place = &mut self.s.zones[zone];
        place.placed += volume_m3;
        place.loads += 1;
        let so_far = self.s.raked_out.last().map_or(0.0, |(_, volume)| *volume);
        self.s.raked_out.push((self.now, so_far + volume_m3));
        self.s.in_play -= 1;
        (self.s.completion, self.s.nights_at_completion) = (self.now, self.s.nights);
        self.observer.see(self.now, || Event::HeapRakedOut { load, zone, volume_m3 });
        self.gives_room(zone);
        self.look_whether_over();
    }

    /// The first raker that finds something to do begins it: those with a heap in their own zone, then those who walk.
    pub(super) fn a_raker_starts(&mut self) -> bool {
        self.s.rakers_look = false;
        if self.s.resting.is_some() || self.s.heaps_waiting == 0 || self.s.idle == 0 {
            return false;
        }
        let mut idle = bits(self.s.idle);
        let first = idle.clone().next();
        if let Some(crew) = idle.find(|crew| !self.s.zones[self.s.crews[*crew].zone].heaps.is_empty()) {
            self.takes_a_heap(crew);
        } else if let (Some(crew), Some(zone)) = (first, self.zone_to_walk_to()) {
            self.walks_to(crew, zone);
        } else {
            return false;
        }
        self.s.rakers_look = self.s.heaps_waiting > 0 && self.s.idle != 0;
        true
    }

    /// The zone of the oldest waiting heap to which nobody is walking yet.
    fn zone_to_walk_to(&mut self) -> Option<usize> {
        if !self.s.unclaimed {
            return None;
        }
        let unclaimed =
            self.s.zones.iter().enumerate().filter_map(|(i, z)| Some((z.heaps.get(z.walkers)?.number, i)));
        let oldest = unclaimed.min().map(|(_, zone)| zone);
        self.s.unclaimed = oldest.is_some();
        oldest
    }

    #[inline(always)]
    fn takes_a_heap(&mut self, crew: usize) {
        let zone = self.s.crews[crew].zone;
        let Some(heap) = self.s.zones[zone].heaps.pop_front() else { return };
        self.s.heaps_waiting -= 1;
        self.s.idle &= !(1 << crew);
        self.s.with_a_heap |= 1 << crew;
        let state = &mut self.s.crews[crew];
        debug_assert_eq!(state.times[RakerActivity::Raking as usize], state.raked);
        let length = heap.raking(state.us_per_m3, state.freshness);
        state.doing = Doing::Heap(heap);
        state.tires(self.plan, length);
        self.rakes(crew, length);
    }

    fn walks_to(&mut self, crew: usize, zone: usize) {
        let from = self.s.crews[crew].zone;
        let length = round_to_us(self.plan.zones[from].walks_m[zone] * self.plan.crews[crew].us_per_m);
        self.s.idle &= !(1 << crew);
        self.s.zones[from].crews &= !(1 << crew);
        self.s.zones[zone].crews |= 1 << crew;
        self.s.zones[zone].walkers += 1;
        (self.s.crews[crew].zone, self.s.crews[crew].doing) = (zone, Doing::Walk);
        self.takes_up(crew, length);
    }

    /// Begins what the crew has in hand, or goes on with it: `left` of it is still to do.
    pub(super) fn takes_up(&mut self, crew: usize, left: Micros) {
        match self.s.crews[crew].doing {
            Doing::Heap(_) => self.rakes(crew, left),
            Doing::Walk => self.begins(crew, RakerActivity::Walking, left),
            Doing::Nothing => self.turn_crew(crew, RakerActivity::Waiting),
            Doing::SetUp | Doing::CleanUp => {}
        }
    }

    /// Rakes, or stands clear while a loader dumps there.
    #[inline(always)]
    fn rakes(&mut self, crew: usize, left: Micros) {
        let mut standing = 0;
        if self.plan.stand_clear {
            let place = &self.s.zones[self.s.crews[crew].zone];
            if place.dumping > 0 {
                self.s.crews[crew].left = left;
                return self.turn_crew(crew, RakerActivity::StandingClear);
            }
            standing = place.standing_clear(self.now, left);
        }
        self.begins(crew, RakerActivity::Raking, left + standing);
        self.s.crews[crew].stands_clear_for(standing);
    }

    /// A dump is entered ahead: those who will be raking in its zone when it begins stand clear meanwhile.
    #[inline(always)]
    pub(super) fn rakers_will_stand_clear(&mut self, zone: usize, begins: Micros, ends: Micros) {
        self.s.zones[zone].dump_ahead = (begins, ends);
        for crew in self.with_a_heap_in(zone) {
            let slot = self.s.slot_of_crew(crew);
            if let Some(end) = self.s.calendar.time_of(slot).filter(|end| *end > begins) {
                self.s.calendar.clear_slot(slot);
                self.s.calendar.set(slot, end + (ends - begins), What::Raker);
                self.s.crews[crew].stands_clear_for(ends - begins);
            }
        }
    }

    #[inline(always)]
    fn begins(&mut self, crew: usize, activity: RakerActivity, length: Micros) {
        self.turn_crew(crew, activity);
        self.schedule(self.s.slot_of_crew(crew), self.now + length, What::Raker);
    }

    /// Puts down what the crew has in hand, to go on with it later.
    pub(super) fn puts_down(&mut self, crew: usize) {
        let slot = self.s.slot_of_crew(crew);
        if let Some(end) = self.s.calendar.time_of(slot) {
            self.s.crews[crew].left = end - self.now;
            self.s.calendar.clear_slot(slot);
        }
    }

    /// A loader begins to dump: those who rake in its zone stand clear.
    pub(super) fn rakers_stand_clear(&mut self, zone: usize) {
        for crew in self.with_a_heap_in(zone) {
            if self.s.crews[crew].activity == RakerActivity::Raking {
                self.puts_down(crew);
                self.turn_crew(crew, RakerActivity::StandingClear);
            }
        }
    }

    /// The last loader has dumped: those who stood clear go on.
    pub(super) fn rakers_step_in(&mut self, zone: usize) {
        for crew in self.with_a_heap_in(zone) {
            if self.s.crews[crew].activity == RakerActivity::StandingClear {
                self.rakes(crew, self.s.crews[crew].left);
            }
        }
    }

    pub(super) fn with_a_heap_in(&self, zone: usize) -> impl Iterator<Item = usize> + use<O> {
        bits(self.s.zones[zone].crews & self.s.with_a_heap)
    }
}
