//! A job made ready to run: refused if the model has no meaning for it, then compiled into tables and microseconds.

mod refuse;
mod routes;

use crate::activity::{Micros, SECOND};
use crate::calendar::END_OF_TIME;
use crate::chance::Distribution;
use crate::error::JobError;
use crate::job::{FillOrder, FinishRule, Job, Loader};
use crate::outcome::Accounts;
use crate::sampler::Sampler;
use crate::streams::Streams;
use std::fmt::{self, Write as _};
use std::sync::Arc;

pub(crate) use routes::{Leg, Reaches, Routes};

/// Most loaders in a job.
pub const MOST_LOADERS: usize = 64;
/// Most rakers in a job.
pub const MOST_RAKERS: usize = 64;

/// A job made ready to run: distributions compiled into tables, ways sorted, everything in microseconds.
#[derive(Clone, Debug)]
pub struct Plan {
    pub(crate) loaders: Vec<LoaderPlan>,
    pub(crate) crews: Vec<CrewPlan>,
    pub(crate) rakers: usize,
    pub(crate) zones: Vec<ZonePlan>,
    pub(crate) piles: Vec<PilePlan>,
    /// How many may go through each pass at once.
    pub(crate) passes: Vec<u32>,
    pub(crate) deliveries: Vec<DeliveryPlan>,
    pub(crate) routes: Routes,
    pub(crate) fill_factor: f64,
    pub(crate) stand_clear: bool,
    pub(crate) fatigue: Option<crate::job::Fatigue>,
    pub(crate) fill_order: FillOrder,
    pub(crate) surplus_zone: Option<usize>,
    /// What remains of a need or a pile counts as nothing below this \[m3\].
    pub(crate) negligible_m3: f64,
    /// The loaders spread all of it: a heap is raked out when its dump ends.
    pub(crate) all_spread: bool,
    /// Every change between work and rest of one day, from its start \[us\].
    pub(crate) daily: Vec<(Micros, Switch)>,
    pub(crate) factors: Factors,
    pub(crate) noise: Noise,
    pub(crate) set_up: Arc<Sampler>,
    pub(crate) clean_up: Arc<Sampler>,
    pub(crate) fuel_per_l: f64,
    pub(crate) material_cost: f64,
    fingerprint: u64,
    compiled: Compiled,
}

/// A change between work and rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Switch {
    BreakBegins,
    BreakEnds,
    DayEnds,
    /// Also the start of a new day; counts the next day's times from here.
    DayStarts,
}

#[derive(Clone, Debug)]
pub(crate) struct LoaderPlan {
    pub(crate) heaped_m3: f64,
    pub(crate) lift_m3: f64,
    pub(crate) load_us: f64,
    pub(crate) dump_us: f64,
    /// Added to the dump for each m3 of the load, the loader's share of the spreading \[us/m3\].
    pub(crate) spread_us_per_m3: f64,
    pub(crate) stoppages: Option<(f64, Arc<Sampler>)>,
    pub(crate) cost_per_h: f64,
    pub(crate) fuel_working_l_per_h: f64,
    pub(crate) fuel_idling_l_per_h: f64,
}

/// One raker, or all of them if they work together.
#[derive(Clone, Debug)]
pub(crate) struct CrewPlan {
    pub(crate) first_raker: usize,
    pub(crate) rakers: usize,
    /// Fresh, for the rakers' share of the load \[us/m3\].
    pub(crate) us_per_m3: f64,
    pub(crate) start_zone: usize,
    pub(crate) us_per_m: f64,
    pub(crate) cost_per_h: f64,
}

#[derive(Clone, Debug)]
pub(crate) struct ZonePlan {
    pub(crate) need_m3: f64,
    pub(crate) room: u32,
    pub(crate) walks_m: Vec<f64>,
}

#[derive(Clone, Debug)]
pub(crate) struct PilePlan {
    pub(crate) on_hand_m3: f64,
    pub(crate) face: u32,
    /// Its stock's number among the deliveries.
    pub(crate) number: usize,
}

#[derive(Clone, Debug)]
pub(crate) struct DeliveryPlan {
    pub(crate) pile: usize,
    pub(crate) at: Micros,
    pub(crate) late: Arc<Sampler>,
    pub(crate) volume_m3: f64,
    pub(crate) number: usize,
}

#[derive(Clone, Debug)]
pub(crate) struct Factors {
    pub(crate) day: Arc<Sampler>,
    pub(crate) loader_pace: Arc<Sampler>,
    pub(crate) travel: Arc<Sampler>,
    pub(crate) raker_pace: Arc<Sampler>,
    pub(crate) fill: Arc<Sampler>,
    pub(crate) need: Arc<Sampler>,
    pub(crate) bulk: Arc<Sampler>,
}

#[derive(Clone, Debug)]
pub(crate) struct Noise {
    pub(crate) fill: Arc<Sampler>,
    pub(crate) loading: Arc<Sampler>,
    pub(crate) haul: Arc<Sampler>,
    pub(crate) dump: Arc<Sampler>,
    pub(crate) return_leg: Arc<Sampler>,
    pub(crate) raking: Arc<Sampler>,
}

