//! The loader-and-raker line: one loader, at most one crew, one pile, one zone, and no clock to interfere.
//!
//! Nobody can overtake anybody, so a run is a recursion over the loads and needs no events. With `b` places for heaps, the
//! loader's arrival `A`, dump `D` and raking `W` of load `n`: `S_n = max(A_n, R_{n-b})`, `F_n = S_n + D_n`,
//! `R_n = max(F_n, R_{n-1}) + W_n`. Standing clear stops the rakers while the loader dumps: by a clock of their own that
//! stands still meanwhile, the recursion is the same. The outcome is the event loop's to the last bit (`tests/model/short_ways.rs`).

use super::tally::Tally;
use super::{MOST_LOADS, Once, Pace};
use crate::activity::{LoaderActivity as L, LoaderTimes, Micros, RakerActivity as R, RakerTimes};
use crate::calendar::END_OF_TIME;
use crate::luck::{Kind, LoadLuck, RunLuck};
use crate::outcome::{Books, Moment, Outcome};
use crate::plan::{LoaderPlan, Plan, Route, whole};

/// The state of a run, kept from run to run so that none allocates.
#[derive(Clone, Debug, Default)]
pub(super) struct Line {
    /// Heaps: when each is raked out, and how much in all by then. From `settled` on by the rakers' clock.
    heaps: Vec<(Micros, f64)>,
    settled: usize,
    /// How long the rakers' clock has stood still.
    stood: Micros,
    loader: LoaderTimes,
    crew: RakerTimes,
}

/// A run under way.
struct Run<'a> {
    plan: &'a Plan,
    machine: &'a LoaderPlan,
    route: &'a Route,
    us_per_m3: f64,
    pace: Pace,
    s: &'a mut Line,
    now: Micros,
    /// When the raker will be done with all that is dumped, by the rakers' clock.
    hands_free: Micros,
    placed: f64,
}

/// The way back of the last load, which the end of the job may cut off.
struct LastLeg {
    from: Micros,
    driving: Micros,
    factor: f64,
}

impl Line {
    /// Makes one run and adds its books to `books`. Nothing is added if it must be given up; the event loop says why.
    pub(super) fn run(
        &mut self,
        plan: &Plan,
        luck: RunLuck,
        pace: Pace,
        run: u32,
        books: &mut Books,
    ) -> Option<Outcome> {
        let once = Once::new(plan, &luck);
        let room = plan.zones[0].room as usize;
        let needs = plan.zones[0].need_m3 * once.need;
        // The surplus zone takes all there is.
        let mut open = plan.surplus_zone.map_or(needs, |_| f64::INFINITY);
        let mut stock = plan.stock(0, &luck);
        self.heaps.clear();
        (self.settled, self.stood, self.loader, self.crew) = (0, 0, [0; _], [0; _]);
        let mut run_of = Run {
            plan,
            machine: &plan.loaders[0],
            route: plan.routes.get(0),
            us_per_m3: plan.crews.first().map_or(0.0, |crew| crew.us_per_m3),
            pace,
            s: self,
            now: once.set_up,
            hands_free: 0,
            placed: 0.0,
        };
        let (mut loads, mut last_leg) = (0, None);
        while open >= plan.nothing_m3 && stock >= plan.nothing_m3 {
            let luck = luck.load(loads);
            let volume = run_of.fill(luck).min(stock).min(open);
            run_of.load_and_haul(luck);
            run_of.dump(luck, volume, room);
            last_leg = Some(run_of.go_back(luck));
            (open, stock, loads) = (open - volume, stock - volume, loads + 1);
            if loads == MOST_LOADS || run_of.now > END_OF_TIME / 4 {
                return None;
            }
        }
        let (finish, placed) = (run_of.close(&once, last_leg), run_of.placed);
        let moment = |at| Moment { working: at, clock: at };
        let completion = moment(self.heaps.last().map_or(once.set_up, |(at, _)| *at));
        let mut tally = Tally::new(plan, run, completion, moment(finish), &self.heaps, books);
        tally.loader(0, &self.loader, u64::from(loads));
        if !plan.crews.is_empty() {
            tally.crew(0, &self.crew);
        }
        tally.zone(0, u64::from(loads), placed, needs);
        Some(tally.outcome(loads, stock))
    }

    /// When the heap was or will be raked out, as far as that is known.
    fn raked_out(&self, heap: usize) -> Micros {
        self.heaps[heap].0 + if heap < self.settled { 0 } else { self.stood }
    }

    /// Heaps raked out by now on the rakers' clock are settled. Returns whether one is left.
    fn settle(&mut self, clock: Micros) -> bool {
        while let Some((at, _)) = self.heaps.get_mut(self.settled)
            && *at <= clock
        {
            *at += self.stood;
            self.settled += 1;
        }
        self.settled < self.heaps.len()
    }
}

