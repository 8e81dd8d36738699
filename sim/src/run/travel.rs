//! Legs and passes.

use super::Run;
use super::loader::{LegState, Stage};
use super::queue::UNKNOWN;
use super::what::What;
use crate::activity::{LoaderActivity, Micros};
use crate::observe::Observer;
use crate::plan::{Leg, Reaches, round_to_us};

/// What lies ahead on a leg that nobody can hold up.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Ahead {
    pub(super) driving: Micros,
    pub(super) passing: Micros,
}

impl Ahead {
    #[inline(always)]
    pub(super) fn in_all(self) -> Micros {
        self.driving + self.passing
    }
}

impl<O: Observer> Run<'_, O> {
    /// The beginning of a leg.
    #[inline(always)]
    pub(super) fn leg(&self, route: usize, leg: Leg, factor: f64) -> LegState {
        let drive = self.plan.routes.get(route).drive(leg);
        LegState { driving: round_to_us(drive.mean_us * factor), driven: 0, factor, stretch: drive.first }
    }

    /// Goes on to the next pass or the end of the leg; where nobody else is about, through all passes to the end.
    #[inline(always)]
    pub(super) fn drive_ahead(&self, leg: &mut LegState) -> (Ahead, Reaches) {
        let mut passing = 0;
        if self.s.loaders.len() == 1 {
            while self.plan.routes.stretch(leg.stretch).reaches.is_pass() {
                passing += self.passing(*leg);
                leg.stretch += 1;
            }
        }
        let (driving, reaches) = self.drive(leg);
        (Ahead { driving, passing }, reaches)
    }

    /// How long it drives to the end of the stretch, and where that is.
    #[inline(always)]
    fn drive(&self, leg: &mut LegState) -> (Micros, Reaches) {
        let stretch = self.plan.routes.stretch(leg.stretch);
        let driven = stretch.driven(leg.driving);
        (driven - std::mem::replace(&mut leg.driven, driven), stretch.reaches)
    }

    /// Sets out with the load.
    pub(super) fn hauls(&mut self, loader: usize) {
        let state = &self.s.loaders[loader];
        self.drive_on(loader, Leg::Out, self.leg(state.route, Leg::Out, state.load.out));
    }

    pub(super) fn set_out_back(&mut self, loader: usize) {
        let state = &self.s.loaders[loader];
        self.drive_on(loader, Leg::Back, self.leg(state.route, Leg::Back, state.load.back));
    }

    /// Drives to the next pass, or to the end of the leg.
    #[inline]
    pub(super) fn drive_on(&mut self, loader: usize, leg: Leg, mut on: LegState) {
        let (driving, reaches) = self.drive(&mut on);
        let state = &mut self.s.loaders[loader];
        (state.leg, state.passing) = (on, (0, 0));
        self.step(loader, Stage::Driving(leg), driving, reaches.into());
    }

    #[inline(never)]
    pub(super) fn arrive_at_pass(&mut self, loader: usize, leg: Leg) {
        let pass = self.plan.routes.stretch(self.s.loaders[loader].leg.stretch).pass;
        let server = self.pass(pass);
        let state = &mut self.s.loaders[loader];
        (state.stage, state.server) = (Stage::AtPass(leg), server);
        if !self.s.queues[server].is_empty() {
            return self.join_queue(loader);
        }
        let start = self.s.places[server].free_at().max(self.now);
        let is_sure = || {
            start < self.s.next_closing && self.s.resting.is_none() && self.s.places[server].all_are_known()
        };
        if (start == self.now || is_sure()) && self.passes_ahead(loader, leg, start) {
            return;
        }
        if start == self.now { self.passes(loader, leg) } else { self.join_queue(loader) }
    }

    /// The loader's turn at the pass has come.
    pub(super) fn go_through(&mut self, loader: usize, leg: Leg) {
        if !self.passes_ahead(loader, leg, self.now) {
            self.passes(loader, leg);
        }
    }

    /// Goes through, as a step by itself.
    fn passes(&mut self, loader: usize, leg: Leg) {
        let state = &self.s.loaders[loader];
        let (server, length) = (state.server, self.passing(state.leg));
        self.s.places[server].take(UNKNOWN);
        self.step(loader, Stage::Passing(leg), length, What::Step);
    }

    #[inline(always)]
    fn passing(&self, leg: LegState) -> Micros {
        round_to_us(self.plan.routes.stretch(leg.stretch).passing_us * leg.factor)
    }

    /// Waits until then, goes through and drives on, where all of it is known.
    #[inline(always)]
    fn passes_ahead(&mut self, loader: usize, leg: Leg, start: Micros) -> bool {
        if O::EVERY_STEP {
            return false;
        }
        let mut on = self.s.loaders[loader].leg;
        let passing = self.passing(on);
        on.stretch += 1;
        let (driving, reaches) = self.drive(&mut on);
        let state = &mut self.s.loaders[loader];
        if !state.runs_through(passing + driving) {
            return false;
        }
        state.leg = on;
        state.passing = (start, start + passing);
        state.account(self.now);
        state.spend(LoaderActivity::WaitingForPass, start - self.now);
        state.spend(LoaderActivity::Passing, passing);
        state.spend(leg.activity(), driving);
        let server = state.server;
        self.s.places[server].take(start + passing);
        self.arrives_later(loader, Stage::Driving(leg), reaches.into());
        true
    }
}
