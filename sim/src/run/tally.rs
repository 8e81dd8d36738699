//! The end of a run: books closed, figures added up.

use super::Run;
use crate::activity::{LoaderActivity as L, Micros, RakerActivity as R, SECOND};
use crate::observe::Observer;
use crate::outcome::{Books, Moment, Outcome, PROGRESS_PARTS};

const HOUR: f64 = (3_600 * SECOND) as f64;

impl<O: Observer> Run<'_, O> {
    pub(super) fn tally(&mut self, run: u32, books: &mut Books) -> Outcome {
        self.close_books(books);
        let finish = Moment { working: self.now - self.s.nights, clock: self.now };
        let completion =
            Moment { working: self.s.completion - self.s.nights_at_completion, clock: self.s.completion };
        let delivered: f64 = self.s.piles.iter().map(|p| p.stock).sum::<f64>()
            + self.s.deliveries[self.s.next_delivery..].iter().map(|(.., volume)| volume).sum::<f64>();
        let placed_m3: f64 = self.s.zones.iter().map(|z| z.placed).sum();
        let hours = finish.working as f64 / HOUR;
        let mut outcome = Outcome {
            run,
            completion,
            finish,
            loads: self.s.next_load,
            placed_m3,
            left_over_m3: delivered,
            short_m3: (0..self.s.zones.len()).map(|zone| self.short(zone)).sum(),
            fuel_l: 0.0,
            labour_h: hours * (self.plan.loaders.len() + self.plan.rakers) as f64,
            cost: self.plan.material_cost,
            loaders: [0; _],
            rakers: [0; _],
            progress: self.progress(),
        };
        for (loader, machine) in self.s.loaders.iter().zip(&self.plan.loaders) {
            let times: &[Micros; L::COUNT] = loader.times[..L::COUNT].try_into().unwrap_or(&[0; L::COUNT]);
            outcome.loaders.iter_mut().zip(times).for_each(|(sum, t)| *sum += t);
            let total = |of: &[L]| of.iter().map(|a| times[*a as usize]).sum::<Micros>() as f64 / HOUR;
            outcome.fuel_l += total(&WORKING) * machine.fuel_working_l_per_h
                + total(&WAITING) * machine.fuel_idling_l_per_h;
            outcome.cost += hours * machine.cost_per_h;
        }
        for (crew, people) in self.s.crews.iter().zip(&self.plan.crews) {
            let rakers = people.rakers as Micros;
            outcome.rakers.iter_mut().zip(&crew.times).for_each(|(sum, t)| *sum += t * rakers);
            outcome.cost += hours * people.cost_per_h;
        }
        outcome.cost += outcome.fuel_l * self.plan.fuel_per_l;
        outcome
    }

    fn close_books(&mut self, books: &mut Books) {
        for loader in 0..self.s.loaders.len() {
            let state = &mut self.s.loaders[loader];
            state.times[state.activity as usize] += self.now - state.since;
            books.loaders[loader].iter_mut().zip(&state.times).for_each(|(sum, t)| *sum += t);
            books.loads[loader] += state.loads;
        }
        for (crew, state) in self.s.crews.iter_mut().enumerate() {
            state.times[state.activity as usize] += self.now - state.since;
            let people = &self.plan.crews[crew];
            for raker in people.first_raker..people.first_raker + people.rakers {
                books.rakers[raker].iter_mut().zip(&state.times).for_each(|(sum, t)| *sum += t);
            }
        }
        for zone in 0..self.s.zones.len() {
            books.zones[zone].loads += self.s.zones[zone].loads;
            books.zones[zone].placed_m3 += self.s.zones[zone].placed;
            books.zones[zone].short_m3 += self.short(zone);
        }
    }

    /// What a zone still lacks; less than counts is nothing.
    fn short(&self, zone: usize) -> f64 {
        let lacks = self.s.zones[zone].needs - self.s.zones[zone].placed;
        if lacks >= self.plan.nothing_m3 { lacks } else { 0.0 }
    }

    /// When each twentieth of the volume placed was raked out.
    fn progress(&self) -> [Micros; PROGRESS_PARTS] {
        let raked_out = &self.s.raked_out;
        let placed = raked_out.last().map_or(0.0, |(_, volume)| *volume);
        // A hair less, so that rounding in the sum does not move a part to the next heap.
        let part = placed * (1.0 - 1e-12) / PROGRESS_PARTS as f64;
        std::array::from_fn(|i| {
            let reached = raked_out.partition_point(|(_, volume)| *volume < part * (i + 1) as f64);
            raked_out.get(reached).map_or(self.s.completion, |(at, _)| *at)
        })
    }
}

const WORKING: [L; 5] = [L::Loading, L::Hauling, L::Returning, L::Passing, L::Dumping];
const WAITING: [L; 4] = [L::WaitingForFace, L::WaitingForPass, L::WaitingForRoom, L::WaitingForDelivery];

// Set-up, clean-up, breaks, stoppages and the time when a loader is done burn nothing: the engine is off.
const _: () = assert!(WORKING.len() + WAITING.len() + 5 == L::COUNT && R::COUNT == 7);
