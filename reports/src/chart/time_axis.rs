//! An axis of time: by the clock where everything falls on one day, by the time it takes where not.

use super::axis::{MARGIN, Tick, with_room};
use super::paper::Type;
use super::ticks::{multiples, time_step};
use super::words::{tick_clock, tick_duration};
use scenarios::units::System;

/// From when to when, and how it is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct TimeAxis {
    /// From and to \[min\].
    pub(super) range: (f64, f64),
    /// Clock time of minute 0 \[s after midnight\] where everything falls on one day.
    pub(super) one_day_from_s: Option<f64>,
    /// Which clock is shown.
    pub(super) units: System,
}

impl TimeAxis {
    /// Where a time stands between `left` and `right` \[px\].
    pub(super) fn x(&self, left: f64, right: f64, min: f64) -> f64 {
        left + (min - self.range.0) / (self.range.1 - self.range.0) * (right - left)
    }

    /// Marks of the axis, with the time since the start below those of the clock.
    pub(super) fn ticks(&self, left: f64, right: f64, width: f64, soft: Type) -> Vec<(Tick, String)> {
        let (from_s, to_s) = (self.range.0 * 60.0, self.range.1 * 60.0);
        let mut step = time_step((to_s - from_s) / 200.0);
        let mut ticks = self.at_steps(step);
        for _ in 0..24 {
            let widest = ticks.iter().map(|(_, a, b)| soft.width(a).max(soft.width(b))).fold(0.0, f64::max);
            if step / (to_s - from_s) * (right - left) >= widest + soft.px {
                break;
            }
            step = time_step(step * 1.01);
            ticks = self.at_steps(step);
        }
        let both = |(s, a, b): (f64, String, String)| {
            let wide = if soft.width(&a) >= soft.width(&b) { a.clone() } else { b.clone() };
            let at = self.x(left, right, s / 60.0);
            (Tick { at, label: wide }, Tick { at, label: a }, b)
        };
        let all: Vec<_> = ticks.into_iter().map(both).collect();
        let wide = all.iter().map(|(wide, _, _)| wide.clone()).collect();
        let kept = with_room(wide, soft, MARGIN * 0.3, width - MARGIN * 0.3);
        all.into_iter()
            .filter(|(wide, _, _)| kept.contains(wide))
            .map(|(_, tick, after)| (tick, after))
            .collect()
    }

    /// Times \[s\] of a step, each with its labels.
    fn at_steps(&self, step: f64) -> Vec<(f64, String, String)> {
        let offset = self.one_day_from_s.unwrap_or(0.0);
        let first = |s: f64| match self.one_day_from_s {
            Some(start_s) => tick_clock(start_s + s, step, self.units),
            None => tick_duration(s),
        };
        let second = |s: f64| if self.one_day_from_s.is_some() { tick_duration(s) } else { String::new() };
        multiples(offset + self.range.0 * 60.0, offset + self.range.1 * 60.0, step)
            .into_iter()
            .map(|s| s - offset)
            .map(|s| (s, first(s), second(s)))
            .collect()
    }
}
