//! A figure over a range of one thing: the middle run, the line to plan on, and the band in which eight runs of ten lie.

mod marks;
mod sketch;

pub(crate) use sketch::draw;

use scenarios::units::System;

/// A figure over a range, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct CurveData {
    /// Its name: `sweep` or `cost`.
    pub figure: &'static str,
    /// The finding.
    pub title: String,
    /// What is varied, with its unit.
    pub x_name: String,
    /// What it does to what, with its unit where the marks do not say it.
    pub y_name: String,
    /// How heights are told.
    pub scale: Scale,
    /// The points, rising.
    pub spots: Vec<Spot>,
    /// A height to be compared with, and what it is called.
    pub line: Option<(f64, String)>,
    /// How many runs.
    pub note: String,
}

/// How heights are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Scale {
    /// Seconds after midnight, as times of the clock.
    Clock(System),
    /// Seconds, as lengths of time.
    Duration,
    /// Money.
    Money,
}

/// The figure at one point.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spot {
    /// Where on the axis, in the unit shown.
    pub x: f64,
    /// The same in words, without its unit.
    pub label: String,
    /// P10.
    pub low: f64,
    /// P50.
    pub middle: f64,
    /// P80.
    pub plan: f64,
    /// P90.
    pub high: f64,
    /// What the point is, if anything: `knee, cheapest`.
    pub marks: String,
}

impl CurveData {
    /// Whether any point has more than one outcome.
    fn varies(&self) -> bool {
        self.spots.iter().any(|spot| spot.low < spot.high)
    }
}
