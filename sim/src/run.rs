//! One run of a job: from the start of the first day to the end of the clean-up.
//!
//! A plain event loop. Of everything that falls on one instant, first all that ends is taken in, in the order of the
//! calendar's slots (deliveries and ends of breaks, rakers, loaders, beginnings of breaks), then things start one at a
//! time: rakers, loaders in queues, other loaders. A step of no duration ends before the next thing starts.

mod choose;
mod crew;
mod cycle;
mod deadlock;
mod face;
mod load;
mod loader;
mod options;
mod queue;
mod rakers;
mod row;
mod server;
mod shift;
mod site;
mod state;
mod steps;
mod tally;
mod travel;
mod what;

use crate::activity::Micros;
use crate::calendar::{END_OF_TIME, Next};
use crate::error::{RunError, RunProblem};
use crate::observe::{Entry, Observer, Unobserved};
use crate::outcome::{Accounts, Outcome};
use crate::plan::{Leg, Plan, round_to_us};
use crate::streams::{Factor, Streams};
use load::{Draws, Pace};
pub(crate) use state::Scratch;
use what::What;

/// Loads after which a run is given up: far beyond any job for a small loader.
const MOST_LOADS: u32 = 10_000_000;

/// A run under way.
struct Run<'a, O> {
    plan: &'a Plan,
    s: &'a mut Scratch,
    observer: &'a mut O,
    streams: Streams,
    pace: Pace,
    /// What the next load draws, known beforehand so that nobody waits for it.
    draws: Draws,
    now: Micros,
}

/// What a run draws once besides its pace.
#[derive(Clone, Copy, Debug)]
struct Once {
    set_up: Micros,
    clean_up: Micros,
    /// What the zones really take, as a multiple.
    need: f64,
}

impl Once {
    fn new(plan: &Plan, streams: &Streams) -> Self {
        let length = |sampler: &crate::Sampler, factor| round_to_us(sampler.at(streams.factor(factor)) * 1e6);
        Self {
            set_up: length(&plan.set_up, Factor::SetUp),
            clean_up: length(&plan.clean_up, Factor::CleanUp),
            need: plan.factors.need.at(streams.factor(Factor::Need)),
        }
    }
}

impl Scratch {
    /// Makes one run and adds its accounts to `accounts`.
    pub(crate) fn run(
        &mut self,
        plan: &Plan,
        seed: u64,
        run: u32,
        accounts: &mut Accounts,
    ) -> Result<Outcome, RunError> {
        self.go(plan, Streams::new(seed, run), run, accounts, &mut Unobserved)
    }

    /// The same with every event written down.
    pub(crate) fn run_observed(
        &mut self,
        plan: &Plan,
        seed: u64,
        run: u32,
        accounts: &mut Accounts,
        log: &mut Vec<Entry>,
    ) -> Result<Outcome, RunError> {
        self.go(plan, Streams::new(seed, run), run, accounts, log)
    }

    fn go<O: Observer>(
        &mut self,
        plan: &Plan,
        streams: Streams,
        run: u32,
        accounts: &mut Accounts,
        observer: &mut O,
    ) -> Result<Outcome, RunError> {
        self.reset(plan, &streams);
        let pace = Pace::new(plan, &streams);
        let draws = Draws::new(&plan.noise, &pace, streams.load(0));
        let mut run_of = Run { plan, s: self, observer, streams, pace, draws, now: 0 };
        run_of.begin();
        run_of.go_to_the_end().map_err(|why| RunError { run, why })?;
        Ok(run_of.tally(run, accounts))
    }
}

impl<O: Observer> Run<'_, O> {
    fn go_to_the_end(&mut self) -> Result<(), RunProblem> {
        loop {
            if self.s.something_may_start() {
                self.start_all();
            }
            let Next { at, slot, about } = self.s.calendar.first();
            if !self.s.is_plain(slot) && !self.goes_on_to(at)? {
                return Ok(());
            }
            self.now = at;
            self.s.instant = false;
            if self.s.calendar.take_first() {
                self.ends_alone(slot, about);
            } else {
                self.ends(slot, about);
                self.s.instant = true;
            }
            if self.s.instant {
                self.end_all();
            }
        }
    }

    /// Takes in what ends now, and what follows where nothing else ends at this instant: nothing can start before it.
    #[inline(always)]
    fn ends_alone(&mut self, slot: usize, about: What) {
        let (loader, crew) = (self.s.loader_of_slot(slot), self.s.crew_of_slot(slot));
        match about {
            What::PassOut => self.arrive_at_pass(loader, Leg::Out),
            What::PassBack => self.arrive_at_pass(loader, Leg::Back),
            What::Zone => self.arrive_at_room(loader),
            What::Pile => self.arrive_at_pile(loader),
            What::Dumped => self.dumped(loader),
            What::Turn => self.is_served(loader),
            What::Raker if self.rakes_on(crew) => {}
            What::Raker => self.crew_ends(crew),
            _ => self.ends(slot, about),
        }
    }

    /// Takes in what ends now.
    #[inline(never)]
    fn ends(&mut self, slot: usize, about: What) {
        match about {
            What::Opening => self.opens(),
            What::Closing => self.closes(),
            What::Raker => self.crew_ends(self.s.crew_of_slot(slot)),
            _ => self.loader_ends(self.s.loader_of_slot(slot)),
        }
    }

    /// Takes in all that ends now.
    fn end_all(&mut self) {
        self.s.instant = false;
        loop {
            let Next { at, slot, about } = self.s.calendar.first();
            if at != self.now {
                return;
            }
            self.s.calendar.take_first();
            self.ends(slot, about);
        }
    }

    /// Starts all that can start now, one thing at a time.
    #[inline(always)]
    fn start_all(&mut self) {
        while (self.s.rakers_look && self.a_raker_starts())
            || (self.s.ready != 0 && self.a_queue_is_served())
            || (self.s.pending != 0 && self.a_loader_goes_on())
            || (self.s.over && self.clean_up_begins())
        {
            if self.s.instant {
                self.end_all();
            }
        }
    }

    /// Whether the job goes on to the next event, where that is not just somebody's next step. Refuses to go on for ever:
    /// nothing that moves is left, or far too much.
    #[cold]
    fn goes_on_to(&mut self, next: Micros) -> Result<bool, RunProblem> {
        if let Some(finish) = self.s.finish {
            let over = finish <= self.now || next > finish;
            self.now = if over { finish } else { self.now };
            return Ok(!over);
        }
        self.night_may_fall();
        if next > END_OF_TIME / 4 && next < END_OF_TIME {
            return Err(RunProblem::TooLong);
        }
        let waits_for_the_clock = self.s.resting.is_some() || self.a_delivery_comes();
        if next < END_OF_TIME && (waits_for_the_clock || self.s.somebody_is_busy()) {
            return Ok(true);
        }
        Err(match self.s.next_load {
            MOST_LOADS => RunProblem::TooManyLoads { most: MOST_LOADS },
            _ => RunProblem::Deadlock(Box::new(self.deadlock())),
        })
    }
}
