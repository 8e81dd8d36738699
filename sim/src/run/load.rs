//! One load: what it draws, all at once when it begins, and the rules that make its volume and times, each once.

use crate::activity::Micros;
use crate::plan::{LoaderPlan, Noise, Plan, round_to_us};
use crate::streams::{Factor, LoadDraw, LoadStream, Streams};

/// The job factors of one run, multiplied out for each kind of work.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pace {
    load: f64,
    travel: f64,
    rake: f64,
    pub(super) fill: f64,
}

impl Pace {
    pub(super) fn new(plan: &Plan, streams: &Streams) -> Self {
        let draw = |sampler: &crate::Sampler, factor| sampler.at(streams.factor(factor));
        let day = draw(&plan.factors.day, Factor::Day);
        Self {
            load: day * draw(&plan.factors.loader_pace, Factor::LoaderPace),
            travel: day * draw(&plan.factors.travel, Factor::Travel),
            rake: day * draw(&plan.factors.raker_pace, Factor::RakerPace),
            fill: plan.fill_factor * draw(&plan.factors.fill, Factor::Fill),
        }
    }
}

/// What a loader's own figures do to its loads.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Machine {
    heaped_m3: f64,
    lift_m3: f64,
    load_us: f64,
    dump_us: f64,
    spread_us_per_m3: f64,
}

impl Machine {
    pub(super) fn new(plan: &LoaderPlan) -> Self {
        let &LoaderPlan { heaped_m3, lift_m3, load_us, dump_us, spread_us_per_m3, .. } = plan;
        Self { heaped_m3, lift_m3, load_us, dump_us, spread_us_per_m3 }
    }

    /// What the bucket would take, were there enough, where it is filled to this.
    #[inline(always)]
    pub(super) fn bucketful(&self, fill: f64) -> f64 {
        lesser(fill * self.heaped_m3, self.lift_m3)
    }
}

/// What a load draws, whoever takes it: multiples of the means, with the job factors.
#[derive(Clone, Copy, Debug)]
pub(super) struct Draws {
    pub(super) fill: f64,
    loading: f64,
    dump: f64,
    out: f64,
    back: f64,
    raking: f64,
}

impl Draws {
    #[inline(always)]
    pub(super) fn new(noise: &Noise, pace: &Pace, stream: LoadStream) -> Self {
        Self {
            fill: pace.fill * noise.fill.at(stream.bits(LoadDraw::Fill)),
            loading: pace.load * noise.loading.at(stream.bits(LoadDraw::Loading)),
            dump: pace.load * noise.dump.at(stream.bits(LoadDraw::Dump)),
            out: pace.travel * noise.haul.at(stream.bits(LoadDraw::Haul)),
            back: pace.travel * noise.return_leg.at(stream.bits(LoadDraw::Return)),
            raking: pace.rake * noise.raking.at(stream.bits(LoadDraw::Raking)),
        }
    }
}

/// The lesser of two volumes. Neither is ever not a number, for which `min` would look.
#[inline(always)]
pub(super) fn lesser(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// A load and its times.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Load {
    pub(super) number: u32,
    pub(super) volume: f64,
    pub(super) loading: Micros,
    pub(super) dumping: Micros,
    /// Driving and passing loaded, as a multiple of their means.
    pub(super) out: f64,
    /// The same empty.
    pub(super) back: f64,
    /// Raking, likewise.
    raking: f64,
}

impl Load {
    #[inline(always)]
    pub(super) fn new(number: u32, volume: f64, machine: &Machine, draws: &Draws) -> Self {
        let dump_us = machine.dump_us + machine.spread_us_per_m3 * volume;
        Self {
            number,
            volume,
            loading: round_to_us(machine.load_us * draws.loading),
            dumping: round_to_us(dump_us * draws.dump),
            out: draws.out,
            back: draws.back,
            raking: draws.raking,
        }
    }
}

/// A load on the ground.
#[derive(Clone, Copy, Debug)]
pub(super) struct Heap {
    pub(super) load: u32,
    pub(super) volume: f64,
    raking: f64,
    /// Its place in the order of dumping, over all zones.
    pub(super) number: u64,
}

impl Heap {
    #[inline(always)]
    pub(super) fn new(load: &Load, number: u64) -> Self {
        Self { load: load.number, volume: load.volume, raking: load.raking, number }
    }

    /// How long it takes a crew that has this share of its fresh rate.
    #[inline(always)]
    pub(super) fn raking(&self, us_per_m3: f64, freshness: f64) -> Micros {
        round_to_us(us_per_m3 * self.volume / freshness * self.raking)
    }
}
