//! What is to be done and with what: the checked job, in SI, never changed once built.
//!
//! A [`Job`] is plain data. Whoever builds one (a scenario file, a test) is expected to have told the person what was
//! wrong with their numbers in their own units; [`crate::Plan::new`] still refuses what the model cannot mean.
//!
//! Every part has a [`Default`], so that only what matters need be written: a figure with a neutral value (no cost, no limit, no
//! chance) has it by default, and one that must be told makes [`crate::Plan::new`] refuse the job where it was forgotten.
//!
//! Figures here are real numbers in SI and not [`crate::Duration`]s: they are means and rates, multiplied by random factors
//! before a time is rounded to whole microseconds.

use crate::chance::Distribution;

/// Seconds after midnight of the first day; later days go on counting (24 h = 86,400 s).
pub type ClockSeconds = f64;

/// One job: material, ground, piles, machines, people, hours, chance and prices.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What is moved.
    pub material: Material,
    /// Where it goes, at least one.
    pub zones: Vec<Zone>,
    /// Where it is taken from, at least one.
    pub stockpiles: Vec<Stockpile>,
    /// Gates and one-lane stretches that ways refer to by index.
    pub passes: Vec<Pass>,
    /// Machines (or hand barrows), each with one operator; 1 to 64.
    pub loaders: Vec<Loader>,
    /// People who rake; 0 to 64, none only if the loaders spread everything.
    pub rakers: Vec<Raker>,
    /// How the spreading is shared and organised.
    pub raking: Raking,
    /// Which zone gets the next load.
    pub fill_order: FillOrder,
    /// When the job counts as finished.
    pub finish: FinishRule,
    /// Hours of work.
    pub shift: Shift,
    /// How days and loads differ.
    pub chance: Chance,
    /// What things cost.
    pub prices: Prices,
}

/// The loose material.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Name shown to people.
    pub name: String,
    /// Loose bulk density \[kg/m3\], above 0.
    pub density_kg_per_m3: f64,
    /// Mean fill factor: volume in the bucket over its heaped capacity \[-\], above 0.
    pub fill_factor: f64,
}

/// A part of the ground that is filled as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Name shown to people, unique among zones.
    pub name: String,
    /// Loose volume it takes \[m3\], 0 or more; settling is already in it.
    pub need_m3: f64,
    /// How many heaps may lie there at once, at least 1; `None` = no limit.
    pub room: Option<u32>,
    /// The ways by which it is reached, at least one. Several ways from one pile are allowed: a loader takes the
    /// shortest it fits through.
    pub ways: Vec<Way>,
    /// Walking distance to every zone, in their order \[m\].
    pub walks_m: Vec<f64>,
}

/// A way from a stockpile to a zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Index of the stockpile it starts from.
    pub stockpile: usize,
    /// One-way length \[m\], 0 or more.
    pub distance_m: f64,
    /// Passes in the order met from the pile.
    pub passes: Vec<PassOnWay>,
}

/// Where a pass lies on a way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PassOnWay {
    /// Index of the pass.
    pub pass: usize,
    /// Share of the way from the pile \[0 to 1\], not falling along the way.
    pub share: f64,
}

/// A pile of material.
#[derive(Clone, Debug, PartialEq)]
pub struct Stockpile {
    /// Name shown to people, unique among stockpiles.
    pub name: String,
    /// Loose volume lying there at the start \[m3\], as ordered (the bulk factor is not in it).
    pub on_hand_m3: f64,
    /// What comes later.
    pub deliveries: Vec<Delivery>,
    /// How many loaders can load at once, at least 1.
    pub face: u32,
}

/// A truckload that is tipped at a stockpile during the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Delivery {
    /// When it is promised.
    pub at_s: ClockSeconds,
    /// How much later it comes \[s\]; constant 0 for a truck that keeps its word.
    pub late_s: Distribution,
    /// Loose volume as ordered \[m3\].
    pub volume_m3: f64,
}

