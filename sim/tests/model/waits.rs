//! What must hold between any two events of any run: nobody stands idle without a cause, and queues are first come,
//! first served. Read from the event log alone, on every run any test here looks at.

use super::log::clock;
use super::time_accounts::SEED;
use sim::*;

/// What everybody does at one time.
struct Scene<'a> {
    job: &'a Job,
    loaders: Vec<LoaderNow>,
    rakers: Vec<RakerNow>,
    /// Heaps that lie in each zone, dumped and not raked out; with whether a raker has taken them.
    heaps: Vec<Vec<(u32, bool)>>,
    /// Loads raked out.
    gone: Vec<u32>,
    /// Not yet loaded for each zone.
    open: Vec<f64>,
    stock: Vec<f64>,
    due: Vec<usize>,
    pauses: bool,
}

#[derive(Clone, Copy)]
struct LoaderNow {
    activity: LoaderActivity,
    /// What it did when a stoppage came.
    holds: LoaderActivity,
    load: Option<u32>,
    zone: Option<usize>,
    pile: Option<usize>,
    pass: Option<usize>,
}

#[derive(Clone, Copy)]
struct RakerNow {
    activity: RakerActivity,
    zone: usize,
}

/// What is wrong with how long anybody waits.
pub(crate) fn complaints(job: &Job, run: &Replay) -> Vec<String> {
    let mut all = Vec::new();
    let mut scene = Scene::new(job, run.outcome.run);
    for (i, entry) in run.log.iter().enumerate() {
        scene.take_in(&entry.event);
        if matches!(entry.event, Event::Loader { activity: LoaderActivity::CleanUp, .. })
            || matches!(entry.event, Event::Raker { activity: RakerActivity::CleanUp, .. })
        {
            break;
        }
        if run.log.get(i + 1).is_some_and(|next| next.at > entry.at) {
            all.extend(scene.complaints().into_iter().map(|said| format!("{}: {said}", clock(entry.at))));
        }
    }
    queues(run, &mut all);
    all
}

impl<'a> Scene<'a> {
    fn new(job: &'a Job, run: u32) -> Self {
        let streams = Streams::new(SEED, run);
        let need = Sampler::new(&job.chance.days.need).at(streams.factor(Factor::Need));
        let bulk = Sampler::new(&job.chance.days.bulk);
        let mut number = 0;
        let mut stock = Vec::new();
        for pile in &job.stockpiles {
            stock.push(pile.on_hand_m3 * bulk.at(streams.bulk(number)));
            number += 1 + pile.deliveries.len();
        }
        let nobody = LoaderNow {
            activity: LoaderActivity::SetUp,
            holds: LoaderActivity::SetUp,
            load: None,
            zone: None,
            pile: None,
            pass: None,
        };
        let raker = |raker: &Raker| RakerNow { activity: RakerActivity::SetUp, zone: raker.start_zone };
        Self {
            job,
            loaders: vec![nobody; job.loaders.len()],
            rakers: job.rakers.iter().map(raker).collect(),
            heaps: vec![vec![]; job.zones.len()],
            gone: vec![],
            open: job.zones.iter().map(|zone| zone.need_m3 * need).collect(),
            stock,
            due: job.stockpiles.iter().map(|pile| pile.deliveries.len()).collect(),
            pauses: false,
        }
    }

