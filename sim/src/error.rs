//! Why a job cannot be run, or a replication not come to its end, as data.

use crate::activity::{LoaderActivity, RakerActivity};
use crate::chance::ChanceError;
use crate::duration::Duration;
use std::fmt;

/// What a part of a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum PartKind {
    /// One of [`crate::Job::zones`].
    Zone,
    /// One of [`crate::Job::stockpiles`].
    Stockpile,
    /// One of [`crate::Job::passes`].
    Pass,
    /// One of [`crate::Job::loaders`].
    Loader,
    /// One of [`crate::Job::rakers`].
    Raker,
}

/// One part of a job: a loader, a zone and so on. Shown by its name.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct JobPart {
    /// What it is.
    pub kind: PartKind,
    /// Its place in the job's list.
    pub index: usize,
    /// Its name.
    pub name: String,
}

impl fmt::Display for JobPart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.name)
    }
}

/// A figure of a job, shown as in "loading time of the tractor".
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Figure {
    /// What it is, in plain words, with `{}` where the name of the part goes.
    pub what: &'static str,
    /// Whose it is; `None` for a figure of the whole job.
    pub of: Option<JobPart>,
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.of {
            Some(part) => f.pad(&self.what.replacen("{}", &part.name, 1)),
            None => f.pad(self.what),
        }
    }
}

/// A job that the model cannot run.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum JobError {
    /// Too few or too many of something.
    #[error("there are {count} {things}; from {least} to {most} are possible")]
    Count {
        /// Of what, in plain words.
        things: &'static str,
        /// How many there are.
        count: usize,
        /// The fewest there may be.
        least: usize,
        /// The most there may be.
        most: usize,
    },
    /// A figure that must be above 0 is not, or is not finite.
    #[error("{figure} is {value}; it must be above 0")]
    NotAboveZero {
        /// Which.
        figure: Figure,
        /// What it is.
        value: f64,
    },
    /// A figure that must be 0 or more is not, or is not finite.
    #[error("{figure} is {value}; it must be 0 or more")]
    BelowZero {
        /// Which.
        figure: Figure,
        /// What it is.
        value: f64,
    },
    /// A figure that must be from 0 to 1 is not.
    #[error("{figure} is {value}; it must be from 0 to 1")]
    NotAShare {
        /// Which.
        figure: Figure,
        /// What it is.
        value: f64,
    },
    /// A distribution that has no meaning.
    #[error("{figure}: {why}")]
    Distribution {
        /// Of which figure.
        figure: Figure,
        /// What is wrong with it.
        why: ChanceError,
    },
    /// A multiplier whose mean is not 1.
    #[error("{figure}: its mean is {mean}, not 1")]
    MeanNotOne {
        /// Which.
        figure: Figure,
        /// What its mean is.
        mean: f64,
    },
    /// A zone in which no heap may lie.
    #[error("{zone} has room for no heap")]
    NoRoom {
        /// Which.
        zone: JobPart,
    },
    /// A zone without a way.
    #[error("no way leads to {zone}")]
    NoWay {
        /// Which.
        zone: JobPart,
    },
    /// A zone without a walking distance to each zone.
    #[error("{zone} needs a walk to every zone")]
    Walks {
        /// Which.
        zone: JobPart,
        /// How many walks it has.
        given: usize,
        /// How many there must be: one for each zone.
        needed: usize,
    },
    /// A way that starts at a stockpile that does not exist.
    #[error("a way to {zone} starts at no stockpile")]
    UnknownStockpile {
        /// Where the way leads.
        zone: JobPart,
        /// The index of the stockpile.
        stockpile: usize,
    },
    /// A way through a pass that does not exist.
    #[error("a way to {zone} leads through no known pass")]
    UnknownPass {
        /// Where the way leads.
        zone: JobPart,
        /// The index of the pass.
        pass: usize,
    },
    /// A way whose passes are not in the order met.
    #[error("passes on the way to {zone} are not in order")]
    PassesOutOfOrder {
        /// Where the way leads.
        zone: JobPart,
    },
    /// A stockpile at which no loader can load.
    #[error("{stockpile}: nobody can load at a face of 0")]
    NoFace {
        /// Which.
        stockpile: JobPart,
    },
    /// A pass through which nobody can go.
    #[error("{pass}: no machine can pass")]
    NobodyPasses {
        /// Which.
        pass: JobPart,
    },
    /// A raker who starts in a zone that does not exist.
    #[error("{raker} starts in a zone that does not exist")]
    UnknownStartZone {
        /// Who.
        raker: JobPart,
        /// The index of the zone.
        zone: usize,
    },
    /// Nobody to rake what the loaders do not spread.
    #[error("there is nobody to rake, and the loaders do not spread all of it themselves")]
    NobodyRakes {
        /// The share of each load that the loaders spread.
        spread_share: f64,
    },
    /// A surplus for a zone that does not exist.
    #[error("the surplus goes to a zone that does not exist")]
    UnknownSurplusZone {
        /// The index of the zone.
        zone: usize,
    },
    /// A day that does not start within the first 24 hours.
    #[error("the day must start within the first 24 hours")]
    StartOfDay {
        /// When it starts \[s after midnight\].
        start_s: f64,
    },
    /// A day that ends before it starts, or after midnight.
    #[error("the day must end after its start and by midnight")]
    EndOfDay {
        /// When it starts \[s after midnight\].
        start_s: f64,
        /// When it ends \[s after midnight\]; `None` where the crew goes on until it is done.
        end_s: Option<f64>,
    },
    /// A break out of order, over another, or outside the day.
    #[error("breaks must be in order, apart, and within the day")]
    Break {
        /// Its place in the list.
        index: usize,
        /// When it begins \[s after midnight\].
        start_s: f64,
        /// When it ends \[s after midnight\].
        end_s: f64,
    },
}

