//! The end of a run: time accounts closed, figures added up.

use super::Run;
use super::loader::{LoaderState, Stage};
use crate::activity::{LoaderActivity as L, LoaderTimes, Micros, RakerActivity as R, RakerTimes, SECOND};
use crate::duration::Duration;
use crate::observe::Observer;
use crate::outcome::{Accounts, Moment, Outcome, PROGRESS_PARTS, ZoneTotals};
use crate::plan::{Leg, Plan};

const HOUR: f64 = (3_600 * SECOND) as f64;

/// What a run comes to, while it is added up.
pub(super) struct Tally<'a> {
    plan: &'a Plan,
    hours: f64,
    outcome: Outcome,
    accounts: &'a mut Accounts,
}

impl<'a> Tally<'a> {
    /// A run that took so long; `raked_out` tells when each heap was raked out, and how much in all by then.
    pub(super) fn new(
        plan: &'a Plan,
        run: u32,
        completion: Moment,
        finish: Moment,
        raked_out: &[(Micros, f64)],
        accounts: &'a mut Accounts,
    ) -> Self {
        let hours = finish.working.as_hours_f64();
        let outcome = Outcome {
            run,
            completion,
            finish,
            loads: 0,
            placed_m3: 0.0,
            left_over_m3: 0.0,
            short_m3: 0.0,
            ends_short: false,
            fuel_l: 0.0,
            labour_h: hours * (plan.loaders.len() + plan.rakers) as f64,
            cost: plan.material_cost,
            loaders: LoaderTimes::default(),
            rakers: RakerTimes::default(),
            progress: progress(raked_out, completion.clock.as_micros()).map(Duration::from_micros),
        };
        Self { plan, hours, outcome, accounts }
    }

    /// The next loader's times and loads, in order of their numbers.
    pub(super) fn loader(&mut self, loader: usize, times: &[Micros; L::COUNT], loads: u64) {
        let machine = &self.plan.loaders[loader];
        self.accounts.loads[loader] += loads;
        self.accounts.loaders[loader].add_micros(times, 1);
        self.outcome.loaders.add_micros(times, 1);
        let total = |of: &[L]| of.iter().map(|a| times[*a as usize]).sum::<Micros>() as f64 / HOUR;
        self.outcome.fuel_l +=
            total(&WORKING) * machine.fuel_working_l_per_h + total(&WAITING) * machine.fuel_idling_l_per_h;
        self.outcome.cost += self.hours * machine.cost_per_h;
    }

    /// The next crew's times.
    pub(super) fn crew(&mut self, crew: usize, times: &[Micros; R::COUNT]) {
        let people = &self.plan.crews[crew];
        for raker in &mut self.accounts.rakers[people.first_raker..people.first_raker + people.rakers] {
            raker.add_micros(times, 1);
        }
        self.outcome.rakers.add_micros(times, people.rakers as Micros);
        self.outcome.cost += self.hours * people.cost_per_h;
    }

    /// The next zone: loads, what was placed and what it took. Less than counts is not short where anything was brought.
    pub(super) fn zone(&mut self, zone: usize, loads: u64, placed_m3: f64, needs_m3: f64) {
        let lacks = needs_m3 - placed_m3;
        let counts = if loads == 0 { self.plan.least_m3(needs_m3) } else { self.plan.negligible_m3 };
        let short_m3 = if lacks >= counts { lacks } else { 0.0 };
        let ZoneTotals { loads: all, placed_m3: placed, short_m3: short } = &mut self.accounts.zones[zone];
        (*all, *placed, *short) = (*all + loads, *placed + placed_m3, *short + short_m3);
        self.outcome.placed_m3 += placed_m3;
        self.outcome.short_m3 += short_m3;
        self.outcome.ends_short |= short_m3 > 0.0 && self.plan.surplus_zone.is_none();
    }

    /// All of it, once every loader, crew and zone is in.
    pub(super) fn outcome(self, loads: u32, left_over_m3: f64) -> Outcome {
        let cost = self.outcome.cost + self.outcome.fuel_l * self.plan.fuel_per_l;
        Outcome { loads, left_over_m3, cost, ..self.outcome }
    }
}

impl<O: Observer> Run<'_, O> {
    pub(super) fn tally(&mut self, run: u32, accounts: &mut Accounts) -> Outcome {
        let moment = |clock: Micros, nights: Micros| Moment {
            working: Duration::from_micros(clock - nights),
            clock: Duration::from_micros(clock),
        };
        let finish = moment(self.now, self.s.nights);
        let completion = moment(self.s.completion, self.s.nights_at_completion);
        let mut tally = Tally::new(self.plan, run, completion, finish, &self.s.raked_out, accounts);
        for (loader, state) in self.s.loaders.iter_mut().enumerate() {
            state.close(self.now);
            if let Some(times) = state.times.first_chunk() {
                tally.loader(loader, times, state.loads);
            }
        }
        for (crew, state) in self.s.crews.iter_mut().enumerate() {
            state.account(self.now);
            if let Some(times) = state.times.first_chunk() {
                tally.crew(crew, times);
            }
        }
        for (zone, state) in self.s.zones.iter().enumerate() {
            tally.zone(zone, state.loads, state.placed, state.needs);
        }
        let to_come = self.s.deliveries[self.s.next_delivery..].iter().map(|(.., volume)| volume);
        let left_over_m3 = self.s.piles.iter().map(|p| p.stock).sum::<f64>() + to_come.sum::<f64>();
        tally.outcome(self.s.next_load, left_over_m3)
    }
}

impl LoaderState {
    /// Closes the accounts at the finish. What was entered beyond it is taken out again; that can only be the way back.
    fn close(&mut self, finish: Micros) {
        self.account(finish);
        let (began, ended) = self.passing;
        if self.stage == Stage::Driving(Leg::Back) && ended > finish {
            self.times[L::Returning as usize] += ended - finish;
            self.times[L::Passing as usize] -= ended - finish.max(began);
            self.times[L::WaitingForPass as usize] -= (began - finish).max(0);
        }
    }
}

/// When each twentieth of the volume placed was raked out; all at the end where nothing was.
fn progress(raked_out: &[(Micros, f64)], completion: Micros) -> [Micros; PROGRESS_PARTS] {
    let placed = raked_out.last().map_or(0.0, |(_, volume)| *volume);
    // A hair less, so that rounding in the sum does not move a part to the next heap.
    let part = placed * (1.0 - 1e-12) / PROGRESS_PARTS as f64;
    std::array::from_fn(|i| {
        let enough = |(_, volume): &(Micros, f64)| *volume >= part * (i + 1) as f64;
        // Where loads are alike, it is there or next to it.
        let mut reached = raked_out.len() * (i + 1) / PROGRESS_PARTS;
        while reached > 0 && enough(&raked_out[reached - 1]) {
            reached -= 1;
        }
        while raked_out.get(reached).is_some_and(|heap| !enough(heap)) {
            reached += 1;
        }
        raked_out.get(reached).map_or(completion, |(at, _)| *at)
    })
}

const WORKING: [L; 5] = [L::Loading, L::Hauling, L::Returning, L::Passing, L::Dumping];
const WAITING: [L; 4] = [L::WaitingForFace, L::WaitingForPass, L::WaitingForRoom, L::WaitingForDelivery];

// Set-up, clean-up, breaks, stoppages and the time when a loader is done burn nothing: the engine is off.
const _: () = assert!(WORKING.len() + WAITING.len() + 5 == L::COUNT && R::COUNT == 7);
