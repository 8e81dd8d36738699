//! Random streams by number: every draw is a pure function of seed, replication, load and what is drawn. Nothing one load or one
//! draw takes can disturb another, and any replication or load can be computed alone.
//!
//! The numbers are those of SplitMix64 (Steele, Lea & Flood, "Fast Splittable Pseudorandom Number Generators", OOPSLA
//! 2014): a Weyl sequence through a 64-bit finaliser, which can be read at any place. A run, a stream within it and a
//! load each turn their number into the key of a sequence of their own.

use rand::SeedableRng;
use rand_xoshiro::Xoshiro256PlusPlus;

/// What a load draws.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum LoadDraw {
    /// How full the bucket is.
    Fill,
    /// Loading time.
    Loading,
    /// Loaded leg.
    Haul,
    /// Dumping time.
    Dump,
    /// Empty leg.
    Return,
    /// Raking time.
    Raking,
}

/// What a run draws once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum Factor {
    /// All working times.
    Day,
    /// Loading and dumping.
    LoaderPace,
    /// Both legs.
    Travel,
    /// Raking.
    RakerPace,
    /// Fill factor.
    Fill,
    /// What the zones take.
    Need,
    /// Length of the set-up.
    SetUp,
    /// Length of the clean-up.
    CleanUp,
}

const STEP: u64 = 0x9E37_79B9_7F4A_7C15;

#[inline]
fn mix(z: u64) -> u64 {
    let z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// The number at a place of the sequence with this key.
#[inline]
fn at(key: u64, place: u64) -> u64 {
    mix(key.wrapping_add(place.wrapping_add(1).wrapping_mul(STEP)))
}

/// The random numbers of one run.
///
/// ```
/// use sim::{LoadDraw, Streams};
/// let load = Streams::new(7, 0).load(12);
/// assert_eq!(load.bits(LoadDraw::Haul), Streams::new(7, 0).load(12).bits(LoadDraw::Haul));
/// assert_ne!(load.bits(LoadDraw::Haul), load.bits(LoadDraw::Dump));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Streams {
    loads: u64,
    factors: u64,
    deliveries: u64,
    stoppages: u64,
}

/// The random numbers of one load.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LoadStream(u64);

impl Streams {
    /// The random streams of replication `run` under `seed`.
    pub fn new(seed: u64, run: u32) -> Self {
        let key = at(at(0, seed), u64::from(run));
        Self { loads: at(key, 0), factors: at(key, 1), deliveries: at(key, 2), stoppages: at(key, 3) }
    }

    /// The random stream of a load, by its number (from 0).
    #[inline]
    pub fn load(&self, load: u32) -> LoadStream {
        LoadStream(at(self.loads, u64::from(load)))
    }

    /// 64 random bits for something drawn once a run.
    pub fn factor(&self, factor: Factor) -> u64 {
        at(self.factors, factor as u64)
    }

    /// 64 random bits for the volume of the `n`th delivery of the job (from 0; stock on hand is one, pile by pile).
    pub fn bulk(&self, n: usize) -> u64 {
        at(self.deliveries, 2 * n as u64)
    }

    /// 64 random bits for the lateness of the `n`th delivery.
    pub fn lateness(&self, n: usize) -> u64 {
        at(self.deliveries, 2 * n as u64 + 1)
    }

    /// The stream of a loader's stoppages.
    pub(crate) fn stoppages(&self, loader: usize) -> Xoshiro256PlusPlus {
        Xoshiro256PlusPlus::seed_from_u64(at(self.stoppages, loader as u64))
    }
}

/// Numbers one after another, for what is not a run of a job.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Series {
    key: u64,
    place: u64,
}

impl Series {
    /// The series with this number under `seed`, apart from every run's streams.
    pub(crate) fn new(seed: u64, number: u32) -> Self {
        Self { key: at(at(1, seed), u64::from(number)), place: 0 }
    }

    /// One of `0..n`, equally likely to within one in 2^64 / n.
    pub(crate) fn below(&mut self, n: u64) -> u64 {
        self.place += 1;
        ((u128::from(at(self.key, self.place)) * u128::from(n)) >> 64) as u64
    }
}

impl LoadStream {
    /// 64 random bits for one of its draws.
    #[inline]
    pub fn bits(self, draw: LoadDraw) -> u64 {
        at(self.0, draw as u64)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_numbers_are_those_of_splitmix64() {
        // The first outputs at seed 0, recalled from memory.
        assert_eq!(at(0, 0), 0xE220_A839_7B1D_CDAF);
        assert_eq!(at(0, 1), 0x6E78_9E6A_A1B9_65F4);
    }

    #[test]
    fn volume_and_lateness_of_each_delivery_have_a_number_of_their_own() {
        let streams = Streams::new(1, 0);
        let mut all: Vec<u64> = (0..50).flat_map(|n| [streams.bulk(n), streams.lateness(n)]).collect();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), 100);
    }
}
