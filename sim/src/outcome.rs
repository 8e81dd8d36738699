//! What one run yields.

use crate::activity::{LoaderTimes, RakerTimes};
use crate::duration::Duration;
use serde::{Deserialize, Serialize};

/// In how many parts the progress of a run is told.
pub const PROGRESS_PARTS: usize = 20;

/// A point of a run on both clocks, counted from the start of the first day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Moment {
    /// Nights left out.
    pub working: Duration,
    /// Nights included.
    pub clock: Duration,
}

/// What one run yields. Plain numbers of fixed size, whatever the number of loads.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Outcome {
    /// Which run, counted from 0; with the seed it is all that is needed to replay it.
    pub run: u32,
    /// Last heap raked out.
    pub completion: Moment,
    /// After clean-up.
    pub finish: Moment,
    /// Loads moved.
    pub loads: u32,
    /// Loose volume placed \[m3\].
    pub placed_m3: f64,
    /// All delivered less placed \[m3\].
    pub left_over_m3: f64,
    /// What the zones still lack, summed \[m3\]; 0 where a zone lacks less than the model counts.
    pub short_m3: f64,
    /// Whether the area was to be covered and some zone still lacks material: the crew stopped, but the job is not done.
    pub ends_short: bool,
    /// Fuel burned \[l\].
    pub fuel_l: f64,
    /// Labour of all loaders and rakers, breaks paid \[h\].
    pub labour_h: f64,
    /// Hourly costs, fuel and material \[money\].
    pub cost: f64,
    /// Times summed over all loaders.
    pub loaders: LoaderTimes,
    /// Times summed over all rakers.
    pub rakers: RakerTimes,
    /// When each twentieth of the volume placed was raked out, on the clock, from the start of the first day.
    pub progress: [Duration; PROGRESS_PARTS],
}

impl Outcome {
    /// When the job was done, clean-up included; `None` for a run that ends short, which is never done.
    ///
    /// ```
    /// let finish = sim::Moment { working: sim::Duration::from_hours(6), clock: sim::Duration::from_hours(22) };
    /// let done = sim::Outcome { finish, ..Default::default() };
    /// assert_eq!(done.done(), Some(finish));
    /// assert_eq!(sim::Outcome { ends_short: true, ..done }.done(), None);
    /// ```
    pub fn done(&self) -> Option<Moment> {
        (!self.ends_short).then_some(self.finish)
    }
}

/// What one run yields for each loader, raker and zone.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Accounts {
    /// One for each loader.
    pub loaders: Vec<LoaderTimes>,
    /// One for each raker.
    pub rakers: Vec<RakerTimes>,
    /// One for each zone.
    pub zones: Vec<ZoneTotals>,
    /// Loads moved by each loader.
    pub loads: Vec<u64>,
}

/// What one zone received.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ZoneTotals {
    /// Loads dumped there.
    pub loads: u64,
    /// Loose volume placed \[m3\].
    pub placed_m3: f64,
    /// What it still lacks \[m3\].
    pub short_m3: f64,
}

impl Accounts {
    /// Accounts with every entry 0.
    pub fn empty(loaders: usize, rakers: usize, zones: usize) -> Self {
        Self {
            loaders: vec![LoaderTimes::default(); loaders],
            rakers: vec![RakerTimes::default(); rakers],
            zones: vec![ZoneTotals::default(); zones],
            loads: vec![0; loaders],
        }
    }

    /// The accounts of a job of the same shape with every entry 0.
    pub(crate) fn emptied(&self) -> Self {
        Self::empty(self.loaders.len(), self.rakers.len(), self.zones.len())
    }

    /// Adds another run's accounts, or the sum of several runs'.
    ///
    /// # Panics
    /// Never; accounts of a job of another shape are cut to the shorter.
    pub fn add(&mut self, other: &Self) {
        for (mine, theirs) in self.loaders.iter_mut().zip(&other.loaders) {
            *mine += theirs;
        }
        for (mine, theirs) in self.rakers.iter_mut().zip(&other.rakers) {
            *mine += theirs;
        }
        for (mine, theirs) in self.zones.iter_mut().zip(&other.zones) {
            mine.loads += theirs.loads;
            mine.placed_m3 += theirs.placed_m3;
            mine.short_m3 += theirs.short_m3;
        }
        self.loads.iter_mut().zip(&other.loads).for_each(|(a, b)| *a += b);
    }
}
