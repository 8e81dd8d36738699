//! Everything that changes in a run, kept from run to run so that none allocates.

use super::Once;
use super::crew::CrewState;
use super::load::Machine;
use super::loader::LoaderState;
use super::queue::{Places, Queue};
use super::row::Row;
use super::site::{PileState, ZoneState};
use super::what::What;
use crate::activity::Micros;
use crate::calendar::{Calendar, END_OF_TIME};
use crate::plan::Plan;
use crate::streams::Streams;

/// The state of a run.
#[derive(Clone, Debug)]
pub(crate) struct Scratch {
    /// Slots: 0 deliveries and ends of breaks; crews; loaders; last, beginnings of breaks.
    pub(super) calendar: Calendar<What>,
    first_loader: usize,
    closing: usize,
    /// A step of no duration has begun.
    pub(super) instant: bool,
    pub(super) loaders: Row<LoaderState>,
    pub(super) crews: Row<CrewState>,
    pub(super) zones: Vec<ZoneState>,
    pub(super) piles: Vec<PileState>,
    /// Faces of the piles, then passes.
    pub(super) places: Vec<Places>,
    /// At the faces, then the passes, then the rooms of the zones.
    pub(super) queues: Vec<Queue>,
    /// Loaders in queues whose turn has come, a bit each.
    pub(super) ready: u64,
    /// Loaders that go on at this instant, a bit each.
    pub(super) pending: u64,
    /// Loaders that wait for a delivery or the surplus.
    pub(super) awaiting: u64,
    /// Loaders that go on when work resumes.
    pub(super) held: u64,
    /// Rakers free to take a heap, a bit for each crew.
    pub(super) idle: u64,
    /// Rakers with a heap in hand.
    pub(super) with_a_heap: u64,
    /// How many slots of loaders and rakers there are; none while something else than their plain work is going on: a
    /// rest, or the end.
    plain: usize,
    /// Whether a free raker may find something new.
    pub(super) rakers_look: bool,
    pub(super) heaps_waiting: usize,
    /// Whether there may be a heap that waits and to which nobody is walking.
    pub(super) unclaimed: bool,
    /// Deliveries of this run: time, pile, volume; in order.
    pub(super) deliveries: Vec<(Micros, usize, f64)>,
    pub(super) next_delivery: usize,
    /// Which rest is on, if any.
    pub(super) resting: Option<Rest>,
    pub(super) night_since: Option<Micros>,
    pub(super) nights: Micros,
    pub(super) day_start: Micros,
    pub(super) next_switch: usize,
    /// When the clock next stops the work, and when it next changes anything.
    pub(super) next_closing: Micros,
    pub(super) next_change: Micros,
    pub(super) next_load: u32,
    pub(super) next_heap: u64,
    pub(super) next_place_in_queue: u64,
    /// Loads begun and not yet raked out.
    pub(super) in_play: u32,
    pub(super) last_zone: Option<usize>,
    /// How often a need or a pile was used up or something was delivered: then loaders may have other options.
    pub(super) changes: u64,
    /// Whether the surplus zone takes whatever is left, as of the last of those changes.
    pub(super) surplus_is_open: bool,
    /// Nothing more can be loaded and all heaps are raked out.
    pub(super) over: bool,
    pub(super) completion: Micros,
    pub(super) nights_at_completion: Micros,
    /// When the clean-up ends, once it has begun.
    pub(super) finish: Option<Micros>,
    pub(super) clean_up: Micros,
    pub(super) set_up: Micros,
    /// Heaps raked out: when, and how much in all by then.
    pub(super) raked_out: Vec<(Micros, f64)>,
}

/// Why nobody starts work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rest {
    Break,
    AfterHours,
}

impl Scratch {
    /// Room for a run of this plan.
    pub(crate) fn new(plan: &Plan) -> Self {
        let (crews, loaders) = (plan.crews.len(), plan.loaders.len());
        let no_loader = LoaderState::new(Machine::default());
        // No more places are needed than there are loaders.
        let capacities = plan.piles.iter().map(|p| p.face).chain(plan.passes.iter().copied());
        let places: Vec<_> = capacities.map(|c| Places::new(loaders.min(c as usize))).collect();
        let queues = vec![Queue::new(); places.len() + plan.zones.len()];
        Self {
            calendar: Calendar::new(crews + loaders + 2, What::Step),
            first_loader: 1 + crews,
            closing: 1 + crews + loaders,
            instant: false,
            loaders: Row::new(plan.loaders.iter().map(|l| LoaderState::new(Machine::new(l))), &no_loader),
            crews: Row::new(plan.crews.iter().map(|c| CrewState::new(c.us_per_m3)), &CrewState::new(0.0)),
            zones: vec![ZoneState::default(); plan.zones.len()],
            piles: vec![PileState::default(); plan.piles.len()],
            places,
            queues,
            ready: 0,
            pending: 0,
            awaiting: 0,
            held: 0,
            idle: 0,
            with_a_heap: 0,
            plain: 0,
            rakers_look: false,
            heaps_waiting: 0,
            unclaimed: false,
            deliveries: Vec::new(),
            next_delivery: 0,
            resting: None,
            night_since: None,
            nights: 0,
            day_start: 0,
            next_switch: 0,
            next_closing: END_OF_TIME,
            next_change: END_OF_TIME,
            next_load: 0,
            next_heap: 0,
            next_place_in_queue: 0,
            in_play: 0,
            last_zone: None,
            changes: 1,
            surplus_is_open: false,
            over: false,
            completion: 0,
            nights_at_completion: 0,
            finish: None,
            clean_up: 0,
            set_up: 0,
            raked_out: Vec::new(),
        }
    }