impl Run<'_> {
    #[inline]
    fn spend(&mut self, on: L, time: Micros) {
        self.s.loader[on as usize] += time;
        self.now += time;
    }

    #[inline]
    fn fill(&self, luck: LoadLuck) -> f64 {
        let fill = self.pace.fill * self.plan.noise.fill.at(luck.bits(Kind::Fill));
        (fill * self.machine.heaped_m3).min(self.machine.lift_m3)
    }

    #[inline]
    fn load_and_haul(&mut self, luck: LoadLuck) {
        let noise = &self.plan.noise;
        let loading = self.machine.load_us * (self.pace.load * noise.loading.at(luck.bits(Kind::Loading)));
        self.spend(L::Loading, whole(loading));
        let factor = self.pace.travel * noise.haul.at(luck.bits(Kind::Haul));
        self.spend(L::Hauling, whole(self.route.haul_us * factor));
        for pass in &self.route.passes {
            self.spend(L::Passing, self.passing(pass, factor));
        }
    }

    /// Waits for room and dumps; the raking of the heap is foreseen.
    #[inline]
    fn dump(&mut self, luck: LoadLuck, volume: f64, room: usize) {
        let (noise, machine) = (&self.plan.noise, self.machine);
        if let Some(makes_room) = self.s.heaps.len().checked_sub(room) {
            let wait = self.s.raked_out(makes_room) - self.now;
            self.spend(L::WaitingForRoom, wait.max(0));
        }
        let mean_us = machine.dump_us + machine.spread_us_per_m3 * volume;
        let length = whole(mean_us * (self.pace.load * noise.dump.at(luck.bits(Kind::Dump))));
        if self.plan.stand_clear {
            let rakes = self.s.settle(self.now - self.s.stood);
            self.s.crew[R::StandingClear as usize] += if rakes { length } else { 0 };
            self.s.stood += length;
        }
        self.spend(L::Dumping, length);
        let mean_us = self.us_per_m3 * volume;
        let raking = whole(mean_us * (self.pace.rake * noise.raking.at(luck.bits(Kind::Raking))));
        self.s.crew[R::Raking as usize] += raking;
        let dumped = self.now - self.s.stood;
        self.hands_free = self.hands_free.max(dumped) + raking;
        self.placed += volume;
        self.s.heaps.push((self.hands_free, self.placed));
    }

    #[inline]
    fn go_back(&mut self, luck: LoadLuck) -> LastLeg {
        let factor = self.pace.travel * self.plan.noise.return_leg.at(luck.bits(Kind::Return));
        let leg = LastLeg { from: self.now, driving: whole(self.route.return_us * factor), factor };
        self.spend(L::Returning, leg.driving);
        for pass in &self.route.passes_back {
            self.spend(L::Passing, self.passing(pass, factor));
        }
        leg
    }

    #[inline]
    fn passing(&self, (pass, _): &(usize, f64), factor: f64) -> Micros {
        whole(self.plan.passes[*pass].passing_us * factor)
    }

    /// Everybody cleans up once the last heap is raked out, a loader still on its way as soon as it is back. Returns when
    /// all is done.
    fn close(&mut self, once: &Once, last_leg: Option<LastLeg>) -> Micros {
        self.s.settle(Micros::MAX);
        let over = self.s.heaps.last().map_or(once.set_up, |(at, _)| *at);
        let finish = over + once.clean_up;
        let back = self.now.min(finish);
        if let Some(leg) = last_leg {
            self.cut_off(&leg, finish);
        }
        let crew = &mut self.s.crew;
        crew[R::Waiting as usize] =
            over - once.set_up - crew[R::Raking as usize] - crew[R::StandingClear as usize];
        (crew[R::SetUp as usize], crew[R::CleanUp as usize]) = (once.set_up, once.clean_up);
        let loader = &mut self.s.loader;
        loader[L::SetUp as usize] = once.set_up;
        loader[L::Done as usize] = (over - back).max(0);
        loader[L::CleanUp as usize] = finish - back.max(over);
        finish
    }

    /// Takes what lies beyond the finish out of the books.
    fn cut_off(&mut self, leg: &LastLeg, finish: Micros) {
        let (mut at, mut driven) = (leg.from, 0);
        let mut cut = |on: L, length: Micros| {
            let begin = at.max(finish);
            at += length;
            self.s.loader[on as usize] -= (at - begin).max(0);
        };
        for pass in &self.route.passes_back {
            let by_then = whole(leg.driving as f64 * pass.1);
            cut(L::Returning, by_then - driven);
            driven = by_then;
            cut(L::Passing, whole(self.plan.passes[pass.0].passing_us * leg.factor));
        }
        cut(L::Returning, leg.driving - driven);
    }
}