    fn take_in(&mut self, event: &Event) {
        match *event {
            Event::Loader { loader, activity, load, zone, stockpile, pass, volume_m3 } => {
                let before = self.loaders[loader];
                if activity == LoaderActivity::Loading && before.load != load {
                    self.open[zone.unwrap()] -= volume_m3;
                    self.stock[stockpile.unwrap()] -= volume_m3;
                }
                let holds = if activity == LoaderActivity::Stopped { before.holds } else { activity };
                if before.holds == LoaderActivity::Dumping && holds != LoaderActivity::Dumping {
                    let (zone, load) = (before.zone.unwrap(), before.load.unwrap());
                    let known = self.gone.contains(&load) || self.heaps[zone].iter().any(|(l, _)| *l == load);
                    if !known {
                        self.heaps[zone].push((load, false));
                    }
                }
                self.loaders[loader] = LoaderNow { activity, holds, load, zone, pile: stockpile, pass };
            }
            Event::Raker { raker, activity, load, zone } => {
                self.rakers[raker] = RakerNow { activity, zone };
                if let Some(load) = load {
                    // A heap may be taken before the loader that dumped it has turned to its next step.
                    match self.heaps[zone].iter_mut().find(|(l, _)| *l == load) {
                        Some((_, taken)) => *taken = true,
                        None => self.heaps[zone].push((load, true)),
                    }
                }
            }
            Event::HeapRakedOut { load, zone, .. } => {
                self.gone.push(load);
                self.heaps[zone].retain(|(l, _)| *l != load);
            }
            Event::Delivered { stockpile, volume_m3 } => {
                self.stock[stockpile] += volume_m3;
                self.due[stockpile] -= 1;
            }
            Event::WorkPauses { .. } => self.pauses = true,
            Event::WorkResumes => self.pauses = false,
        }
    }

    fn complaints(&self) -> Vec<String> {
        let mut all = Vec::new();
        for (i, loader) in self.loaders.iter().enumerate() {
            if let Some(why) = self.stands_needlessly(loader) {
                all.push(format!("loader {} {why}", i + 1));
            }
        }
        for (i, raker) in self.rakers.iter().enumerate() {
            if let Some(why) = self.idles(raker) {
                all.push(format!("raker {} {why}", i + 1));
            }
        }
        all
    }

    fn at(&self, doing: LoaderActivity, here: impl Fn(&LoaderNow) -> bool) -> usize {
        self.loaders.iter().filter(|loader| loader.holds == doing && here(loader)).count()
    }

    fn stands_needlessly(&self, loader: &LoaderNow) -> Option<&'static str> {
        use LoaderActivity as L;
        let waits = matches!(
            loader.activity,
            L::WaitingForFace | L::WaitingForPass | L::WaitingForRoom | L::WaitingForDelivery
        );
        if waits && self.pauses {
            return Some("waits in a rest");
        }
        let full = match loader.activity {
            L::WaitingForFace => {
                let pile = loader.pile?;
                self.at(L::Loading, |l| l.pile == Some(pile)) >= self.job.stockpiles[pile].face as usize
            }
            L::WaitingForPass => {
                let pass = loader.pass?;
                self.at(L::Passing, |l| l.pass == Some(pass)) >= self.job.passes[pass].at_once as usize
            }
            L::WaitingForRoom => {
                let zone = loader.zone?;
                let there = self.at(L::Dumping, |l| l.zone == Some(zone)) + self.heaps[zone].len();
                there >= self.job.zones[zone].room.map_or(usize::MAX, |room| room as usize)
            }
            L::WaitingForDelivery => !self.could_load(loader, false),
            L::Done if self.job.finish == FinishRule::AreaCovered => !self.could_load(loader, true),
            _ => true,
        };
        (!full).then_some("stands idle though there is a place, or material, for it")
    }

    /// Whether some zone lacks material that the loader could fetch now, or (`later`) from what is due.
    fn could_load(&self, loader: &LoaderNow, later: bool) -> bool {
        let machine = self.loaders.iter().position(|l| std::ptr::eq(l, loader));
        let Some(machine) = machine.map(|i| &self.job.loaders[i]) else { return false };
        let smallest = self.job.loaders.iter().map(|l| l.heaped_m3).fold(f64::INFINITY, f64::min);
        let something = 0.05 * smallest + 1e-9;
        self.job.zones.iter().zip(&self.open).any(|(zone, open)| {
            let reached = zone.ways.iter().filter(|way| machine.fits(self.job, way));
            let has = |pile: usize| self.stock[pile] >= something || (later && self.due[pile] > 0);
            *open >= something && reached.map(|way| way.stockpile).any(has)
        })
    }

    fn idles(&self, raker: &RakerNow) -> Option<&'static str> {
        use RakerActivity as R;
        if self.pauses && matches!(raker.activity, R::Raking | R::Waiting | R::Walking | R::StandingClear) {
            return Some("is at work in a rest");
        }
        let dumping = self.at(LoaderActivity::Dumping, |l| l.zone == Some(raker.zone)) > 0;
        match raker.activity {
            R::StandingClear if !dumping || !self.job.raking.stand_clear => Some("stands clear of nothing"),
            R::Waiting if self.heaps.iter().enumerate().any(|(zone, _)| self.calls(zone, raker)) => {
                Some("waits though a heap waits for a raker")
            }
            _ => None,
        }
    }

    /// Whether a zone has a heap for this raker: one not taken, and elsewhere one to which nobody walks.
    fn calls(&self, zone: usize, raker: &RakerNow) -> bool {
        let untaken = self.heaps[zone].iter().filter(|(_, taken)| !taken).count();
        let walking = |r: &&RakerNow| r.activity == RakerActivity::Walking && r.zone == zone;
        let walkers = self.rakers.iter().filter(walking).count();
        if raker.zone == zone { untaken > 0 } else { untaken > walkers }
    }
}