/// A machine with a bucket and its operator. A hand barrow is one too.
#[derive(Clone, Debug, PartialEq)]
pub struct Loader {
    /// Name shown to people, unique among loaders.
    pub name: String,
    /// Heaped capacity of the bucket \[m3\], above 0.
    pub heaped_m3: f64,
    /// Struck capacity \[m3\], for checks only.
    pub struck_m3: Option<f64>,
    /// What it may lift of the material \[kg\], shares already taken; `None` = not limited by lift.
    pub lift_kg: Option<f64>,
    /// Widest part \[m\], 0 or more.
    pub width_m: f64,
    /// Speed loaded \[m/s\], above 0.
    pub loaded_m_per_s: f64,
    /// Speed empty \[m/s\], above 0.
    pub empty_m_per_s: f64,
    /// Mean time to load \[s\], 0 or more, whatever the volume.
    pub load_s: f64,
    /// Mean time to dump \[s\], 0 or more.
    pub dump_s: f64,
    /// Mean time lost in starting and stopping, each leg \[s\].
    pub start_stop_s: f64,
    /// Time the loader takes to spread material itself \[s/m3\]; used with [`Raking::spread_share`].
    pub spread_s_per_m3: f64,
    /// Cost of the machine \[money/h\].
    pub machine_cost_per_h: f64,
    /// Cost of its operator \[money/h\].
    pub operator_cost_per_h: f64,
    /// Fuel burned while loading, driving, passing and dumping \[l/h\].
    pub fuel_working_l_per_h: f64,
    /// Fuel burned while waiting \[l/h\].
    pub fuel_idling_l_per_h: f64,
    /// Small breakdowns and interruptions, if any.
    pub stoppages: Option<Stoppages>,
}

/// Interruptions of a loader.
#[derive(Clone, Debug, PartialEq)]
pub struct Stoppages {
    /// Mean operating time between stoppages \[s\], above 0; gaps are exponential.
    pub mean_gap_s: f64,
    /// How long one lasts \[s\].
    pub length_s: Distribution,
}

/// A person who rakes heaps out.
#[derive(Clone, Debug, PartialEq)]
pub struct Raker {
    /// Name shown to people, unique among rakers.
    pub name: String,
    /// Raking rate, fresh \[loose m3/h\], above 0.
    pub rate_m3_per_h: f64,
    /// Index of the zone where the day begins.
    pub start_zone: usize,
    /// Walking speed between zones \[m/s\], above 0.
    pub walking_m_per_s: f64,
    /// Cost \[money/h\].
    pub cost_per_h: f64,
}

/// A gate or one-lane stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Pass {
    /// Name shown to people, unique among passes.
    pub name: String,
    /// Clear width \[m\].
    pub width_m: f64,
    /// Mean time of one passing \[s\], 0 or more.
    pub passing_s: f64,
    /// How many machines at once, both directions together, at least 1.
    pub at_once: u32,
}

/// How spreading is shared and organised.
#[derive(Clone, Debug, PartialEq)]
pub struct Raking {
    /// `Some(crowding)`: the whole crew works each heap together, at the sum of its rates times `crowding` (above 0;
    /// taken as 1 for a crew of one). `None`: one raker, one heap.
    pub together: Option<f64>,
    /// How rakers tire.
    pub fatigue: Option<Fatigue>,
    /// Share of each load that the loader spreads itself \[0 to 1\].
    pub spread_share: f64,
    /// Whether rakers stand clear while a loader dumps in their zone.
    pub stand_clear: bool,
}

/// A raker's rate after `h` hours of raking that day is `rate x max(floor, 1 - share_per_h x h)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fatigue {
    /// Share of the fresh rate lost for each hour raked \[1/h\], 0 or more.
    pub share_per_h: f64,
    /// Least share of the fresh rate \[above 0, at most 1\].
    pub floor: f64,
}

