//! A loader's cycle: choose, load, haul, dump, return.

use super::choose::{Choice, Ground};
use super::state::{Going, Heap, Leg, LegState, LoaderState, Place, Stage};
use super::{MOST_LOADS, Run};
use crate::activity::{LoaderActivity, Micros};
use crate::luck::Kind;
use crate::observe::{Event, Observer};
use crate::plan::{Plan, Route, whole};
use rand_distr::{Distribution as _, Exp1};

impl LoaderState {
    /// Draws the operating time to the next stoppage.
    pub(super) fn draw_gap(&mut self, plan: &Plan, loader: usize) {
        if let Some((mean_us, _)) = &plan.loaders[loader].stoppages {
            let gap: f64 = Exp1.sample(&mut self.stoppages);
            self.until_stop = whole(gap * mean_us);
        }
    }
}

impl<O: Observer> Run<'_, O> {
    /// From now on the loader does this; the time up to now goes into its books.
    pub(super) fn turn(&mut self, loader: usize, activity: LoaderActivity) {
        let (now, state) = (self.now, &mut self.s.loaders[loader]);
        state.times[state.activity as usize] += now - state.since;
        (state.activity, state.since) = (activity, now);
        let (s, places) = (&*self.s, self.plan.piles.len());
        self.watcher.see(now, || {
            let state = &s.loaders[loader];
            let in_hand = state.load_in_hand();
            Event::Loader {
                loader,
                activity,
                load: in_hand,
                zone: (in_hand.is_some() || state.bound).then_some(state.zone),
                stockpile: state.knows_its_pile().then_some(state.pile),
                pass: match (state.stage, state.server) {
                    (Stage::AtPass(_) | Stage::Passing(_), server) => server.checked_sub(places),
                    _ => None,
                },
                volume_m3: in_hand.map_or(0.0, |_| state.volume),
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

    /// Begins a timed step of the loader.
    pub(super) fn step(&mut self, loader: usize, stage: Stage, length: Micros) {
        self.s.loaders[loader].stage = stage;
        self.turn(loader, stage.activity());
        self.run_on(loader, length);
    }

    /// Enters the end of something that lasts this long from now.
    #[inline]
    pub(super) fn schedule(&mut self, slot: usize, length: Micros) {
        self.s.instant |= length == 0;
        self.s.calendar.set(slot, self.now + length);
    }

    /// Lets the step in hand run for what is left of it, or to the next stoppage.
    fn run_on(&mut self, loader: usize, length: Micros) {
        let slot = self.s.slot_of_loader(loader);
        let state = &mut self.s.loaders[loader];
        let stretch = if state.until_stop < length {
            state.going = Going::UntilStoppage(length - state.until_stop);
            state.until_stop
        } else {
            state.going = Going::On;
            state.until_stop -= length;
            length
        };
        self.schedule(slot, stretch);
    }

    /// The loader's event has come: a step, or what interrupts it, is over.
    pub(super) fn loader_ends(&mut self, loader: usize) {
        let slot = self.s.slot_of_loader(loader);
        self.s.calendar.clear_slot(slot);
        match self.s.loaders[loader].going {
            Going::On => self.step_ends(loader),
            Going::UntilStoppage(left) => {
                let plan = self.plan;
                let state = &mut self.s.loaders[loader];
                state.going = Going::Stopped(left);
                let length = plan.loaders[loader].stoppages.as_ref().map_or(0, |(_, lengths)| {
                    whole(lengths.at(rand::Rng::next_u64(&mut state.stoppages)) * 1e6)
                });
                state.draw_gap(plan, loader);
                self.turn(loader, LoaderActivity::Stopped);
                self.schedule(slot, length);
            }
            Going::Stopped(left) => {
                let activity = self.s.loaders[loader].stage.activity();
                self.turn(loader, activity);
                self.run_on(loader, left);
            }
        }
    }

    fn step_ends(&mut self, loader: usize) {
        let stage = self.s.loaders[loader].stage;
        match stage {
            Stage::SetUp => self.s.loaders[loader].stage = Stage::Choosing(Place::Pile),
            Stage::Loading | Stage::Passing(_) => self.release(self.s.loaders[loader].server),
            Stage::Dumping => self.dump_ends(loader),
            _ => {}
        }
        self.s.pending |= 1 << loader;
    }

    fn dump_ends(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        let heap =
            Heap { load: state.load, luck: state.luck, volume: state.volume, number: self.s.next_heap };
        let zone = state.zone;
        self.s.next_heap += 1;
        let place = &mut self.s.zones[zone];
        place.dumping -= 1;
        if place.dumping == 0 && self.plan.stand_clear {
            self.rakers_step_in(zone);
        }
        if self.plan.all_spread {
            self.heap_is_raked_out(heap, zone);
        } else {
            self.s.zones[zone].heaps.push_back(heap);
            self.s.heaps_waiting += 1;
            self.s.rakers_look = true;
        }
    }

    /// The lowest loader that goes on now takes its next step.
    pub(super) fn a_loader_goes_on(&mut self) -> bool {
        while self.s.pending != 0 {
            let loader = self.s.pending.trailing_zeros() as usize;
            self.s.pending &= self.s.pending - 1;
            if self.goes_on(loader) {
                return true;
            }
        }
        false
    }

    fn goes_on(&mut self, loader: usize) -> bool {
        match self.s.loaders[loader].stage {
            Stage::Choosing(_) if self.s.resting.is_some() && !self.s.over => {
                self.s.held |= 1 << loader;
                self.turn(loader, LoaderActivity::OnBreak);
                return false;
            }
            Stage::Choosing(place) => self.choose_and_go(loader, place),
            Stage::Dumping => self.choose_and_go(loader, Place::Zone),
            Stage::Loading => self.set_out(loader, Leg::Out),
            Stage::Driving(leg) => self.part_driven(loader, leg),
            Stage::Passing(leg) => {
                self.s.loaders[loader].leg.passed += 1;
                self.drive_on(loader, leg);
            }
            _ => return false,
        }
        true
    }

    fn choose_and_go(&mut self, loader: usize, place: Place) {
        let came_from = (self.s.loaders[loader].zone, self.s.loaders[loader].route);
        match (self.choose(loader), place) {
            (Choice::Go { .. }, Place::Pile) => self.arrive_at_face(loader),
            (Choice::Go { .. }, Place::Zone) => self.set_out_back(loader, came_from),
            (Choice::AwaitDelivery, _) => {
                self.s.loaders[loader].stage = Stage::AwaitingDelivery(place);
                self.turn_to_waiting(loader);
            }
            (Choice::Nothing, Place::Pile) => self.done(loader),
            (Choice::Nothing, Place::Zone) => {
                self.s.loaders[loader].last_leg = true;
                self.set_out(loader, Leg::Back);
            }
        }
    }

    /// Returns to the pile of the next load. Where no way leads there from this zone, it goes back the way it came, and
    /// the stretch from pile to pile costs nothing.
    fn set_out_back(&mut self, loader: usize, (zone, came_by): (usize, usize)) {
        let next = self.s.loaders[loader].route;
        let pile = self.s.loaders[loader].pile;
        self.s.loaders[loader].route = self.plan.routes.between(loader, zone, pile).unwrap_or(came_by);
        self.set_out(loader, Leg::Back);
        self.s.loaders[loader].next_route = next;
    }

    fn set_out(&mut self, loader: usize, leg: Leg) {
        let (plan, state) = (self.plan, &mut self.s.loaders[loader]);
        let route = plan.routes.get(state.route);
        let (mean_us, noise) = match leg {
            Leg::Out => (route.haul_us, plan.noise.haul.at(state.luck.bits(Kind::Haul))),
            Leg::Back => (route.return_us, plan.noise.return_leg.at(state.luck.bits(Kind::Return))),
        };
        let factor = self.pace.travel * noise;
        state.next_route = state.route;
        state.leg = LegState { driving: whole(mean_us * factor), driven: 0, factor, passed: 0 };
        self.drive_on(loader, leg);
    }

    /// Drives to the next pass, or to the end of the leg.
    fn drive_on(&mut self, loader: usize, leg: Leg) {
        let state = &mut self.s.loaders[loader];
        let share =
            self.plan.routes.get(state.route).passes(leg).get(state.leg.passed).map(|(_, share)| *share);
        let to = share.map_or(state.leg.driving, |share| whole(state.leg.driving as f64 * share));
        let part = to - state.leg.driven;
        state.leg.driven = to;
        self.step(loader, Stage::Driving(leg), part);
    }

    fn part_driven(&mut self, loader: usize, leg: Leg) {
        let state = &self.s.loaders[loader];
        let next = self.plan.routes.get(state.route).passes(leg).get(state.leg.passed);
        match (next, leg) {
            (Some((pass, _)), _) => self.arrive(loader, Stage::AtPass(leg), self.pass(*pass)),
            (None, Leg::Out) => self.arrive(loader, Stage::AtRoom, self.room_of(state.zone)),
            (None, Leg::Back) if state.last_leg || self.s.over => self.done(loader),
            (None, Leg::Back) => {
                self.s.loaders[loader].route = state.next_route;
                self.arrive_at_face(loader);
            }
        }
    }

    fn arrive_at_face(&mut self, loader: usize) {
        self.arrive(loader, Stage::AtFace, self.face_of(self.s.loaders[loader].pile));
    }

    /// The loader's turn at the face: it loads, or finds that it must choose again.
    pub(super) fn turn_at_face(&mut self, loader: usize) {
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        if self.s.wants(self.plan, zone) && self.s.has_material(self.plan, pile, zone) {
            return self.load(loader);
        }
        self.unbind(loader);
        match self.choose(loader) {
            Choice::Go { .. } if self.s.loaders[loader].pile == pile => self.load(loader),
            Choice::Go { .. } => self.arrive_at_face(loader),
            Choice::AwaitDelivery => {
                self.s.loaders[loader].stage = Stage::AwaitingDelivery(Place::Pile);
                self.turn_to_waiting(loader);
            }
            Choice::Nothing => self.done(loader),
        }
    }

    fn load(&mut self, loader: usize) {
        if self.s.next_load == MOST_LOADS {
            return;
        }
        let plan = self.plan;
        let machine = &plan.loaders[loader];
        let (zone, pile) = (self.s.loaders[loader].zone, self.s.loaders[loader].pile);
        let luck = self.luck.load(self.s.next_load);
        let fill = self.pace.fill * plan.noise.fill.at(luck.bits(Kind::Fill));
        let open = if self.s.takes_surplus(plan, zone) { f64::INFINITY } else { self.s.zones[zone].open };
        let volume = (fill * machine.heaped_m3).min(machine.lift_m3).min(self.s.piles[pile].stock).min(open);
        self.s.piles[pile].stock -= volume;
        self.s.zones[zone].open -= volume;
        let state = &mut self.s.loaders[loader];
        (state.load, state.luck, state.volume) = (self.s.next_load, luck, volume);
        state.loads += 1;
        self.s.next_load += 1;
        self.s.in_play += 1;
        self.occupy(loader, self.face_of(pile));
        if plan.surplus_zone.is_some_and(|surplus| self.s.wants(plan, surplus)) {
            self.wake_those_who_wait();
        }
        let noise = plan.noise.loading.at(luck.bits(Kind::Loading));
        self.step(loader, Stage::Loading, whole(machine.load_us * (self.pace.load * noise)));
    }

    /// The loader's turn at the pass.
    pub(super) fn go_through(&mut self, loader: usize, leg: Leg, server: usize) {
        let pass = &self.plan.passes[server - self.plan.piles.len()];
        let length = whole(pass.passing_us * self.s.loaders[loader].leg.factor);
        self.occupy(loader, server);
        self.step(loader, Stage::Passing(leg), length);
    }

    /// The loader's turn in the zone.
    pub(super) fn dump(&mut self, loader: usize, server: usize) {
        self.occupy(loader, server);
        self.unbind(loader);
        let (plan, state) = (self.plan, &self.s.loaders[loader]);
        let (zone, machine) = (state.zone, &plan.loaders[loader]);
        let mean_us = machine.dump_us + machine.spread_us_per_m3 * state.volume;
        let noise = plan.noise.dump.at(state.luck.bits(Kind::Dump));
        self.s.zones[zone].dumping += 1;
        if plan.stand_clear && self.s.zones[zone].dumping == 1 {
            self.rakers_stand_clear(zone);
        }
        self.step(loader, Stage::Dumping, whole(mean_us * (self.pace.load * noise)));
    }

    fn done(&mut self, loader: usize) {
        self.s.loaders[loader].stage = Stage::Done;
        if self.s.cleaning() {
            self.s.loaders[loader].stage = Stage::CleanUp;
        }
        let activity = self.s.loaders[loader].stage.activity();
        self.turn(loader, activity);
        self.look_whether_over();
    }

    /// Notes the end of the work: nothing in play, and nothing more to load for anybody.
    pub(super) fn look_whether_over(&mut self) {
        if self.s.in_play == 0 && !self.s.over && self.s.nothing_more(self.plan) {
            self.s.over = true;
        }
    }
}

impl Route {
    /// Passes of a leg with their share of it, in the order met.
    #[inline]
    pub(super) fn passes(&self, leg: Leg) -> &[(usize, f64)] {
        match leg {
            Leg::Out => &self.passes,
            Leg::Back => &self.passes_back,
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
            | Stage::Dumping => Some(self.load),
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
            Self::Driving(Leg::Out) => LoaderActivity::Hauling,
            Self::Driving(Leg::Back) => LoaderActivity::Returning,
            Self::AtPass(_) => LoaderActivity::WaitingForPass,
            Self::Passing(_) => LoaderActivity::Passing,
            Self::AtRoom => LoaderActivity::WaitingForRoom,
            Self::Dumping => LoaderActivity::Dumping,
            Self::Done => LoaderActivity::Done,
            Self::CleanUp => LoaderActivity::CleanUp,
        }
    }
}
