//! The two jobs in NeXosim: loaders, rakers, face, gate and a foreman are actors that send one another messages.

use crate::contest::Outcome;
use crate::draws::*;
use anyhow::{Context as _, anyhow};
use nexosim::model::{Context, Model, schedulable};
use nexosim::ports::{EventSinkReader, Output, SinkState, UniRequestor, event_slot};
use nexosim::simulation::{Mailbox, SimInit};
use nexosim::time::MonotonicTime;
use serde::{Deserialize, Serialize};
use std::collections::VecDeque;
use std::time::Duration;

const IN_FUTURE: &str = "no step takes no time";

fn seconds(s: f64) -> Duration {
    Duration::from_secs_f64(s)
}

fn since_start_s(now: MonotonicTime) -> f64 {
    now.duration_since(MonotonicTime::EPOCH).as_secs_f64()
}

// One loader, one raker.

#[derive(Serialize, Deserialize)]
struct LoneLoader {
    draws: Draws,
    load: Load,
    volume_m3: f64,
    need_m3: f64,
    places: u32,
    waits_for_room: bool,
    heap: Output<f64>,
}

#[Model]
impl LoneLoader {
    fn new(draws: Draws) -> Self {
        Self {
            draws,
            load: Load::default(),
            volume_m3: 0.0,
            need_m3: NEED_M3,
            places: ROOM,
            waits_for_room: false,
            heap: Output::new(),
        }
    }

    #[nexosim(init)]
    async fn begin(&mut self, cx: &Context<Self>) {
        self.back((), cx);
    }

