//! A short way through a yard: any number of loaders, rakers and zones, as long as the clock does not interfere: no breaks or
//! nights, deliveries, stoppages, fatigue or surplus zone, and no two things happen at the same instant.
//!
//! The model is the same, and so is the outcome to the last bit (`tests/model/short_ways.rs` holds the two against each
//! other over thousands of jobs). What makes it short: a step that nobody can interfere with needs no event of its own. A
//! pass and, far from the end of the job, a face serve in the order of arrival, so that on arrival the end is known; so is
//! the dump where everybody bound for a zone finds room. Events are left for arriving at a pass, at a face or at a zone that
//! may be full, for the end of a dump and for the end of a heap or walk. What every load goes through is inlined: a call
//! costs as much as a step.
//!
//! Two events at one instant would want the model's rules of order: then the run is made the long way, from its start.
//! Microseconds make that rare where times are drawn; jobs in which everything takes round times go the long way at once.

mod close;
mod face;
mod loaders;
mod places;
mod rakers;
mod row;
mod ways;

use super::choose::{Choice, Ground};
use super::{Once, Pace};
use crate::activity::{LoaderActivity, Micros, RakerActivity};
use crate::calendar::{Calendar, END_OF_TIME};
use crate::luck::RunLuck;
use crate::outcome::{Books, Outcome};
use crate::plan::{Order, Plan};
use places::Places;
pub(crate) use row::MOST;
use row::Row;
use std::collections::VecDeque;
use ways::Ways;

/// The run must be made the long way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct GivenUp;

/// The state of a run, kept from run to run so that none allocates.
#[derive(Clone, Debug)]
pub(super) struct Yard {
    crew_events: Calendar,
    loader_events: Calendar,
    loaders: Row<LoaderState>,
    crews: Row<CrewState>,
    zones: Row<ZoneState>,
    stocks: Row<f64>,
    faces: Row<Face>,
    passes: Row<Places>,
    ways: Ways,
    /// Crews with free hands, a bit each.
    idle: u64,
    heaps_waiting: usize,
    last_zone: Option<usize>,
    next_load: u32,
    next_heap: u64,
    /// Loads begun and not yet raked out.
    in_play: u32,
    completion: Micros,
    placed: f64,
    raked_out: Vec<(Micros, f64)>,
}

/// What a loader's event is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Next {
    /// It comes to a pass.
    PassOut,
    PassBack,
    /// It comes to the end of its way.
    Zone,
    Face,
    /// Its turn at the face comes.
    TurnAtFace,
    DumpEnds,
    /// It stands in a queue, or is done.
    None,
}

// Aligned, as the others are, so that a shift finds it.
#[derive(Clone, Debug)]
#[repr(align(256))]
struct LoaderState {
    next: Next,
    times: [Micros; LoaderActivity::COUNT],
    /// Since when it stands in a queue, or is done.
    since: Micros,
    zone: usize,
    pile: usize,
    /// The way it is on, and the way of the next load while it drives back.
    route: usize,
    next_route: usize,
    last_leg: bool,
    /// The load: volume, how long its dump takes, factors of its way back and of its raking. All drawn when it begins, so that
    /// no later step has to wait for them.
    volume: f64,
    dump: Micros,
    back: f64,
    raking: f64,
    loads: u64,
    /// The leg it is on: factor of its times, all of its driving, what is driven at the end of the stretch it is on.
    factor: f64,
    driving: Micros,
    driven: Micros,
    stretch: usize,
    /// What was entered last on a way back, in case the job ends before it does: when it began to wait at a pass, to pass,
    /// to drive, and when it will have driven.
    entered: [Micros; 4],
}

#[derive(Clone, Debug)]
#[repr(align(128))]
struct CrewState {
    times: [Micros; RakerActivity::COUNT],
    activity: RakerActivity,
    since: Micros,
    zone: usize,
    /// Volume of the heap in hand.
    in_hand: Option<f64>,
    /// When the heap or walk in hand will be done; while standing clear, what is left of it.
    end: Micros,
}

/// A heap on the ground.
#[derive(Clone, Copy, Debug)]
struct Heap {
    volume: f64,
    /// Factor of its raking.
    raking: f64,
    /// Its place in the order of dumping, over all zones.
    number: u64,
}

