//! The two jobs in odem-rs: every loader and raker is a process, written as an `async` function.

use crate::contest::Outcome;
use crate::draws::*;
use anyhow::anyhow;
use odem_rs::prelude::*;
use odem_rs::sync::channel::shared::{Receiver, Sender};
use std::cell::{Cell, RefCell};
use std::collections::VecDeque;

// One loader, one raker.

#[derive(Config)]
struct Pair {
    places: Control<u32>,
}

pub fn one_and_one(draws: Draws) -> anyhow::Result<Outcome> {
    Simulator::new(Pair { places: Control::new(ROOM) })
        .run(async |sim| {
            let (heaps, to_rake) = channel(VecDeque::new());
            let ((), outcome) = sim.fork(lone_loader(sim, draws, heaps)).and(lone_raker(sim, to_rake)).await;
            outcome
        })
        .map_err(|deadlock| anyhow!("{deadlock}"))
}

async fn lone_loader(sim: &Sim<Pair>, mut draws: Draws, heaps: Sender<f64>) {
    let places = &sim.global().places;
    let mut need_m3 = NEED_M3;
    while need_m3 >= NOTHING_M3 {
        let load = draws.next_load();
        let volume_m3 = (load.fill * HEAPED_M3).min(need_m3);
        need_m3 -= volume_m3;
        sim.advance(LOADING_S * load.loading).await;
        sim.advance(HAUL_S * load.haul).await;
        until!(places > 0).await;
        places.update(|n| n - 1);
        sim.advance(DUMP_S * load.dump).await;
        if heaps.send(volume_m3 * RAKING_S_PER_M3 * load.raking).await.is_err() {
            return;
        }
        sim.advance(RETURN_S * load.back).await;
    }
}

/// Rakes until the loader has left and no heap is left.
async fn lone_raker(sim: &Sim<Pair>, heaps: Receiver<f64>) -> Outcome {
    let mut outcome = Outcome { loads: 0, completion_s: 0.0 };
    while let Ok(raking_s) = heaps.recv().await {
        sim.advance(raking_s).await;
        sim.global().places.update(|n| n + 1);
        outcome = Outcome { loads: outcome.loads + 1, completion_s: sim.now() };
    }
    outcome
}

// Four loaders at one face, one gate both ways, three zones in turn, six rakers.

#[derive(Config)]
struct Yard {
    draws: RefCell<Draws>,
    face: Facility,
    gate: Facility,
    zones: [Zone; ZONES],
    /// The zone chosen last by any loader.
    last: Cell<usize>,
    /// Heaps nobody rakes yet, oldest first.
    waiting: RefCell<VecDeque<Heap>>,
    /// The zone in which a raker stands idle.
    idle_in: [Cell<Option<usize>>; RAKERS],
    /// How an idle raker is given a heap.
    calls: Vec<Sender<Heap>>,
    loads: Cell<u32>,
    in_play: Cell<u32>,
    over: Control<bool>,
}

struct Zone {
    /// What is neither placed nor on its way.
    open_m3: Cell<f64>,
    /// Loaders bound for it.
    bound: Cell<u32>,
    places: Control<u32>,
}

#[derive(Clone, Copy, Debug)]
struct Heap {
    zone: usize,
    raking_s: f64,
}

impl Zone {
    fn new() -> Self {
        Self { open_m3: Cell::new(ZONE_NEED_M3), bound: Cell::new(0), places: Control::new(ROOM) }
    }

    fn wants(&self) -> bool {
        self.open_m3.get() >= NOTHING_M3
    }

    fn has_room(&self) -> bool {
        self.places.get() > self.bound.get()
    }
}

impl Yard {
    fn new(draws: Draws, calls: Vec<Sender<Heap>>) -> Self {
        Self {
            draws: RefCell::new(draws),
            face: Facility::new(),
            gate: Facility::new(),
            zones: std::array::from_fn(|_| Zone::new()),
            last: Cell::new(ZONES - 1),
            waiting: RefCell::default(),
            idle_in: Default::default(),
            calls,
            loads: Cell::new(0),
            in_play: Cell::new(0),
            over: Control::new(false),
        }
    }

    /// The next zone in turn that wants more and has room; if none has room, the next that wants more.
    fn choose(&self) -> Option<usize> {
        let in_turn = (1..=ZONES).map(|n| (self.last.get() + n) % ZONES);
        let mut wanting = in_turn.filter(|zone| self.zones[*zone].wants());
        let zone = wanting.clone().find(|zone| self.zones[*zone].has_room()).or_else(|| wanting.next())?;
        self.zones[zone].bound.update(|n| n + 1);
        self.last.set(zone);
        Some(zone)
    }

