//! What should be done by when: marks to check the day against.

use super::{Calendar, about_volume, span};
use crate::forecast::run::Forecast;
use sim::PROGRESS_PARTS;

/// A share of the volume and when it should be raked out.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Mark {
    /// `half`.
    pub(crate) part: &'static str,
    /// How much that is, on average.
    pub(crate) volume: String,
    /// One day in ten it is earlier.
    pub(crate) early: String,
    /// One day in two it is earlier.
    pub(crate) middle: String,
    /// One day in ten it is later.
    pub(crate) late: String,
    /// Middle time, to sort by \[whole s after midnight of the first day\].
    pub(crate) middle_s: u64,
}

impl Mark {
    /// From the early to the late time.
    pub(crate) fn span(&self) -> String {
        span(&self.early, &self.late)
    }
}

/// When all of it is done is said once, by the finish.
const PARTS: [(&str, usize); 3] = [("a quarter", 5), ("half", 10), ("three quarters", 15)];

/// When each quarter of the volume is raked out.
pub(crate) fn marks(forecast: &Forecast) -> Vec<Mark> {
    let start_s = forecast.scenario.job.shift.start_s;
    let placed_m3 = forecast.study.sorted(|o| o.placed_m3).mean().value;
    let mark = |(part, twentieths): (&'static str, usize)| {
        let times = forecast.study.sorted(|o| start_s + o.progress[twentieths - 1].as_secs_f64());
        let at = |share| {
            let at_s = times.percentile(share).value;
            Calendar::of(&forecast.scenario, forecast.units).done(at_s - start_s, at_s).clock
        };
        Mark {
            part,
            volume: about_volume(placed_m3 * twentieths as f64 / PROGRESS_PARTS as f64, forecast.units),
            early: at(0.1),
            middle: at(0.5),
            late: at(0.9),
            middle_s: times.percentile(0.5).value.max(0.0) as u64,
        }
    };
    PARTS.map(mark).into()
}