/// Where a loader stands in line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Line {
    Face(usize),
    Pass(usize),
    Room(usize),
}

/// Who joins a line first is served first.
fn queues(run: &Replay, all: &mut Vec<String>) {
    use LoaderActivity as L;
    let mut served: Vec<(Line, Duration, Duration, usize)> = Vec::new();
    for who in 0..run.accounts.loaders.len() {
        let mut joined: Option<(Line, Duration)> = None;
        let mut before: Option<(L, Option<u32>)> = None;
        for entry in &run.log {
            let Event::Loader { loader, activity, load, zone, stockpile, pass, .. } = entry.event else {
                continue;
            };
            if loader != who || activity == L::Stopped {
                continue;
            }
            let line = match (activity, pass, load) {
                (L::WaitingForPass | L::Passing, Some(pass), _) => Some(Line::Pass(pass)),
                (L::WaitingForRoom | L::Dumping, _, _) => zone.map(Line::Room),
                (L::WaitingForFace | L::Loading, _, _) => stockpile.map(Line::Face),
                (L::OnBreak | L::Night, Some(pass), _) => Some(Line::Pass(pass)),
                (L::OnBreak | L::Night, None, Some(_)) => zone.map(Line::Room),
                (L::OnBreak | L::Night, None, None) => stockpile.map(Line::Face),
                _ => None,
            };
            let stands = !matches!(activity, L::Loading | L::Passing | L::Dumping);
            // The same step again is the rest of one that was interrupted.
            let goes_on = !stands && before == Some((activity, load));
            before = Some((activity, load));
            if goes_on {
                continue;
            }
            joined = line.map(|line| match joined {
                Some((old, since)) if old == line => (line, since),
                _ => (line, entry.at),
            });
            if let (Some((line, since)), false) = (joined, stands) {
                served.push((line, since, entry.at, who));
                joined = None;
            }
        }
    }
    served.sort_unstable();
    for (i, a) in served.iter().enumerate() {
        let overtaken = served[i + 1..].iter().take_while(|b| b.0 == a.0).find(|b| a.1 < b.1 && b.2 < a.2);
        if let Some(b) = overtaken {
            let (first, second) = (a.3 + 1, b.3 + 1);
            all.push(format!(
                "{:?}: loader {second} (from {}) is served before loader {first} (from {})",
                a.0,
                clock(b.1),
                clock(a.1)
            ));
        }
    }
}
