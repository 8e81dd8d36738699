//! The figures of the two jobs and the draws of one load after another, drawn with the usual samplers.

use rand::SeedableRng;
use rand_distr::{Distribution, LogNormal, Pert};
use rand_xoshiro::Xoshiro256PlusPlus;
use serde::{Deserialize, Serialize};

/// Heaped capacity of a bucket \[m3\].
pub const HEAPED_M3: f64 = 0.4;
/// A need below this counts as nothing \[m3\].
pub const NOTHING_M3: f64 = 0.05 * HEAPED_M3;
/// Mean times of a load \[s\].
pub const LOADING_S: f64 = 18.0;
pub const HAUL_S: f64 = 20.0;
pub const DUMP_S: f64 = 12.0;
pub const RETURN_S: f64 = 16.0;
pub const RAKING_S_PER_M3: f64 = 3600.0 / 17.76;
/// Heaps that may lie in a zone at once.
pub const ROOM: u32 = 3;

/// What one and one have to place \[m3\].
pub const NEED_M3: f64 = 27.16;

/// The yard: zones, what each of them needs \[m3\], loaders, rakers, mean time to pass the gate \[s\].
pub const ZONES: usize = 3;
pub const ZONE_NEED_M3: f64 = 271.6 / ZONES as f64;
pub const LOADERS: usize = 4;
pub const RAKERS: usize = 6;
pub const GATE_S: f64 = 5.0;

/// What chance has in store for one load: the share of the bucket that is filled, and factors on five times.
#[derive(Clone, Copy, Default, Serialize, Deserialize)]
pub struct Load {
    pub fill: f64,
    pub loading: f64,
    pub haul: f64,
    pub dump: f64,
    pub back: f64,
    pub raking: f64,
}

/// The laws the draws of a load is drawn from.
#[derive(Clone, Copy, Serialize, Deserialize)]
pub struct Laws {
    fill: Pert<f64>,
    loading: LogNormal<f64>,
    haul: LogNormal<f64>,
    dump: LogNormal<f64>,
    back: LogNormal<f64>,
    raking: LogNormal<f64>,
}

impl Laws {
    pub fn new() -> anyhow::Result<Self> {
        let noise = |cv| LogNormal::from_mean_cv(1.0, cv);
        Ok(Self {
            fill: Pert::new(0.75, 1.10).with_mode(0.95)?,
            loading: noise(0.25)?,
            haul: noise(0.15)?,
            dump: noise(0.30)?,
            back: noise(0.15)?,
            raking: noise(0.30)?,
        })
    }
}

/// A stream of loads.
#[derive(Serialize, Deserialize)]
pub struct Draws {
    laws: Laws,
    rng: Xoshiro256PlusPlus,
}

impl Draws {
    pub fn new(laws: Laws, seed: u64) -> Self {
        Self { laws, rng: Xoshiro256PlusPlus::seed_from_u64(seed) }
    }

    /// Another stream, independent of this one.
    pub fn fork(&mut self) -> Self {
        Self { laws: self.laws, rng: Xoshiro256PlusPlus::from_rng(&mut self.rng) }
    }

    pub fn next_load(&mut self) -> Load {
        let Self { laws, rng } = self;
        Load {
            fill: laws.fill.sample(rng),
            loading: laws.loading.sample(rng),
            haul: laws.haul.sample(rng),
            dump: laws.dump.sample(rng),
            back: laws.back.sample(rng),
            raking: laws.raking.sample(rng),
        }
    }
}
