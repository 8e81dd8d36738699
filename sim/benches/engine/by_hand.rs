//! *One and one* as somebody would write it who needs that job and nothing else: the recursion of the model's section 8,
//! with the same draws and the same time accounts, and none of the branches for gates, breaks, stoppages and other crews.

use super::floors::Tables;
use sim::{
    Duration, Job, LoadDraw, LoaderActivity as L, Outcome, PROGRESS_PARTS, RakerActivity as R, Streams,
};

type Micros = i64;

/// The job's figures and tables.
pub struct ByHand {
    tables: Tables,
    heaped_m3: f64,
    fill_factor: f64,
    need_m3: f64,
    on_hand_m3: f64,
    load_us: f64,
    haul_us: f64,
    dump_us: f64,
    return_us: f64,
    rake_us_per_m3: f64,
}

/// What a run comes to.
#[derive(Clone, Debug, Default)]
pub struct TimeAccounts {
    pub completion: Micros,
    loads: u32,
    placed_m3: f64,
    left_over_m3: f64,
    loading: Micros,
    hauling: Micros,
    waiting_for_room: Micros,
    dumping: Micros,
    returning: Micros,
    done: Micros,
    raking: Micros,
    waiting_for_heaps: Micros,
    progress: [Micros; PROGRESS_PARTS],
}

/// Whether the progress of a run is kept besides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep {
    Accounts,
    AccountsAndProgress,
}

impl ByHand {
    pub fn new(job: &Job) -> Self {
        let (loader, zone) = (&job.loaders[0], &job.zones[0]);
        let distance_m = zone.ways[0].distance_m;
        assert_eq!(zone.room, Some(3));
        Self {
            tables: Tables::of(&job.chance.loads),
            heaped_m3: loader.heaped_m3,
            fill_factor: job.material.fill_factor,
            need_m3: zone.need_m3,
            on_hand_m3: job.stockpiles[0].on_hand_m3,
            load_us: loader.load_s * 1e6,
            haul_us: distance_m / loader.loaded_m_per_s * 1e6,
            dump_us: loader.dump_s * 1e6,
            return_us: distance_m / loader.empty_m_per_s * 1e6,
            rake_us_per_m3: 3600e6 / job.rakers[0].rate_m3_per_h,
        }
    }

    /// All of so many runs, one after another.
    pub fn runs(&self, seed: u64, runs: u32, keep: Keep) -> Vec<TimeAccounts> {
        let mut heaps = Vec::new();
        let run = |run| match keep {
            Keep::Accounts => self.run(Streams::new(seed, run), |_, _| {}),
            Keep::AccountsAndProgress => {
                heaps.clear();
                let mut accounts = self.run(Streams::new(seed, run), |at, placed| heaps.push((at, placed)));
                accounts.progress = progress(&heaps, accounts.placed_m3);
                accounts
            }
        };
        (0..runs).map(run).collect()
    }

    #[inline]
    fn run(&self, streams: Streams, mut raked_out: impl FnMut(Micros, f64)) -> TimeAccounts {
        let Tables { fill, quarter, leg, rough } = &self.tables;
        let nothing_m3 = 0.05 * self.heaped_m3;
        let mut accounts = TimeAccounts::default();
        let (mut open, mut stock, mut placed) = (self.need_m3, self.on_hand_m3, 0.0);
        // When the last three heaps are raked out, the newest first: there is room for three.
        let mut raked = [0; 3];
        let mut at_pile = 0;
        while open >= nothing_m3 && stock >= nothing_m3 {
            let load = streams.load(accounts.loads);
            let volume =
                (self.fill_factor * fill.at(load.bits(LoadDraw::Fill)) * self.heaped_m3).min(stock).min(open);
            let loading = whole(self.load_us * quarter.at(load.bits(LoadDraw::Loading)));
            let hauling = whole(self.haul_us * leg.at(load.bits(LoadDraw::Haul)));
            let dumping = whole(self.dump_us * rough.at(load.bits(LoadDraw::Dump)));
            let raking = whole(self.rake_us_per_m3 * volume * rough.at(load.bits(LoadDraw::Raking)));
            let returning = whole(self.return_us * leg.at(load.bits(LoadDraw::Return)));
            let arrives = at_pile + loading + hauling;
            let starts = arrives.max(raked[2]);
            let dumped = starts + dumping;
            raked = [dumped.max(raked[0]) + raking, raked[0], raked[1]];
            at_pile = dumped + returning;
            open -= volume;
            stock -= volume;
            placed += volume;
            raked_out(raked[0], placed);
            accounts.loads += 1;
            accounts.loading += loading;
            accounts.hauling += hauling;
            accounts.waiting_for_room += starts - arrives;
            accounts.dumping += dumping;
            accounts.raking += raking;
            accounts.returning += returning;
        }
        accounts.completion = raked[0];
        accounts.placed_m3 = placed;
        accounts.left_over_m3 = stock;
        accounts.returning -= (at_pile - raked[0]).max(0);
        accounts.done = (raked[0] - at_pile).max(0);
        accounts.waiting_for_heaps = raked[0] - accounts.raking;
        accounts
    }
}

/// When each twentieth was raked out.
#[inline]
fn progress(heaps: &[(Micros, f64)], placed_m3: f64) -> [Micros; PROGRESS_PARTS] {
    let part = placed_m3 * (1.0 - 1e-12) / PROGRESS_PARTS as f64;
    let mut heap = 0;
    std::array::from_fn(|i| {
        while heaps[heap].1 < part * (i + 1) as f64 {
            heap += 1;
        }
        heaps[heap].0
    })
}

#[inline]
fn whole(us: f64) -> Micros {
    (us + 0.5) as Micros
}

impl TimeAccounts {
    /// The engine must say the same, to the last bit.
    pub fn check(&self, engine: &Outcome) {
        let own = (self.completion, self.loads, self.placed_m3, self.left_over_m3);
        let o = engine;
        assert_eq!(
            own,
            (o.completion.working.as_micros(), o.loads, o.placed_m3, o.left_over_m3),
            "run {}",
            o.run
        );
        let loader = |activity: L| o.loaders.time(activity).as_micros();
        let own =
            [self.loading, self.hauling, self.waiting_for_room, self.dumping, self.returning, self.done];
        let engines = [L::Loading, L::Hauling, L::WaitingForRoom, L::Dumping, L::Returning, L::Done];
        assert_eq!(own, engines.map(loader), "run {}", o.run);
        let raker = [R::Raking, R::Waiting].map(|activity| o.rakers.time(activity).as_micros());
        assert_eq!([self.raking, self.waiting_for_heaps], raker, "run {}", o.run);
        assert_eq!(self.progress, o.progress.map(Duration::as_micros), "run {}", o.run);
    }
}