/// Distributions met so far with their tables, so that none is compiled twice.
#[derive(Clone, Debug, Default)]
struct Compiled(Vec<(Distribution, Arc<Sampler>)>);

impl Compiled {
    fn sampler(&mut self, law: &Distribution) -> Arc<Sampler> {
        if let Some((_, sampler)) = self.0.iter().find(|(known, _)| known == law) {
            return Arc::clone(sampler);
        }
        let sampler = Arc::new(Sampler::new(law));
        self.0.push((law.clone(), Arc::clone(&sampler)));
        sampler
    }
}

impl Plan {
    /// Makes a job ready.
    ///
    /// # Errors
    /// If the model has no meaning for it; the message names the thing and what is wrong with it.
    pub fn new(job: &Job) -> Result<Self, JobError> {
        Self::compile(job, Compiled::default())
    }

    /// Whether [`Plan::new`] would make a job ready, without the work of doing so.
    ///
    /// # Errors
    /// As [`Plan::new`].
    pub fn check(job: &Job) -> Result<(), JobError> {
        refuse::check(job)
    }

    /// Makes a variant of this plan's job ready, sharing the tables of the distributions they have in common.
    ///
    /// # Errors
    /// As [`Plan::new`].
    pub fn variant(&self, job: &Job) -> Result<Self, JobError> {
        Self::compile(job, self.compiled.clone())
    }

    fn compile(job: &Job, mut tables: Compiled) -> Result<Self, JobError> {
        Self::check(job)?;
        let (piles, deliveries) = piles(job, &mut tables);
        let (days, loads) = (&job.chance.days, &job.chance.loads);
        let mut table = |law: &Distribution| tables.sampler(law);
        let factors = Factors {
            day: table(&days.day),
            loader_pace: table(&days.loader_pace),
            travel: table(&days.travel),
            raker_pace: table(&days.raker_pace),
            fill: table(&days.fill),
            need: table(&days.need),
            bulk: table(&days.bulk),
        };
        let noise = Noise {
            fill: table(&loads.fill),
            loading: table(&loads.loading),
            haul: table(&loads.haul),
            dump: table(&loads.dump),
            return_leg: table(&loads.return_leg),
            raking: table(&loads.raking),
        };
        Ok(Self {
            loaders: job.loaders.iter().map(|l| LoaderPlan::new(job, l, &mut tables)).collect(),
            crews: crews(job),
            rakers: job.rakers.len(),
            zones: job.zones.iter().map(ZonePlan::new).collect(),
            piles,
            passes: job.passes.iter().map(|p| p.at_once).collect(),
            deliveries,
            routes: Routes::new(job),
            fill_factor: job.material.fill_factor,
            stand_clear: job.raking.stand_clear,
            fatigue: job.raking.fatigue,
            fill_order: job.fill_order,
            surplus_zone: match job.finish {
                FinishRule::AreaCovered => None,
                FinishRule::PileCleared { surplus_zone } => Some(surplus_zone),
            },
            negligible_m3: job.negligible_m3(),
            all_spread: job.raking.spread_share == 1.0,
            daily: daily(job),
            factors,
            noise,
            set_up: tables.sampler(&job.shift.set_up_s),
            clean_up: tables.sampler(&job.shift.clean_up_s),
            fuel_per_l: job.prices.fuel_per_l,
            material_cost: job.prices.material,
            fingerprint: fingerprint(job),
            compiled: tables,
        })
    }

    /// A number that tells this job from others: plans of equal jobs have the same, of different jobs another (but for a chance of
    /// one in 2^64). For parts of a study made by one build of the program; another build may number differently.
    pub fn fingerprint(&self) -> u64 {
        self.fingerprint
    }

    /// What lies at a pile at first in the replication that draws these \[m3\].
    pub(crate) fn stock(&self, pile: usize, streams: &Streams) -> f64 {
        let pile = &self.piles[pile];
        pile.on_hand_m3 * self.factors.bulk.at(streams.bulk(pile.number))
    }

    /// How much must remain of a need or a pile of this volume that it counts \[m3\]. While nothing has been brought or taken it
    /// counts however small it is.
    pub(crate) fn least_m3(&self, stated_m3: f64) -> f64 {
        if stated_m3 > 0.0 { self.negligible_m3.min(stated_m3) } else { self.negligible_m3 }
    }

    /// Accounts for the job with every entry 0.
    pub(crate) fn empty_accounts(&self) -> Accounts {
        Accounts::empty(self.loaders.len(), self.rakers, self.zones.len())
    }
}

/// FNV-1a of everything that is in a job (Fowler, Noll & Vo, from memory), as its debug text has it: every digit of every number.
fn fingerprint(job: &Job) -> u64 {
    struct Fnv(u64);
    impl fmt::Write for Fnv {
        fn write_str(&mut self, text: &str) -> fmt::Result {
            for byte in text.bytes() {
                self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01B3);
            }
            Ok(())
        }
    }
    let mut hash = Fnv(0xCBF2_9CE4_8422_2325);
    // Nothing is refused: neither by the number nor by a text that derives Debug.
    let _ = write!(hash, "{job:?}");
    hash.0
}