#[derive(Clone, Debug, Default)]
#[repr(align(256))]
struct ZoneState {
    needs: f64,
    open: f64,
    placed: f64,
    loads: u64,
    bound: u32,
    dumping: u32,
    free: u32,
    /// When the last of the dumps begins that are entered already.
    last_dump: Micros,
    walkers: usize,
    /// Crews in the zone, or walking to it, a bit each.
    crews: u64,
    heaps: VecDeque<Heap>,
    /// Loaders waiting for room.
    queue: VecDeque<usize>,
}

#[derive(Clone, Debug)]
struct Face {
    places: Places,
    /// Loaders waiting whose turn cannot be foreseen.
    queue: VecDeque<usize>,
}

/// A run under way.
struct Run<'a> {
    plan: &'a Plan,
    s: &'a mut Yard,
    luck: RunLuck,
    pace: Pace,
    now: Micros,
    /// When the job was over: nothing in play, nothing more to load.
    over: Option<Micros>,
    /// No event after this matters.
    horizon: Micros,
    set_up: Micros,
    clean_up: Micros,
}

impl Yard {
    /// Room for runs of this plan.
    pub(super) fn new(plan: &Plan) -> Self {
        let face = |n: u32| Face { places: Places::new(n), queue: VecDeque::new() };
        Self {
            crew_events: Calendar::new(plan.crews.len()),
            loader_events: Calendar::new(plan.loaders.len()),
            loaders: Row::new(plan.loaders.iter().map(|_| LoaderState::new()), LoaderState::new),
            crews: Row::new(plan.crews.iter().map(|_| CrewState::new(0)), || CrewState::new(0)),
            zones: Row::new(plan.zones.iter().map(|_| ZoneState::default()), ZoneState::default),
            stocks: Row::new(plan.piles.iter().map(|_| 0.0), || 0.0),
            faces: Row::new(plan.piles.iter().map(|p| face(p.face)), || face(0)),
            passes: Row::new(plan.passes.iter().map(|p| Places::new(p.at_once)), || Places::new(0)),
            ways: Ways::new(plan),
            idle: 0,
            heaps_waiting: 0,
            last_zone: None,
            next_load: 0,
            next_heap: 0,
            in_play: 0,
            completion: 0,
            placed: 0.0,
            raked_out: Vec::new(),
        }
    }

    /// Makes one run and adds its books to `books`. Nothing is added if it must be made the long way.
    pub(super) fn run(
        &mut self,
        plan: &Plan,
        luck: RunLuck,
        pace: Pace,
        run: u32,
        books: &mut Books,
    ) -> Option<Outcome> {
        let Once { set_up, clean_up, need } = Once::new(plan, &luck);
        self.reset(plan, &luck, set_up, need);
        let mut run_of = Run {
            plan,
            s: self,
            luck,
            pace,
            now: set_up,
            over: None,
            horizon: END_OF_TIME / 4,
            set_up,
            clean_up,
        };
        run_of.begin();
        run_of.go_to_the_end().ok()?;
        Some(run_of.close(run, books))
    }

    fn reset(&mut self, plan: &Plan, luck: &RunLuck, set_up: Micros, need: f64) {
        self.crew_events.clear();
        self.loader_events.clear();
        for loader in self.loaders.iter_mut() {
            *loader = LoaderState::new();
        }
        for (zone, p) in self.zones.iter_mut().zip(&plan.zones) {
            zone.reset(p.need_m3 * need, p.room);
        }
        for ((number, crew), p) in self.crews.iter_mut().enumerate().zip(&plan.crews) {
            *crew = CrewState::new(p.start_zone);
            crew.times[RakerActivity::SetUp as usize] = set_up;
            crew.since = set_up;
            self.zones[p.start_zone].crews |= 1 << number;
        }
        for (pile, stock) in self.stocks.iter_mut().enumerate() {
            *stock = plan.stock(pile, luck);
        }
        for face in self.faces.iter_mut() {
            face.places.clear();
            face.queue.clear();
        }
        self.passes.iter_mut().for_each(Places::clear);
        self.raked_out.clear();
        self.idle = u64::MAX >> (64 - self.crews.len());
        (self.heaps_waiting, self.last_zone, self.in_play) = (0, None, 0);
        (self.next_load, self.next_heap, self.completion, self.placed) = (0, 0, set_up, 0.0);
    }
}

