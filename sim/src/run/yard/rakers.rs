//! Yard rakers.

use super::{Heap, Run};
use crate::activity::{Micros, RakerActivity as R};
use crate::plan::whole;

impl Run<'_> {
    /// From now on the crew does this; the time up to now goes into its books.
    #[inline(always)]
    fn turn(&mut self, crew: usize, activity: R) {
        let state = &mut self.s.crews[crew];
        state.times[state.activity as usize] += self.now - state.since;
        (state.activity, state.since) = (activity, self.now);
    }

    /// The crew's heap is raked out, or its walk is over.
    #[inline(always)]
    pub(super) fn crew_ends(&mut self, crew: usize) {
        self.s.idle |= 1 << crew;
        self.turn(crew, R::Waiting);
        let zone = self.s.crews[crew].zone;
        match self.s.crews[crew].in_hand.take() {
            Some(volume) => {
                let place = &mut self.s.zones[zone];
                place.placed += volume;
                place.loads += 1;
                let so_far = self.s.raked_out.last().map_or(0.0, |(_, volume)| *volume);
                self.s.raked_out.push((self.now, so_far + volume));
                self.s.in_play -= 1;
                self.s.completion = self.now;
                if self.s.in_play == 0 {
                    self.look_whether_over();
                }
                if self.s.heaps_waiting > 0 {
                    self.rakers_look();
                }
                self.room_is_free(zone);
            }
            None => {
                self.s.zones[zone].walkers -= 1;
                self.rakers_look();
            }
        }
        if self.s.idle & (1 << crew) != 0 {
            self.s.crew_events.clear_slot(crew);
        }
    }

    /// A loader has dumped a heap.
    #[inline(always)]
    pub(super) fn heap_lies_ready(&mut self, zone: usize, heap: Heap) {
        if self.s.heaps_waiting == 0
            && let Some(crew) = self.hands_for(zone)
        {
            return self.takes(crew, heap);
        }
        self.s.zones[zone].heaps.push_back(heap);
        self.s.heaps_waiting += 1;
        self.rakers_look();
    }

    /// Who takes the only heap there is, if that can be at once: somebody in the zone, or with no way to walk there.
    #[inline(always)]
    fn hands_for(&mut self, zone: usize) -> Option<usize> {
        let here = self.s.idle & self.s.zones[zone].crews;
        let first = |crews: u64| (crews != 0).then(|| crews.trailing_zeros() as usize);
        first(here).or_else(|| {
            let crew = first(self.s.idle)?;
            let near = self.s.zones[zone].walkers == 0 && self.walk(crew, zone) == 0;
            near.then(|| {
                self.moves(crew, zone);
                crew
            })
        })
    }

    /// Rakers with free hands take heaps: those in their own zone first, then those who walk to the oldest heap to which
    /// nobody is walking yet.
    pub(super) fn rakers_look(&mut self) {
        while self.s.heaps_waiting > 0 && self.s.idle != 0 {
            if let Some(crew) =
                self.first_idle(|run, crew| !run.s.zones[run.s.crews[crew].zone].heaps.is_empty())
            {
                self.takes_a_heap(crew);
            } else if let (Some(zone), Some(crew)) = (self.zone_to_walk_to(), self.first_idle(|_, _| true)) {
                self.walks_to(crew, zone);
            } else {
                return;
            }
        }
    }

    #[inline]
    fn first_idle(&self, such: impl Fn(&Self, usize) -> bool) -> Option<usize> {
        let mut idle = self.s.idle;
        while idle != 0 {
            let crew = idle.trailing_zeros() as usize;
            if such(self, crew) {
                return Some(crew);
            }
            idle &= idle - 1;
        }
        None
    }

    fn zone_to_walk_to(&self) -> Option<usize> {
        let zones = self.s.zones.iter().enumerate();
        zones.filter_map(|(i, z)| Some((z.heaps.get(z.walkers)?.number, i))).min().map(|(_, zone)| zone)
    }

    fn takes_a_heap(&mut self, crew: usize) {
        if let Some(heap) = self.s.zones[self.s.crews[crew].zone].heaps.pop_front() {
            self.s.heaps_waiting -= 1;
            self.takes(crew, heap);
        }
    }

    #[inline(always)]
    fn takes(&mut self, crew: usize, heap: Heap) {
        let state = &mut self.s.crews[crew];
        let length = whole(self.plan.crews[crew].us_per_m3 * heap.volume * heap.raking);
        state.in_hand = Some(heap.volume);
        self.s.idle &= !(1 << crew);
        if self.plan.stand_clear && self.s.zones[state.zone].dumping > 0 {
            state.end = length;
            self.turn(crew, R::StandingClear);
            self.s.crew_events.clear_slot(crew);
        } else {
            self.rake_on(crew, length);
        }
    }

    #[inline(always)]
    fn rake_on(&mut self, crew: usize, left: Micros) {
        self.turn(crew, R::Raking);
        self.s.crews[crew].end = self.now + left;
        self.s.crew_events.set(crew, self.now + left);
    }

    fn walk(&self, crew: usize, zone: usize) -> Micros {
        let from = self.s.crews[crew].zone;
        whole(self.plan.zones[from].walks_m[zone] * self.plan.crews[crew].us_per_m)
    }

    fn moves(&mut self, crew: usize, zone: usize) {
        let from = std::mem::replace(&mut self.s.crews[crew].zone, zone);
        self.s.zones[from].crews &= !(1 << crew);
        self.s.zones[zone].crews |= 1 << crew;
    }

    fn walks_to(&mut self, crew: usize, zone: usize) {
        let length = self.walk(crew, zone);
        self.moves(crew, zone);
        // A walk that takes no time is over before the next thing starts.
        if length > 0 {
            self.s.idle &= !(1 << crew);
            self.s.zones[zone].walkers += 1;
            self.turn(crew, R::Walking);
            self.s.crew_events.set(crew, self.now + length);
        }
    }

    /// A loader begins to dump: those who rake in its zone stand clear.
    pub(super) fn rakers_stand_clear(&mut self, zone: usize) {
        for crew in 0..self.s.crews.len() {
            let state = &mut self.s.crews[crew];
            if state.zone == zone && state.activity == R::Raking {
                state.end -= self.now;
                // A heap that is done at this very instant should have ended first.
                if state.end == 0 {
                    return self.give_up();
                }
                self.turn(crew, R::StandingClear);
                self.s.crew_events.clear_slot(crew);
            }
        }
    }

    /// The last loader has dumped: those who stood clear go on.
    pub(super) fn rakers_step_in(&mut self, zone: usize) {
        for crew in 0..self.s.crews.len() {
            if self.s.crews[crew].zone == zone && self.s.crews[crew].activity == R::StandingClear {
                self.rake_on(crew, self.s.crews[crew].end);
            }
        }
    }
}
