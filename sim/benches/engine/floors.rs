//! The two floors: the random numbers of so many loads, six each, drawn and not used.
//!
//! A load of either job draws its fill and five times; a passing takes the noise of its leg. The *usual floor* draws them
//! with the samplers of rand_distr, the *table floor* with heapcast's own by inversion.

use rand::{Rng, SeedableRng};
use rand_distr::{Distribution as _, LogNormal, Pert};
use rand_xoshiro::Xoshiro256PlusPlus;
use sim::{Distribution, LoadNoise, Sampler};
use std::hint::black_box;

/// The usual samplers.
pub struct Usual {
    fill: Pert<f64>,
    times: [LogNormal<f64>; 5],
}

/// Tables of the quantile functions, one for each law.
pub struct Tables {
    pub fill: Sampler,
    pub quarter: Sampler,
    pub leg: Sampler,
    pub rough: Sampler,
}

/// The coefficients of variation of the five times.
const LOADING: f64 = 0.25;
const LEG: f64 = 0.15;
const ROUGH: f64 = 0.30;

impl Usual {
    pub fn new() -> Self {
        let lognormal = |cv| LogNormal::from_mean_cv(1.0, cv).unwrap();
        Self {
            fill: Pert::new(0.75, 1.10).with_mode(0.95).unwrap(),
            times: [LOADING, LEG, ROUGH, LEG, ROUGH].map(lognormal),
        }
    }

    pub fn draw(&self, loads: u64) {
        let rng = &mut generator();
        for _ in 0..loads {
            black_box(self.fill.sample(rng));
            black_box(self.times.each_ref().map(|law| law.sample(rng)));
        }
    }
}

impl Tables {
    /// The same laws, to be drawn by inversion. Loads that draw by other laws are refused.
    pub fn of(noise: &LoadNoise) -> Self {
        let laws = [&noise.loading, &noise.haul, &noise.dump, &noise.return_leg, &noise.raking];
        let lognormal = |cv| Distribution::Lognormal { mean: 1.0, cv };
        assert_eq!(laws, [LOADING, LEG, ROUGH, LEG, ROUGH].map(lognormal).each_ref());
        Self {
            fill: Sampler::new(&noise.fill),
            quarter: Sampler::new(&noise.loading),
            leg: Sampler::new(&noise.haul),
            rough: Sampler::new(&noise.dump),
        }
    }

    pub fn draw(&self, loads: u64) {
        let rng = &mut generator();
        let mut draw = |law: &Sampler| law.at(rng.next_u64());
        for _ in 0..loads {
            black_box([
                draw(&self.fill),
                draw(&self.quarter),
                draw(&self.leg),
                draw(&self.rough),
                draw(&self.leg),
                draw(&self.rough),
            ]);
        }
    }
}

fn generator() -> Xoshiro256PlusPlus {
    Xoshiro256PlusPlus::seed_from_u64(1)
}