/// Which of the zones that still need material is served next.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FillOrder {
    /// In the order listed.
    #[default]
    AsListed,
    /// Farthest from the pile the load would come from.
    FarthestFirst,
    /// Nearest to the pile the load would come from.
    NearestFirst,
    /// The one after the zone chosen last by any loader.
    InTurn,
    /// The one with most room left.
    MostRoom,
}

/// When the job counts as finished.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FinishRule {
    /// Every zone has what it needs; the rest stays at the pile.
    #[default]
    AreaCovered,
    /// Everything delivered is placed; the surplus goes to one zone.
    PileCleared {
        /// Index of the zone that takes the surplus.
        surplus_zone: usize,
    },
}

/// Hours of work, the same every day.
#[derive(Clone, Debug, PartialEq)]
pub struct Shift {
    /// Start of the day, within the first 24 h.
    pub start_s: ClockSeconds,
    /// End of the day, after the start, within the first 24 h; `None` = the crew goes on until it is done.
    pub end_s: Option<ClockSeconds>,
    /// Breaks, in order, not overlapping, within the day.
    pub breaks: Vec<Break>,
    /// Time before the first load \[s\].
    pub set_up_s: Distribution,
    /// Time after the last heap \[s\].
    pub clean_up_s: Distribution,
}

/// A fixed stretch of the clock in which nobody starts work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Break {
    /// When it begins.
    pub start_s: ClockSeconds,
    /// When it ends.
    pub end_s: ClockSeconds,
}

/// How days and loads differ: every entry is a multiplier with mean 1.
#[derive(Clone, Debug, PartialEq)]
pub struct Chance {
    /// Drawn once a run, the same for all.
    pub days: JobFactors,
    /// Drawn for every load.
    pub loads: LoadNoise,
}

/// Multipliers drawn once per run, mean 1. Above 1 means slower (times) or more (fill, need, bulk).
#[derive(Clone, Debug, PartialEq)]
pub struct JobFactors {
    /// All working times.
    pub day: Distribution,
    /// Loading, and dumping with the loader's own spreading.
    pub loader_pace: Distribution,
    /// Both legs whole: driving, start-and-stop, passing.
    pub travel: Distribution,
    /// Raking.
    pub raker_pace: Distribution,
    /// Fill factor of every load.
    pub fill: Distribution,
    /// What the zones really take.
    pub need: Distribution,
    /// Volume of a delivery, one draw each, stock on hand included.
    pub bulk: Distribution,
}

/// Multipliers drawn for every load, mean 1.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadNoise {
    /// Fill factor.
    pub fill: Distribution,
    /// Loading time.
    pub loading: Distribution,
    /// Loaded leg, with its passings.
    pub haul: Distribution,
    /// Dumping time.
    pub dump: Distribution,
    /// Empty leg, with its passings.
    pub return_leg: Distribution,
    /// Raking time.
    pub raking: Distribution,
}

/// What things cost, in the job's own currency.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Prices {
    /// Fuel \[money/l\].
    pub fuel_per_l: f64,
    /// All material and its delivery, as ordered \[money\].
    pub material: f64,
}

impl Job {
    /// What remains of a need or a pile below this counts as nothing, once loads were brought or taken: a twentieth of the
    /// smallest bucket \[m3\].
    pub fn negligible_m3(&self) -> f64 {
        0.05 * self.loaders.iter().map(|loader| loader.heaped_m3).fold(f64::INFINITY, f64::min)
    }
}

impl Chance {
    /// No chance at all: every multiplier is 1.
    pub fn none() -> Self {
        let one = || Distribution::Constant(1.0);
        Self {
            days: JobFactors {
                day: one(),
                loader_pace: one(),
                travel: one(),
                raker_pace: one(),
                fill: one(),
                need: one(),
                bulk: one(),
            },
            loads: LoadNoise {
                fill: one(),
                loading: one(),
                haul: one(),
                dump: one(),
                return_leg: one(),
                raking: one(),
            },
        }
    }
}