    #[nexosim(schedulable)]
    fn back(&mut self, _: (), cx: &Context<Self>) {
        if self.need_m3 < NOTHING_M3 {
            return;
        }
        self.load = self.draws.next_load();
        self.volume_m3 = (self.load.fill * HEAPED_M3).min(self.need_m3);
        self.need_m3 -= self.volume_m3;
        let loading = seconds(LOADING_S * self.load.loading);
        cx.schedule_event(loading, schedulable!(Self::loaded), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    fn loaded(&mut self, _: (), cx: &Context<Self>) {
        let haul = seconds(HAUL_S * self.load.haul);
        cx.schedule_event(haul, schedulable!(Self::arrived), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    fn arrived(&mut self, _: (), cx: &Context<Self>) {
        if self.places > 0 {
            self.dump(cx);
        } else {
            self.waits_for_room = true;
        }
    }

    fn dump(&mut self, cx: &Context<Self>) {
        self.places -= 1;
        let dump = seconds(DUMP_S * self.load.dump);
        cx.schedule_event(dump, schedulable!(Self::dumped), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn dumped(&mut self, _: (), cx: &Context<Self>) {
        self.heap.send(self.volume_m3 * RAKING_S_PER_M3 * self.load.raking).await;
        let back = seconds(RETURN_S * self.load.back);
        cx.schedule_event(back, schedulable!(Self::back), ()).expect(IN_FUTURE);
    }

    /// A heap is raked out [input port].
    fn place_is_free(&mut self, _: (), cx: &Context<Self>) {
        self.places += 1;
        if std::mem::take(&mut self.waits_for_room) {
            self.dump(cx);
        }
    }
}

#[derive(Default, Serialize, Deserialize)]
struct LoneRaker {
    heaps: VecDeque<f64>,
    rakes: bool,
    loads: u32,
    free_place: Output<()>,
    raked_out: Output<(u32, f64)>,
}

#[Model]
impl LoneRaker {
    /// A heap is there, and how long it takes to rake out [input port].
    fn heap(&mut self, raking_s: f64, cx: &Context<Self>) {
        self.heaps.push_back(raking_s);
        if !self.rakes {
            self.rake(cx);
        }
    }

    fn rake(&mut self, cx: &Context<Self>) {
        let next = self.heaps.pop_front();
        self.rakes = next.is_some();
        if let Some(raking_s) = next {
            cx.schedule_event(seconds(raking_s), schedulable!(Self::raked), ()).expect(IN_FUTURE);
        }
    }

    #[nexosim(schedulable)]
    async fn raked(&mut self, _: (), cx: &Context<Self>) {
        self.loads += 1;
        self.free_place.send(()).await;
        self.raked_out.send((self.loads, since_start_s(cx.time()))).await;
        self.rake(cx);
    }
}

pub fn one_and_one(draws: Draws) -> anyhow::Result<Outcome> {
    let (mut loader, mut raker) = (LoneLoader::new(draws), LoneRaker::default());
    let (loader_mailbox, raker_mailbox) = (Mailbox::new(), Mailbox::new());
    loader.heap.connect(LoneRaker::heap, &raker_mailbox);
    raker.free_place.connect(LoneLoader::place_is_free, &loader_mailbox);
    // Keeps what was written last.
    let (sink, mut last) = event_slot(SinkState::Enabled);
    raker.raked_out.connect_sink(sink);
    let mut simulation = SimInit::with_num_threads(1)
        .add_model(loader, loader_mailbox, "loader")
        .add_model(raker, raker_mailbox, "raker")
        .init(MonotonicTime::EPOCH)
        .map_err(|error| anyhow!("{error}"))?;
    simulation.run().map_err(|error| anyhow!("{error}"))?;
    let (loads, completion_s) = last.try_read().context("no heap was raked out")?;
    Ok(Outcome { loads, completion_s })
}

// Four loaders at one face, one gate both ways, three zones in turn, six rakers.

/// Serves one at a time, first come first served: the face, the gate.
#[derive(Default, Serialize, Deserialize)]
struct Server {
    busy: bool,
    line: VecDeque<usize>,
    turns: Vec<Output<()>>,
}

#[Model]
impl Server {
    async fn join(&mut self, loader: usize) {
        if self.busy {
            self.line.push_back(loader);
        } else {
            self.busy = true;
            self.turns[loader].send(()).await;
        }
    }

    async fn leave(&mut self) {
        match self.line.pop_front() {
            Some(loader) => self.turns[loader].send(()).await,
            None => self.busy = false,
        }
    }
}

#[derive(Clone, Copy, PartialEq, Serialize, Deserialize)]
enum Leg {
    Haul,
    Return,
}

#[derive(Serialize, Deserialize)]
struct Loader {
    number: usize,
    draws: Draws,
    load: Load,
    volume_m3: f64,
    zone: Option<usize>,
    leg: Leg,
    choose: UniRequestor<(), Option<usize>>,
    take: UniRequestor<(usize, f64), Option<(usize, f64)>>,
    join_face: Output<usize>,
    leave_face: Output<()>,
    join_gate: Output<usize>,
    leave_gate: Output<()>,
    ask_room: Output<(usize, usize)>,
    heap: Output<Heap>,
}

#[Model]
impl Loader {
    fn new(number: usize, draws: Draws, foreman: &Mailbox<Foreman>) -> Self {
        Self {
            number,
            draws,
            load: Load::default(),
            volume_m3: 0.0,
            zone: None,
            leg: Leg::Return,
            choose: UniRequestor::new(Foreman::choose, foreman),
            take: UniRequestor::new(Foreman::take, foreman),
            join_face: Output::new(),
            leave_face: Output::new(),
            join_gate: Output::new(),
            leave_gate: Output::new(),
            ask_room: Output::new(),
            heap: Output::new(),
        }
    }

    #[nexosim(init)]
    async fn begin(&mut self) {
        self.zone = self.choose.send(()).await;
        self.join_face.send(self.number).await;
    }

    /// Its turn at the face [input port].
    async fn load(&mut self, _: (), cx: &Context<Self>) {
        let Some(zone) = self.zone else { return };
        self.load = self.draws.next_load();
        let Some((zone, volume_m3)) = self.take.send((zone, self.load.fill * HEAPED_M3)).await else {
            return self.leave_face.send(()).await;
        };
        (self.zone, self.volume_m3) = (Some(zone), volume_m3);
        let loading = seconds(LOADING_S * self.load.loading);
        cx.schedule_event(loading, schedulable!(Self::loaded), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn loaded(&mut self, _: (), cx: &Context<Self>) {
        self.leave_face.send(()).await;
        self.set_out(Leg::Haul, cx);
    }

    fn set_out(&mut self, leg: Leg, cx: &Context<Self>) {
        self.leg = leg;
        cx.schedule_event(self.half_way(), schedulable!(Self::at_gate), ()).expect(IN_FUTURE);
    }

    fn noise(&self) -> f64 {
        if self.leg == Leg::Haul { self.load.haul } else { self.load.back }
    }

    fn half_way(&self) -> Duration {
        let whole_s = if self.leg == Leg::Haul { HAUL_S } else { RETURN_S };
        seconds(whole_s / 2.0 * self.noise())
    }

    #[nexosim(schedulable)]
    async fn at_gate(&mut self) {
        self.join_gate.send(self.number).await;
    }

    /// Its turn at the gate [input port].
    fn pass(&mut self, _: (), cx: &Context<Self>) {
        let passing = seconds(GATE_S * self.noise());
        cx.schedule_event(passing, schedulable!(Self::through), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn through(&mut self, _: (), cx: &Context<Self>) {
        self.leave_gate.send(()).await;
        cx.schedule_event(self.half_way(), schedulable!(Self::arrived), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn arrived(&mut self) {
        match (self.zone, self.leg) {
            (Some(zone), Leg::Haul) => self.ask_room.send((self.number, zone)).await,
            (Some(_), Leg::Return) => self.join_face.send(self.number).await,
            (None, _) => {}
        }
    }

    /// There is room for its heap [input port].
    fn dump(&mut self, _: (), cx: &Context<Self>) {
        let dump = seconds(DUMP_S * self.load.dump);
        cx.schedule_event(dump, schedulable!(Self::dumped), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn dumped(&mut self, _: (), cx: &Context<Self>) {
        let Some(zone) = self.zone else { return };
        let raking_s = self.volume_m3 * RAKING_S_PER_M3 * self.load.raking;
        self.heap.send(Heap { zone, raking_s }).await;
        self.zone = self.choose.send(()).await;
        self.set_out(Leg::Return, cx);
    }
}

#[derive(Clone, Copy, Serialize, Deserialize)]
struct Heap {
    zone: usize,
    raking_s: f64,
}

#[derive(Serialize, Deserialize)]
struct Raker {
    number: usize,
    raked_out: Output<usize>,
}

#[Model]
impl Raker {
    /// Rakes out a heap in this time [input port].
    fn rake(&mut self, raking_s: f64, cx: &Context<Self>) {
        cx.schedule_event(seconds(raking_s), schedulable!(Self::raked), ()).expect(IN_FUTURE);
    }

    #[nexosim(schedulable)]
    async fn raked(&mut self) {
        self.raked_out.send(self.number).await;
    }
}

#[derive(Serialize, Deserialize)]
struct Zone {
    /// What is neither placed nor on its way.
    open_m3: f64,
    /// Loaders bound for it.
    bound: u32,
    /// Heaps that lie there.
    lying: u32,
    /// Loaders waiting for room.
    line: VecDeque<usize>,
}

impl Zone {
    fn wants(&self) -> bool {
        self.open_m3 >= NOTHING_M3
    }
}

/// Knows the zones and says who goes where.
#[derive(Serialize, Deserialize)]
struct Foreman {
    zones: Vec<Zone>,
    /// The zone chosen last by any loader.
    last: usize,
    /// Heaps nobody rakes yet, oldest first.
    waiting: VecDeque<Heap>,
    /// Where each raker worked last, and whether it is idle.
    stands_in: Vec<usize>,
    idle: Vec<bool>,
    loads: u32,
    in_play: u32,
    room: Vec<Output<()>>,
    rake: Vec<Output<f64>>,
    over: Output<(u32, f64)>,
}

#[Model]
impl Foreman {
    fn new() -> Self {
        let zone = || Zone { open_m3: ZONE_NEED_M3, bound: 0, lying: 0, line: VecDeque::new() };
        Self {
            zones: (0..ZONES).map(|_| zone()).collect(),
            last: ZONES - 1,
            waiting: VecDeque::new(),
            stands_in: (0..RAKERS).map(|raker| raker / 2).collect(),
            idle: vec![true; RAKERS],
            loads: 0,
            in_play: 0,
            room: Vec::new(),
            rake: Vec::new(),
            over: Output::new(),
        }
    }

    fn next_zone(&mut self) -> Option<usize> {
        let in_turn = (1..=ZONES).map(|n| (self.last + n) % ZONES);
        let mut wanting = in_turn.filter(|zone| self.zones[*zone].wants());
        let has_room = |zone: &usize| self.zones[*zone].lying + self.zones[*zone].bound < ROOM;
        let zone = wanting.clone().find(has_room).or_else(|| wanting.next())?;
        self.zones[zone].bound += 1;
        self.last = zone;
        Some(zone)
    }

    /// The next zone in turn that wants more and has room; if none has room, the next that wants more [replier port].
    async fn choose(&mut self, _: ()) -> Option<usize> {
        self.next_zone()
    }

    /// A loader at the face takes so much for the zone, or for another if that one wants no more [replier port].
    async fn take(&mut self, (mut zone, volume_m3): (usize, f64)) -> Option<(usize, f64)> {
        if !self.zones[zone].wants() {
            self.zones[zone].bound -= 1;
            zone = self.next_zone()?;
        }
        let volume_m3 = volume_m3.min(self.zones[zone].open_m3);
        self.zones[zone].open_m3 -= volume_m3;
        self.loads += 1;
        self.in_play += 1;
        Some((zone, volume_m3))
    }

    /// A loader wants to dump [input port].
    async fn ask_room(&mut self, (loader, zone): (usize, usize)) {
        self.zones[zone].line.push_back(loader);
        self.make_use_of_room(zone).await;
    }

    async fn make_use_of_room(&mut self, zone: usize) {
        let state = &mut self.zones[zone];
        if state.lying < ROOM
            && let Some(loader) = state.line.pop_front()
        {
            state.lying += 1;
            state.bound -= 1;
            self.room[loader].send(()).await;
        }
    }

    /// A heap is there: a raker who stands in its zone takes it, or else any who is idle [input port].
    async fn heap(&mut self, heap: Heap) {
        let mut idle = (0..RAKERS).filter(|raker| self.idle[*raker]);
        let here = idle.clone().find(|raker| self.stands_in[*raker] == heap.zone);
        match here.or_else(|| idle.next()) {
            Some(raker) => self.send_raker(raker, heap).await,
            None => self.waiting.push_back(heap),
        }
    }

    async fn send_raker(&mut self, raker: usize, heap: Heap) {
        (self.idle[raker], self.stands_in[raker]) = (false, heap.zone);
        self.rake[raker].send(heap.raking_s).await;
    }

    /// A raker has raked out a heap, and takes the oldest of its zone or else of any [input port].
    async fn raked_out(&mut self, raker: usize, cx: &Context<Self>) {
        let zone = self.stands_in[raker];
        self.zones[zone].lying -= 1;
        self.in_play -= 1;
        self.idle[raker] = true;
        self.make_use_of_room(zone).await;
        let here = self.waiting.iter().position(|heap| heap.zone == zone);
        if let Some(heap) = self.waiting.remove(here.unwrap_or(0)) {
            self.send_raker(raker, heap).await;
        }
        if self.in_play == 0 && !self.zones.iter().any(Zone::wants) {
            self.over.send((self.loads, since_start_s(cx.time()))).await;
        }
    }
}

pub fn yard(mut draws: Draws) -> anyhow::Result<Outcome> {
    let (mut foreman, mut face, mut gate) = (Foreman::new(), Server::default(), Server::default());
    let (foreman_mailbox, face_mailbox, gate_mailbox) = (Mailbox::new(), Mailbox::new(), Mailbox::new());
    let mut bench = SimInit::with_num_threads(1);
    for number in 0..LOADERS {
        let (mut loader, mailbox) = (Loader::new(number, draws.fork(), &foreman_mailbox), Mailbox::new());
        loader.join_face.connect(Server::join, &face_mailbox);
        loader.leave_face.connect(Server::leave, &face_mailbox);
        loader.join_gate.connect(Server::join, &gate_mailbox);
        loader.leave_gate.connect(Server::leave, &gate_mailbox);
        loader.ask_room.connect(Foreman::ask_room, &foreman_mailbox);
        loader.heap.connect(Foreman::heap, &foreman_mailbox);
        face.turns.push(to(Loader::load, &mailbox));
        gate.turns.push(to(Loader::pass, &mailbox));
        foreman.room.push(to(Loader::dump, &mailbox));
        bench = bench.add_model(loader, mailbox, "loader");
    }
    for number in 0..RAKERS {
        let (mut raker, mailbox) = (Raker { number, raked_out: Output::new() }, Mailbox::new());
        raker.raked_out.connect(Foreman::raked_out, &foreman_mailbox);
        foreman.rake.push(to(Raker::rake, &mailbox));
        bench = bench.add_model(raker, mailbox, "raker");
    }
    let (sink, mut over) = event_slot(SinkState::Enabled);
    foreman.over.connect_sink(sink);
    let mut simulation = bench
        .add_model(foreman, foreman_mailbox, "foreman")
        .add_model(face, face_mailbox, "face")
        .add_model(gate, gate_mailbox, "gate")
        .init(MonotonicTime::EPOCH)
        .map_err(|error| anyhow!("{error}"))?;
    simulation.run().map_err(|error| anyhow!("{error}"))?;
    let (loads, completion_s) = over.try_read().context("the job was not done")?;
    Ok(Outcome { loads, completion_s })
}

/// A port that leads to one input of one actor.
fn to<M: Model, T: Clone + Send + 'static, S: Send + 'static>(
    input: impl for<'a> nexosim::ports::InputFn<'a, M, T, S> + Clone,
    mailbox: &Mailbox<M>,
) -> Output<T> {
    let mut port = Output::new();
    port.connect(input, mailbox);
    port
}
