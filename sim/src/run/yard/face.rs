//! Yard loaders at a face.

use super::{Next, Run};
use crate::activity::{LoaderActivity as L, Micros};
use crate::luck::{Kind, LoadLuck};
use crate::plan::whole;
use crate::run::MOST_LOADS;
use crate::run::choose::{Choice, Ground};
use crate::run::state::Leg;

impl Run<'_> {
    /// Loads at once, or in its turn. Where its turn and what it will load can be foreseen it is entered now: one pile, and
    /// enough left of zone and pile afterwards that nobody who chooses meanwhile could tell the difference.
    #[inline]
    pub(super) fn arrive_at_face(&mut self, loader: usize) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        let face = &self.s.faces[pile];
        if !face.queue.is_empty() {
            return self.join_the_queue(loader, pile);
        }
        let start = face.places.free_at().max(self.now);
        let waits = start > self.now;
        let (luck, volume) = self.next_load(loader);
        let spoken_for = if waits { volume } else { 0.0 };
        let left = self.s.zones[zone].open.min(self.s.stocks[pile]) - spoken_for;
        if left >= self.plan.nothing_m3 && (!waits || self.s.faces.len() == 1) {
            self.spend(loader, L::WaitingForFace, start - self.now);
            self.load(loader, start, luck, volume);
        } else if waits {
            self.join_the_queue(loader, pile);
            self.schedule(loader, Next::TurnAtFace, start);
        } else {
            self.turn_at_face(loader);
        }
    }

    fn join_the_queue(&mut self, loader: usize, pile: usize) {
        self.s.faces[pile].queue.push_back(loader);
        self.stand(loader);
    }

    /// The turn of the first in the queue has come, and perhaps that of those behind it.
    pub(super) fn turn_comes(&mut self, loader: usize) {
        let pile = self.s.loaders[loader].pile;
        while let Some(first) = self.s.faces[pile].queue.pop_front() {
            self.spend(first, L::WaitingForFace, self.now - self.s.loaders[first].since);
            self.turn_at_face(first);
            let face = &self.s.faces[pile];
            let free = face.places.free_at();
            if let Some(next) = face.queue.front()
                && free > self.now
            {
                return self.schedule(*next, Next::TurnAtFace, free);
            }
        }
    }

    /// The loader's turn: it loads, or finds that it must choose again.
    fn turn_at_face(&mut self, loader: usize) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        if !(self.s.wants(self.plan, zone) && self.s.has_material(self.plan, pile, zone)) {
            self.s.zones[zone].bound -= 1;
            match self.choose(loader) {
                Choice::Go { .. } if self.s.loaders[loader].pile == pile => {}
                Choice::Go { .. } => return self.arrive_at_face(loader),
                _ => return self.done(loader),
            }
        }
        let (luck, volume) = self.next_load(loader);
        self.load(loader, self.now, luck, volume);
    }

    /// Luck and volume of the next load, if this loader takes it where it is bound for.
    #[inline(always)]
    fn next_load(&self, loader: usize) -> (LoadLuck, f64) {
        let (plan, state) = (self.plan, &self.s.loaders[loader]);
        let machine = &plan.loaders[loader];
        let luck = self.luck.load(self.s.next_load);
        let fill = self.pace.fill * plan.noise.fill.at(luck.bits(Kind::Fill));
        let (stock, open) = (self.s.stocks[state.pile], self.s.zones[state.zone].open);
        (luck, (fill * machine.heaped_m3).min(machine.lift_m3).min(stock).min(open))
    }

    #[inline(always)]
    fn load(&mut self, loader: usize, at: Micros, luck: LoadLuck, volume: f64) {
        let (plan, state) = (self.plan, &mut self.s.loaders[loader]);
        let (noise, machine) = (&plan.noise, &plan.loaders[loader]);
        let draw = |sampler: &crate::Sampler, kind| sampler.at(luck.bits(kind));
        let length = whole(machine.load_us * (self.pace.load * draw(&noise.loading, Kind::Loading)));
        let out = self.pace.travel * draw(&noise.haul, Kind::Haul);
        let dump_us = machine.dump_us + machine.spread_us_per_m3 * volume;
        state.dump = whole(dump_us * (self.pace.load * draw(&noise.dump, Kind::Dump)));
        state.back = self.pace.travel * draw(&noise.return_leg, Kind::Return);
        state.raking = self.pace.rake * draw(&noise.raking, Kind::Raking);
        state.volume = volume;
        state.loads += 1;
        state.times[L::Loading as usize] += length;
        self.s.stocks[state.pile] -= volume;
        self.s.zones[state.zone].open -= volume;
        self.s.faces[state.pile].places.take(at, length);
        self.s.next_load += 1;
        self.s.in_play += 1;
        self.set_out(loader, Leg::Out, out, at + length);
        if self.s.next_load == MOST_LOADS {
            self.give_up();
        }
    }
}