impl Run<'_> {
    /// Something has come up that only the long way does right.
    fn give_up(&mut self) {
        self.now = END_OF_TIME;
    }

    /// Set-up is over: loaders set to work in the order of their numbers.
    fn begin(&mut self) {
        for loader in 0..self.s.loaders.len() {
            self.s.loaders[loader].times[LoaderActivity::SetUp as usize] = self.set_up;
            match self.choose(loader) {
                Choice::Go { .. } => self.arrive_at_face(loader),
                _ => self.done(loader),
            }
        }
    }

    fn go_to_the_end(&mut self) -> Result<(), GivenUp> {
        loop {
            let (crew_ends, loader_goes_on) =
                (self.s.crew_events.first_key(), self.s.loader_events.first_key());
            let (at, slot) = crew_ends.min(loader_goes_on).time_and_slot();
            // At the end of the job; or nothing is to come any more.
            if at > self.horizon {
                return if self.over.is_some() { Ok(()) } else { Err(GivenUp) };
            }
            // Two things at one instant, or given up.
            if at <= self.now {
                return Err(GivenUp);
            }
            self.now = at;
            if crew_ends < loader_goes_on {
                self.crew_ends(slot);
            } else {
                self.loader_goes_on(slot)?;
            }
        }
    }

    /// Notes the end of the work: nothing in play, and nothing more to load for anybody.
    fn look_whether_over(&mut self) {
        if self.s.in_play == 0 && self.over.is_none() && self.s.nothing_more(self.plan) {
            self.over = Some(self.now);
            self.horizon = self.now + self.clean_up;
            self.s.crew_events.clear();
        }
    }

    /// Chooses for a loader that is bound for no zone, and binds it.
    #[inline(always)]
    fn choose(&mut self, loader: usize) -> Choice {
        let choice = match &self.plan.in_order {
            Some(in_order) => self.first_in_order(&in_order[loader]),
            None => self.s.best(self.plan, loader),
        };
        if let Choice::Go { zone, route } = choice {
            self.s.last_zone = Some(zone);
            self.s.zones[zone].bound += 1;
            let state = &mut self.s.loaders[loader];
            (state.zone, state.route, state.pile) = (zone, route, self.plan.routes.get(route).pile);
        }
        choice
    }

    /// The same choice as [`Ground::best`], where there is one pile and the order of the zones is known beforehand.
    #[inline(always)]
    fn first_in_order(&self, order: &Order) -> Choice {
        if self.s.stocks[0] < self.plan.nothing_m3 {
            return Choice::Nothing;
        }
        let mut full = Choice::Nothing;
        let mut next = self.s.last_zone.map_or(0, |last| order.after[last]);
        for _ in 0..order.zones.len() {
            let (zone, route) = order.zones[next];
            next = if next + 1 == order.zones.len() { 0 } else { next + 1 };
            let place = &self.s.zones[zone];
            if place.open >= self.plan.nothing_m3 {
                if place.free > place.bound {
                    return Choice::Go { zone, route };
                }
                if full == Choice::Nothing {
                    full = Choice::Go { zone, route };
                }
            }
        }
        full
    }
}

impl Ground for Yard {
    #[inline]
    fn open_m3(&self, zone: usize) -> f64 {
        self.zones[zone].open
    }

    #[inline]
    fn room_left(&self, zone: usize) -> f64 {
        f64::from(self.zones[zone].free) - f64::from(self.zones[zone].bound)
    }

    #[inline]
    fn stock_m3(&self, pile: usize) -> f64 {
        self.stocks[pile]
    }

    #[inline]
    fn is_due(&self, _: usize) -> bool {
        false
    }

    #[inline]
    fn last_zone(&self) -> Option<usize> {
        self.last_zone
    }
}

impl LoaderState {
    fn new() -> Self {
        Self {
            next: Next::None,
            times: [0; _],
            since: 0,
            zone: 0,
            pile: 0,
            route: 0,
            next_route: 0,
            last_leg: false,
            volume: 0.0,
            dump: 0,
            back: 0.0,
            raking: 0.0,
            loads: 0,
            factor: 0.0,
            driving: 0,
            driven: 0,
            stretch: 0,
            entered: [0; 4],
        }
    }
}

impl CrewState {
    fn new(zone: usize) -> Self {
        Self { times: [0; _], activity: RakerActivity::Waiting, since: 0, zone, in_hand: None, end: 0 }
    }
}

impl ZoneState {
    fn reset(&mut self, needs: f64, room: u32) {
        (self.needs, self.open, self.placed, self.loads) = (needs, needs, 0.0, 0);
        (self.bound, self.dumping, self.walkers, self.free, self.last_dump) = (0, 0, 0, room, 0);
        self.crews = 0;
        self.heaps.clear();
        self.queue.clear();
    }
}