    /// A raker who stands in the zone takes it, or else any who is idle; the lower number first.
    fn heap_is_there(&self, heap: Heap) {
        let mut idle = (0..RAKERS).filter(|raker| self.idle_in[*raker].get().is_some());
        let here = idle.clone().find(|raker| self.idle_in[*raker].get() == Some(heap.zone));
        match here.or_else(|| idle.next()) {
            Some(raker) => {
                self.idle_in[raker].set(None);
                self.calls[raker].try_send(heap).ok();
            }
            None => self.waiting.borrow_mut().push_back(heap),
        }
    }

    /// The oldest heap of the zone, or else of any.
    fn next_heap(&self, zone: usize) -> Option<Heap> {
        let mut waiting = self.waiting.borrow_mut();
        let here = waiting.iter().position(|heap| heap.zone == zone);
        waiting.remove(here.unwrap_or(0))
    }

    fn heap_is_raked_out(&self, zone: usize) {
        self.zones[zone].places.update(|n| n + 1);
        self.in_play.update(|n| n - 1);
        if self.in_play.get() == 0 && !self.zones.iter().any(Zone::wants) {
            self.over.set(true);
        }
    }
}

struct Loader;

impl Behavior<Yard> for Loader {
    type Output = ();

    async fn actions(&self, sim: &Sim<Yard>) {
        let yard = sim.global();
        let mut chosen = yard.choose();
        while let Some(mut zone) = chosen {
            let turn = yard.face.seize().await;
            if !yard.zones[zone].wants() {
                yard.zones[zone].bound.update(|n| n - 1);
                let Some(another) = yard.choose() else { return };
                zone = another;
            }
            let Zone { open_m3, bound, places } = &yard.zones[zone];
            let load = yard.draws.borrow_mut().next_load();
            let volume_m3 = (load.fill * HEAPED_M3).min(open_m3.get());
            open_m3.update(|open| open - volume_m3);
            yard.loads.update(|n| n + 1);
            yard.in_play.update(|n| n + 1);
            sim.advance(LOADING_S * load.loading).await;
            turn.release();

            drive(sim, HAUL_S, load.haul).await;
            until!(places > 0).await;
            places.update(|n| n - 1);
            bound.update(|n| n - 1);
            sim.advance(DUMP_S * load.dump).await;
            yard.heap_is_there(Heap { zone, raking_s: volume_m3 * RAKING_S_PER_M3 * load.raking });
            chosen = yard.choose();
            drive(sim, RETURN_S, load.back).await;
        }
    }
}

async fn drive(sim: &Sim<Yard>, leg_s: f64, noise: f64) {
    sim.advance(leg_s / 2.0 * noise).await;
    let turn = sim.global().gate.seize().await;
    sim.advance(GATE_S * noise).await;
    turn.release();
    sim.advance(leg_s / 2.0 * noise).await;
}

struct Raker {
    number: usize,
    calls: Receiver<Heap>,
}

impl Behavior<Yard> for Raker {
    type Output = ();

    async fn actions(&self, sim: &Sim<Yard>) {
        let yard = sim.global();
        let mut zone = self.number / 2;
        loop {
            let heap = match yard.next_heap(zone) {
                Some(heap) => heap,
                None => {
                    yard.idle_in[self.number].set(Some(zone));
                    let Ok(heap) = self.calls.recv().await else { return };
                    heap
                }
            };
            zone = heap.zone;
            sim.advance(heap.raking_s).await;
            yard.heap_is_raked_out(zone);
        }
    }
}

pub fn yard(draws: Draws) -> anyhow::Result<Outcome> {
    let (calls, called): (Vec<_>, Vec<_>) = (0..RAKERS).map(|_| channel(VecDeque::new())).unzip();
    Simulator::new(Yard::new(draws, calls))
        .run(async |sim| {
            for _ in 0..LOADERS {
                sim.spawn(Loader);
            }
            for (number, calls) in called.into_iter().enumerate() {
                sim.spawn(Raker { number, calls });
            }
            let over = &sim.global().over;
            until!(over).await;
            Outcome { loads: sim.global().loads.get(), completion_s: sim.now() }
        })
        .map_err(|deadlock| anyhow!("{deadlock}"))
}
