//! Yard loaders at a face.

use super::loaders::take_a_place;
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
    pub(super) fn arrive_at_face(&mut self, loader: usize, at: Micros) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        let face = &self.s.faces[pile];
        if !face.queue.is_empty() {
            return self.join_the_queue(loader, pile, at);
        }
        let start = face.free_at.iter().fold(Micros::MAX, |first, free| first.min(*free)).max(at);
        if start == at {
            return self.turn_at_face(loader, at);
        }
        if self.s.faces.len() == 1 {
            let (luck, volume) = self.next_load(loader);
            if self.s.zones[zone].open.min(self.s.stocks[pile]) - volume >= self.plan.nothing_m3 {
                self.spend(loader, L::WaitingForFace, start - at);
                return self.load(loader, start, luck, volume);
            }
        }
        self.join_the_queue(loader, pile, at);
        self.schedule(loader, Next::TurnAtFace, start);
    }

    fn join_the_queue(&mut self, loader: usize, pile: usize, at: Micros) {
        self.s.faces[pile].queue.push_back(loader);
        self.stand(loader, at);
    }

    /// The turn of the first in the queue has come, and perhaps that of those behind it.
    pub(super) fn turn_comes(&mut self, loader: usize) {
        let pile = self.s.loaders[loader].pile;
        while let Some(first) = self.s.faces[pile].queue.pop_front() {
            self.spend(first, L::WaitingForFace, self.now - self.s.loaders[first].since);
            self.turn_at_face(first, self.now);
            let face = &self.s.faces[pile];
            let free = face.free_at.iter().fold(Micros::MAX, |first, free| first.min(*free));
            if let Some(next) = face.queue.front()
                && free > self.now
            {
                return self.schedule(*next, Next::TurnAtFace, free);
            }
        }
    }

    /// The loader's turn: it loads, or finds that it must choose again.
    fn turn_at_face(&mut self, loader: usize, at: Micros) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        if !(self.s.wants(self.plan, zone) && self.s.has_material(self.plan, pile)) {
            self.s.zones[zone].bound -= 1;
            match self.choose(loader) {
                Choice::Go { .. } if self.s.loaders[loader].pile == pile => {}
                Choice::Go { .. } => return self.arrive_at_face(loader, at),
                _ => return self.done(loader, at),
            }
        }
        let (luck, volume) = self.next_load(loader);
        self.load(loader, at, luck, volume);
    }

    /// Luck and volume of the next load, if this loader takes it where it is bound for.
    fn next_load(&self, loader: usize) -> (LoadLuck, f64) {
        let (plan, state) = (self.plan, &self.s.loaders[loader]);
        let machine = &plan.loaders[loader];
        let luck = self.luck.load(self.s.next_load);
        let fill = self.pace.fill * plan.noise.fill.at(luck.bits(Kind::Fill));
        let (stock, open) = (self.s.stocks[state.pile], self.s.zones[state.zone].open);
        (luck, (fill * machine.heaped_m3).min(machine.lift_m3).min(stock).min(open))
    }

    fn load(&mut self, loader: usize, at: Micros, luck: LoadLuck, volume: f64) {
        let (plan, state) = (self.plan, &mut self.s.loaders[loader]);
        let noise = plan.noise.loading.at(luck.bits(Kind::Loading));
        let length = whole(plan.loaders[loader].load_us * (self.pace.load * noise));
        (state.load, state.luck, state.volume) = (self.s.next_load, luck, volume);
        state.loads += 1;
        state.times[L::Loading as usize] += length;
        self.s.stocks[state.pile] -= volume;
        self.s.zones[state.zone].open -= volume;
        take_a_place(&mut self.s.faces[state.pile].free_at, at, length);
        self.s.next_load += 1;
        self.s.in_play += 1;
        self.given_up |= self.s.next_load == MOST_LOADS;
        self.set_out(loader, Leg::Out, at + length);
    }
}
