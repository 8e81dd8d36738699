//! The state of a loader.

use super::load::{Load, Machine};
use super::options::Options;
use crate::activity::{LoaderActivity, Micros};
use crate::plan::{Leg, Plan};
use crate::streams::Streams;
use rand_xoshiro::Xoshiro256PlusPlus;

#[derive(Clone, Debug)]
pub(super) struct LoaderState {
    pub(super) activity: LoaderActivity,
    pub(super) since: Micros,
    pub(super) times: [Micros; LoaderActivity::COUNT + 1],
    pub(super) stage: Stage,
    pub(super) going: Going,
    /// The zone it is bound for or at.
    pub(super) zone: usize,
    /// The pile it loads at, comes from or returns to.
    pub(super) pile: usize,
    /// The way between the two.
    pub(super) route: usize,
    /// The way of the next load, while it drives back by `route`.
    pub(super) next_route: usize,
    /// The face, pass or room it stands at or holds.
    pub(super) server: usize,
    pub(super) load: Load,
    pub(super) leg: LegState,
    /// When the last passing on the way back began and ended; perhaps ahead of the clock.
    pub(super) passing: (Micros, Micros),
    /// Operating time left to the next stoppage.
    pub(super) until_stop: Micros,
    pub(super) stoppages: Xoshiro256PlusPlus,
    pub(super) place_in_queue: u64,
    pub(super) loads: u64,
    /// Chosen zone and pile, once it has chosen and until it dumps.
    pub(super) bound: bool,
    /// Driving back with nothing more to load.
    pub(super) last_leg: bool,
    pub(super) machine: Machine,
    pub(super) options: Options,
}

/// Where a loader is on its way.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct LegState {
    pub(super) driving: Micros,
    pub(super) driven: Micros,
    /// Travel factor and the noise of this leg, for its passings.
    pub(super) factor: f64,
    /// The stretch it is on.
    pub(super) stretch: usize,
}

/// Where a loader stands in its cycle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stage {
    SetUp,
    Choosing(Place),
    AwaitingDelivery(Place),
    AtFace,
    Loading,
    Driving(Leg),
    AtPass(Leg),
    Passing(Leg),
    AtRoom,
    Dumping,
    Done,
    CleanUp,
}

/// Where a loader stands when it chooses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    Pile,
    Zone,
}

/// Whether a step runs, or is held by a stoppage; with the time the step has left after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Going {
    On,
    UntilStoppage(Micros),
    Stopped(Micros),
}

impl LoaderState {
    pub(super) fn new(machine: Machine) -> Self {
        Self {
            activity: LoaderActivity::SetUp,
            since: 0,
            times: [0; _],
            stage: Stage::SetUp,
            going: Going::On,
            zone: 0,
            pile: 0,
            route: 0,
            next_route: 0,
            server: 0,
            load: Load::default(),
            leg: LegState::default(),
            passing: (0, 0),
            until_stop: Micros::MAX,
            stoppages: rand::SeedableRng::seed_from_u64(0),
            place_in_queue: 0,
            loads: 0,
            bound: false,
            last_leg: false,
            machine,
            options: Options::default(),
        }
    }

    pub(super) fn reset(&mut self, plan: &Plan, streams: &Streams, loader: usize) {
        (self.activity, self.since, self.times) = (LoaderActivity::SetUp, 0, [0; _]);
        (self.stage, self.going, self.bound, self.last_leg) = (Stage::SetUp, Going::On, false, false);
        (self.zone, self.pile, self.route, self.loads) = (0, 0, 0, 0);
        self.until_stop = Micros::MAX;
        if plan.loaders[loader].stoppages.is_some() {
            self.stoppages = streams.stoppages(loader);
            self.draw_gap(plan, loader);
        }
    }
}