/// A replication that cannot come to its end.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("run {run} {why}")]
pub struct RunError {
    /// Which replication.
    pub run: u32,
    /// Why.
    pub why: RunProblem,
}

/// Why a replication cannot come to its end.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RunProblem {
    /// Nothing that moves is left.
    #[error("can make no progress after {0}")]
    Deadlock(Box<Deadlock>),
    /// More work than any job has.
    #[error(
        "was given up after more than a hundred years of work: a rate, a speed or the hours of a day are far too small for \
         the volume; look at their units"
    )]
    TooLong,
    /// More loads than any job has.
    #[error(
        "was given up after {most} loads: the buckets hold next to nothing of what is to be moved; look at the units of \
         bucket and volume"
    )]
    TooManyLoads {
        /// As many as are made.
        most: u32,
    },
}

/// Who waits for what when nothing goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct Deadlock {
    /// When, from the start of the first day.
    pub at: Duration,
    /// What each loader does, and the zone it is bound for, if any.
    pub loaders: Vec<(LoaderActivity, Option<usize>)>,
    /// The first raker of each crew, what they do and the zone they are in.
    pub rakers: Vec<(usize, RakerActivity, usize)>,
    /// What each zone lacks \[m3\], and how many heaps lie there.
    pub zones: Vec<(f64, usize)>,
    /// What lies at each stockpile \[m3\].
    pub stockpiles_m3: Vec<f64>,
}

/// As in `12.5 min: loader 1 is waiting for room (zone 1); raker 1 is waiting for a heap in zone 2; ...`.
impl fmt::Display for Deadlock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let loaders = self.loaders.iter().enumerate().map(|(i, (activity, zone))| {
            let place = zone.map_or_else(String::new, |zone| format!(" (zone {})", zone + 1));
            format!("loader {} is {activity}{place}", i + 1)
        });
        let rakers = self
            .rakers
            .iter()
            .map(|(raker, activity, zone)| format!("raker {} is {activity} in zone {}", raker + 1, zone + 1));
        let zones = self.zones.iter().enumerate().map(|(i, (lacks_m3, heaps))| {
            format!("zone {} lacks {lacks_m3:.3} m3 and holds {heaps} heaps to rake", i + 1)
        });
        let piles =
            self.stockpiles_m3.iter().enumerate().map(|(i, m3)| format!("pile {} holds {m3:.3} m3", i + 1));
        let all: Vec<String> = loaders.chain(rakers).chain(zones).chain(piles).collect();
        write!(f, "{:.1} min: {}", self.at.as_mins_f64(), all.join("; "))
    }
}
