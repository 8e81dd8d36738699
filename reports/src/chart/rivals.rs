//! Several jobs' chance of being done by a time, one curve over the other.

mod sketch;

pub(crate) use sketch::draw;

use scenarios::units::System;

/// Most curves that can be told apart.
pub(crate) const MOST_CURVES: usize = 6;

/// The finish of several jobs, ready to be drawn. Times are minutes from the start of the first job's first day.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct RivalsData {
    /// The finding.
    pub title: String,
    /// From and to of the axis \[min\].
    pub range: (f64, f64),
    /// Clock time of minute 0 \[s after midnight\] where everything falls on one day.
    pub one_day_from_s: Option<f64>,
    /// What the axis shows.
    pub axis: String,
    /// Which clock is shown.
    pub units: System,
    /// One for each job shown, in their order.
    pub curves: Vec<Rival>,
    /// How many runs, and which jobs are left out.
    pub note: String,
}

/// One job.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Rival {
    /// Its letter.
    pub letter: String,
    /// Its name.
    pub name: String,
    /// Time \[min\] and chance of being done by then \[%\].
    pub points: Vec<(f64, f64)>,
    /// The P80 \[min\].
    pub p80: f64,
    /// The P80 in words.
    pub when: String,
    /// What it is in the comparison.
    pub rank: Rank,
}

impl RivalsData {
    /// Whether a job takes so much longer than the best that its curve lies beyond the picture.
    fn is_beyond(&self, curve: &Rival) -> bool {
        curve.p80 > self.range.1
    }
}

/// What a job is in a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rank {
    /// The one to take.
    Best,
    /// The one the others are compared with.
    First,
    /// Any other.
    Other,
}