    pub(super) fn slot_of_crew(&self, crew: usize) -> usize {
        1 + crew
    }

    pub(super) fn slot_of_loader(&self, loader: usize) -> usize {
        self.first_loader + loader
    }

    pub(super) fn closing_slot(&self) -> usize {
        self.closing
    }

    /// Whether the event of a slot is just somebody's next step.
    #[inline(always)]
    pub(super) fn is_plain(&self, slot: usize) -> bool {
        slot.wrapping_sub(1) < self.plain
    }

    /// Whether any loader or crew is in the middle of something.
    pub(super) fn somebody_is_busy(&self) -> bool {
        (1..self.closing_slot()).any(|slot| self.calendar.time_of(slot).is_some())
    }

    /// Whether to look for what can start. Looked at after every event: one test of everything is quicker than four.
    #[inline(always)]
    pub(super) fn something_may_start(&self) -> bool {
        self.ready | self.pending | u64::from(self.rakers_look) | u64::from(self.over) != 0
    }

    /// Whose slot it is, if a crew's.
    pub(super) fn crew_of_slot(&self, slot: usize) -> usize {
        slot.wrapping_sub(1)
    }

    /// Whose slot it is, if a loader's.
    pub(super) fn loader_of_slot(&self, slot: usize) -> usize {
        slot.wrapping_sub(self.first_loader)
    }

    /// To be called when a rest begins or ends, when the work is over, and when the clean-up begins.
    pub(super) fn note_what_is_unusual(&mut self) {
        let is_unusual = self.over || self.resting.is_some() || self.finish.is_some();
        self.plain = if is_unusual { 0 } else { self.closing - 1 };
    }

    pub(super) fn reset(&mut self, plan: &Plan, streams: &Streams) {
        self.calendar.clear();
        self.loaders.iter_mut().enumerate().for_each(|(i, l)| l.reset(plan, streams, i));
        self.crews.iter_mut().zip(&plan.crews).for_each(|(crew, p)| crew.reset(p.start_zone, p.us_per_m3));
        let Once { set_up, clean_up, need } = Once::new(plan, streams);
        (self.set_up, self.clean_up) = (set_up, clean_up);
        for (zone, p) in self.zones.iter_mut().zip(&plan.zones) {
            let needs = p.need_m3 * need;
            zone.reset(needs, plan.least_m3(needs), p.room);
        }
        for (crew, p) in plan.crews.iter().enumerate() {
            self.zones[p.start_zone].crews |= 1 << crew;
        }
        for (number, pile) in self.piles.iter_mut().enumerate() {
            let stock = plan.stock(number, streams);
            *pile = PileState { stock, least: plan.least_m3(stock), due: 0 };
        }
        self.places.iter_mut().for_each(Places::clear);
        self.queues.iter_mut().for_each(Queue::clear);
        self.options_change(plan);
        self.draw_deliveries(plan, streams);
        self.raked_out.clear();
        (self.ready, self.pending, self.awaiting, self.held) = (0, 0, 0, 0);
        (self.idle, self.with_a_heap, self.unclaimed) = (0, 0, false);
        (self.rakers_look, self.heaps_waiting, self.over) = (false, 0, false);
        (self.resting, self.night_since, self.last_zone, self.finish) = (None, None, None, None);
        (self.nights, self.day_start, self.next_switch) = (0, 0, 0);
        (self.next_load, self.next_heap, self.next_place_in_queue, self.in_play) = (0, 0, 0, 0);
        (self.completion, self.nights_at_completion) = (0, 0);
        self.note_what_is_unusual();
    }

    fn draw_deliveries(&mut self, plan: &Plan, streams: &Streams) {
        self.next_delivery = 0;
        self.deliveries.clear();
        for d in &plan.deliveries {
            let at = d.at + crate::plan::round_to_us(d.late.at(streams.lateness(d.number)) * 1e6);
            let volume = d.volume_m3 * plan.factors.bulk.at(streams.bulk(d.number));
            self.deliveries.push((at, d.pile, volume));
            self.piles[d.pile].due += 1;
        }
        self.deliveries.sort_by_key(|(at, ..)| *at);
    }
}
