//! A loader's steps: what it does from now on, and for how long.
//!
//! A step is entered by itself, as an event; or, where nobody can interfere before its end, several together: then the
//! loader's accounts run ahead of the clock up to the one event at their end. Breaks, nights and deliveries never interrupt
//! a step that runs; a stoppage does, and is therefore taken by itself.

use super::Run;
use super::loader::{Going, LoaderState, Stage};
use super::what::What;
use crate::activity::{LoaderActivity, Micros};
use crate::observe::{Event, Observer};
use crate::plan::{Leg, Plan, round_to_us};
use rand_distr::{Distribution as _, Exp1};

impl LoaderState {
    /// Draws the operating time to the next stoppage.
    pub(super) fn draw_gap(&mut self, plan: &Plan, loader: usize) {
        if let Some((mean_us, _)) = &plan.loaders[loader].stoppages {
            let gap: f64 = Exp1.sample(&mut self.stoppages);
            self.until_stop = round_to_us(gap * mean_us);
        }
    }

    /// The time up to now goes into the accounts.
    #[inline(always)]
    pub(super) fn account(&mut self, now: Micros) {
        self.times[self.activity as usize] += now - self.since;
        self.since = now;
    }

    /// Enters the next step of those taken together.
    #[inline(always)]
    pub(super) fn spend(&mut self, on: LoaderActivity, length: Micros) {
        self.times[on as usize] += length;
        self.since += length;
        self.activity = on;
    }

    /// Whether steps of this length run through without a stoppage; if so they have.
    #[inline(always)]
    pub(super) fn runs_through(&mut self, length: Micros) -> bool {
        let runs_through = self.until_stop >= length;
        self.until_stop -= if runs_through { length } else { 0 };
        runs_through
    }
}

impl<O: Observer> Run<'_, O> {
    /// From now on the loader does this; the time up to now goes into its accounts.
    pub(super) fn turn(&mut self, loader: usize, activity: LoaderActivity) {
        let (now, state) = (self.now, &mut self.s.loaders[loader]);
        state.account(now);
        state.activity = activity;
        let (s, piles) = (&*self.s, self.plan.piles.len());
        self.observer.see(now, || {
            let state = &s.loaders[loader];
            let in_hand = state.load_in_hand();
            Event::Loader {
                loader,
                activity,
                load: in_hand,
                zone: (in_hand.is_some() || state.bound).then_some(state.zone),
                stockpile: state.knows_its_pile().then_some(state.pile),
                pass: match (state.stage, state.server) {
                    (Stage::AtPass(_) | Stage::Passing(_), server) => server.checked_sub(piles),
                    _ => None,
                },
                volume_m3: in_hand.map_or(0.0, |_| state.load.volume),
            }
        });
    }

    /// Waits, or rests if work is paused.
    pub(super) fn turn_to_waiting(&mut self, loader: usize) {
        let activity = match self.s.resting {
            Some(_) if !self.s.cleaning() => LoaderActivity::OnBreak,
            _ => self.s.loaders[loader].stage.activity(),
        };
        self.turn(loader, activity);
    }

    /// Begins a timed step of the loader; `end` is what its end is about.
    #[inline]
    pub(super) fn step(&mut self, loader: usize, stage: Stage, length: Micros, end: What) {
        self.s.loaders[loader].stage = stage;
        self.turn(loader, stage.activity());
        self.run_on(loader, length, end);
    }

    /// Steps taken together are entered up to this stage: its event is where they end.
    #[inline(always)]
    pub(super) fn arrives_later(&mut self, loader: usize, stage: Stage, end: What) {
        let (slot, state) = (self.s.slot_of_loader(loader), &mut self.s.loaders[loader]);
        state.stage = stage;
        let at = state.since;
        self.schedule(slot, at, end);
    }

    /// Enters the end of something.
    #[inline(always)]
    pub(super) fn schedule(&mut self, slot: usize, at: Micros, what: What) {
        self.s.instant |= at == self.now;
        self.s.calendar.set(slot, at, what);
    }

    /// Lets the step in hand run for what is left of it, or to the next stoppage.
    fn run_on(&mut self, loader: usize, length: Micros, end: What) {
        let slot = self.s.slot_of_loader(loader);
        let state = &mut self.s.loaders[loader];
        let (stretch, end) = if state.runs_through(length) {
            state.going = Going::On;
            (length, end)
        } else {
            state.going = Going::UntilStoppage(length - state.until_stop);
            (state.until_stop, What::Step)
        };
        self.schedule(slot, self.now + stretch, end);
    }

    /// The loader's event has come while its step is or was held by a stoppage.
    #[cold]
    pub(super) fn stops_or_goes_on(&mut self, loader: usize, going: Going) {
        let plan = self.plan;
        let state = &mut self.s.loaders[loader];
        match going {
            Going::UntilStoppage(left) => {
                state.going = Going::Stopped(left);
                let length = plan.loaders[loader].stoppages.as_ref().map_or(0, |(_, lengths)| {
                    round_to_us(lengths.at(rand::Rng::next_u64(&mut state.stoppages)) * 1e6)
                });
                state.draw_gap(plan, loader);
                self.turn(loader, LoaderActivity::Stopped);
                self.schedule(self.s.slot_of_loader(loader), self.now + length, What::Step);
            }
            Going::Stopped(left) => {
                let activity = state.stage.activity();
                self.turn(loader, activity);
                self.run_on(loader, left, What::Step);
            }
            Going::On => {}
        }
    }
}

impl LoaderState {
    fn load_in_hand(&self) -> Option<u32> {
        match self.stage {
            Stage::Loading
            | Stage::Driving(Leg::Out)
            | Stage::AtPass(Leg::Out)
            | Stage::Passing(Leg::Out)
            | Stage::AtRoom
            | Stage::Dumping => Some(self.load.number),
            _ => None,
        }
    }

    fn knows_its_pile(&self) -> bool {
        self.bound || self.load_in_hand().is_some() || matches!(self.stage, Stage::Driving(Leg::Back))
    }
}

impl Stage {
    /// What a loader at this stage does, when it is not held by a stoppage, a break or the night.
    pub(super) fn activity(self) -> LoaderActivity {
        match self {
            Self::SetUp => LoaderActivity::SetUp,
            Self::Choosing(_) | Self::AwaitingDelivery(_) => LoaderActivity::WaitingForDelivery,
            Self::AtFace => LoaderActivity::WaitingForFace,
            Self::Loading => LoaderActivity::Loading,
            Self::Driving(leg) => leg.activity(),
            Self::AtPass(_) => LoaderActivity::WaitingForPass,
            Self::Passing(_) => LoaderActivity::Passing,
            Self::AtRoom => LoaderActivity::WaitingForRoom,
            Self::Dumping => LoaderActivity::Dumping,
            Self::Done => LoaderActivity::Done,
            Self::CleanUp => LoaderActivity::CleanUp,
        }
    }
}

impl Leg {
    /// What a loader does that drives it.
    #[inline(always)]
    pub(super) fn activity(self) -> LoaderActivity {
        match self {
            Self::Out => LoaderActivity::Hauling,
            Self::Back => LoaderActivity::Returning,
        }
    }
}