impl LoaderPlan {
    fn new(job: &Job, loader: &Loader, tables: &mut Compiled) -> Self {
        Self {
            heaped_m3: loader.heaped_m3,
            lift_m3: loader.lift_kg.map_or(f64::INFINITY, |kg| kg / job.material.density_kg_per_m3),
            load_us: us(loader.load_s),
            dump_us: us(loader.dump_s),
            spread_us_per_m3: job.raking.spread_share * us(loader.spread_s_per_m3),
            stoppages: loader.stoppages.as_ref().map(|s| (us(s.mean_gap_s), tables.sampler(&s.length_s))),
            cost_per_h: loader.machine_cost_per_h + loader.operator_cost_per_h,
            fuel_working_l_per_h: loader.fuel_working_l_per_h,
            fuel_idling_l_per_h: loader.fuel_idling_l_per_h,
        }
    }
}

impl ZonePlan {
    fn new(zone: &crate::job::Zone) -> Self {
        Self { need_m3: zone.need_m3, room: zone.room.unwrap_or(u32::MAX), walks_m: zone.walks_m.clone() }
    }
}

fn crews(job: &Job) -> Vec<CrewPlan> {
    let left = 1.0 - job.raking.spread_share;
    let us_per_m3 = |rate_m3_per_h: f64| left * us(3600.0) / rate_m3_per_h;
    match (job.raking.together, job.rakers.first()) {
        (Some(crowding), Some(first)) => {
            let rate: f64 = job.rakers.iter().map(|r| r.rate_m3_per_h).sum();
            let crowding = if job.rakers.len() > 1 { crowding } else { 1.0 };
            let slowest = job.rakers.iter().map(|r| r.walking_m_per_s).fold(f64::INFINITY, f64::min);
            vec![CrewPlan {
                first_raker: 0,
                rakers: job.rakers.len(),
                us_per_m3: us_per_m3(rate * crowding),
                start_zone: first.start_zone,
                us_per_m: us(1.0) / slowest,
                cost_per_h: job.rakers.iter().map(|r| r.cost_per_h).sum(),
            }]
        }
        _ => job
            .rakers
            .iter()
            .enumerate()
            .map(|(i, r)| CrewPlan {
                first_raker: i,
                rakers: 1,
                us_per_m3: us_per_m3(r.rate_m3_per_h),
                start_zone: r.start_zone,
                us_per_m: us(1.0) / r.walking_m_per_s,
                cost_per_h: r.cost_per_h,
            })
            .collect(),
    }
}

fn piles(job: &Job, tables: &mut Compiled) -> (Vec<PilePlan>, Vec<DeliveryPlan>) {
    // What comes before the day starts lies there when it does.
    let since_start = |clock_s: f64| round_to_us(us((clock_s - job.shift.start_s).max(0.0)));
    let (mut piles, mut deliveries, mut numbers) = (Vec::new(), Vec::new(), 0..);
    let mut number = || numbers.next().unwrap_or_default();
    for (pile, stockpile) in job.stockpiles.iter().enumerate() {
        piles.push(PilePlan { on_hand_m3: stockpile.on_hand_m3, face: stockpile.face, number: number() });
        for delivery in &stockpile.deliveries {
            deliveries.push(DeliveryPlan {
                pile,
                at: since_start(delivery.at_s),
                late: tables.sampler(&delivery.late_s),
                volume_m3: delivery.volume_m3,
                number: number(),
            });
        }
    }
    (piles, deliveries)
}

fn daily(job: &Job) -> Vec<(Micros, Switch)> {
    let from_start = |clock_s: f64| round_to_us(us(clock_s - job.shift.start_s));
    let mut daily = Vec::new();
    for pause in &job.shift.breaks {
        let begin = (from_start(pause.start_s), Switch::BreakBegins);
        match daily.last_mut() {
            // Breaks that touch are one.
            Some(last @ (_, Switch::BreakEnds)) if last.0 == begin.0 => last.0 = from_start(pause.end_s),
            _ => daily.extend([begin, (from_start(pause.end_s), Switch::BreakEnds)]),
        }
    }
    if let Some(end_s) = job.shift.end_s {
        let end = from_start(end_s);
        // A break that lasts to the end of the day is part of the rest that follows.
        daily.retain(|(at, switch)| *at < end || *switch != Switch::BreakEnds);
        daily.push((end, Switch::DayEnds));
    }
    if !daily.is_empty() {
        daily.push((86_400 * SECOND, Switch::DayStarts));
    }
    daily
}

fn us(seconds: f64) -> f64 {
    seconds * SECOND as f64
}

/// Rounds a time that is not negative to whole microseconds (halves to even), cut to what a calendar can hold.
#[inline]
pub(crate) fn round_to_us(us: f64) -> Micros {
    const MOST: f64 = (END_OF_TIME / 16) as f64;
    // From 2^52 on neighbours are one apart: the sum is rounded, and its last bits are the number. A conversion would take
    // twice the instructions for values that cannot occur.
    const ONES: f64 = (1_u64 << 52) as f64;
    (us.min(MOST) + ONES).to_bits() as Micros - ONES.to_bits() as Micros
}
