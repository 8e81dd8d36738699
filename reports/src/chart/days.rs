//! A time axis of several working days: working hours to scale, nights squeezed to a strip.

use super::axis::{Tick, with_room};
use super::paper::Type;
use super::ticks::{multiples, time_step};
use super::words::tick_clock;
use scenarios::units::System;
use sim::Shift;

/// Share of a piece under which a rest gets no piece of its own (our own choice).
const REST: f64 = 0.1;
/// Minutes of a day.
const DAY_MIN: f64 = 1_440.0;

/// The stretches of time a figure shows, each a working day or the part of it that is needed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Days {
    /// Clock time of minute 0 \[s after midnight\].
    pub start_s: f64,
    /// From and to \[min from the start of the first day\], rising; between two of them is a night.
    pub worked: Vec<(f64, f64)>,
    /// Breaks that lie in them \[min from the start of the first day\].
    pub breaks: Vec<(f64, f64)>,
    /// Units that say which clock is shown.
    pub units: System,
}

impl Days {
    /// The days of a shift from its start until `until_min`. A day is as long as the shift, longer where something was
    /// `seen` (a time at which somebody still works, \[min from the start of the first day\]) after hours.
    pub(crate) fn new(shift: &Shift, until_min: f64, seen: impl Iterator<Item = f64>, units: System) -> Self {
        let until_min = if until_min.is_finite() { until_min.max(0.05) } else { 0.05 };
        let worked = match shift.end_s {
            None => vec![(0.0, until_min)],
            Some(end_s) => {
                let hours = (end_s - shift.start_s) / 60.0;
                let longest =
                    seen.filter(|t| t.is_finite()).map(|t| t.rem_euclid(DAY_MIN)).fold(hours, f64::max);
                if longest >= DAY_MIN - 1.0 { vec![(0.0, until_min)] } else { stretches(longest, until_min) }
            }
        };
        let breaks = breaks(shift, &worked, until_min);
        Self { start_s: shift.start_s, worked, breaks, units }
    }

    /// Where the axis ends \[min from the start of the first day\].
    pub(crate) fn until(&self) -> f64 {
        self.worked.last().map_or(0.0, |(_, to)| *to)
    }

    /// The same time in pieces of `most_min` each, begun again every day; a short rest is added to the piece before it.
    pub(super) fn cut(&self, most_min: f64) -> Vec<Self> {
        let pieces = self.worked.iter().flat_map(|(from, to)| {
            let count = ((to - from) / most_min - REST).ceil().clamp(1.0, 10_000.0) as usize;
            let end = move |i: usize| if i == count { *to } else { from + i as f64 * most_min };
            (0..count).map(move |i| (end(i), end(i + 1)))
        });
        let piece = |(from, to): (f64, f64)| {
            let breaks = self.breaks.iter().filter(|(start, end)| *start < to && *end > from);
            let breaks = breaks.map(|(start, end)| (start.max(from), end.min(to))).collect();
            Self { worked: vec![(from, to)], breaks, ..self.clone() }
        };
        pieces.map(piece).collect()
    }

    /// Time shown, nights left out \[min\].
    pub(super) fn shown(&self) -> f64 {
        self.worked.iter().map(|(from, to)| to - from).sum()
    }
}

fn stretches(longest: f64, until_min: f64) -> Vec<(f64, f64)> {
    let days = (until_min / DAY_MIN).floor().clamp(0.0, 365.0) as usize;
    (0..=days)
        .map(|day| day as f64 * DAY_MIN)
        .map(|from| (from, (from + longest).min(until_min.max(from))))
        .filter(|(from, to)| to > from)
        .collect()
}

fn breaks(shift: &Shift, worked: &[(f64, f64)], until_min: f64) -> Vec<(f64, f64)> {
    let minute = |clock_s: f64| (clock_s - shift.start_s) / 60.0;
    let days = (until_min / DAY_MIN).floor().clamp(0.0, 365.0) as usize;
    let every_day = (0..=days).map(|day| day as f64 * DAY_MIN);
    every_day
        .flat_map(|day| shift.breaks.iter().map(move |b| (day + minute(b.start_s), day + minute(b.end_s))))
        .filter_map(|(from, to)| {
            let (start, end) = *worked.iter().find(|(start, end)| from < *end && to > *start)?;
            Some((from.max(start), to.min(end)))
        })
        .collect()
}

/// A [`Days`] axis on paper.
pub(super) struct DayScale<'a> {
    days: &'a Days,
    left: f64,
    per_min: f64,
    night: f64,
}

impl<'a> DayScale<'a> {
    /// Spreads the days between `left` and `right`; a night takes `night` px, less where there are very many.
    pub(super) fn new(days: &'a Days, left: f64, right: f64, night: f64) -> Self {
        let nights = days.worked.len().saturating_sub(1) as f64;
        let night = if nights > 0.0 { night.min((right - left) * 0.3 / nights) } else { 0.0 };
        Self { days, left, per_min: (right - left - nights * night) / days.shown().max(1e-6), night }
    }

    /// Width of a minute of working time \[px\].
    pub(super) fn per_min(&self) -> f64 {
        self.per_min
    }

    /// Where a time stands \[px\].
    pub(super) fn x(&self, min: f64) -> f64 {
        let (mut x, mut before) = (self.left, None);
        for (from, to) in &self.days.worked {
            if let Some(night_from) = before {
                if min < *from {
                    return x + (min - night_from) / (from - night_from) * self.night;
                }
                x += self.night;
            }
            if min <= *to {
                return x + (min - from).max(0.0) * self.per_min;
            }
            x += (to - from) * self.per_min;
            before = Some(*to);
        }
        x
    }

    /// From and to of each night \[px\].
    pub(super) fn nights(&self) -> Vec<(f64, f64)> {
        self.days.worked.windows(2).map(|pair| (self.x(pair[0].1), self.x(pair[1].0))).collect()
    }

    /// Marks at round clock times, as many as have room for their labels.
    pub(super) fn ticks(&self, how: Type, from: f64, to: f64) -> Vec<Tick> {
        let (start, system) = (self.days.start_s, self.days.units);
        let mut step = time_step(1.0);
        while step < 86_400.0 {
            let sample = [tick_clock(36_000.0, step, system), tick_clock(36_000.0 + step, step, system)];
            let widest = sample.iter().map(|label| how.width(label)).fold(0.0, f64::max);
            if step / 60.0 * self.per_min >= widest + how.px * 0.9 {
                break;
            }
            step = time_step(step * 1.01);
        }
        let mut all = Vec::new();
        for (a, b) in &self.days.worked {
            for at_s in multiples(start + a * 60.0, start + b * 60.0, step.min(43_200.0)) {
                all.push(Tick { at: self.x((at_s - start) / 60.0), label: tick_clock(at_s, step, system) });
            }
        }
        with_room(all, how, from, to)
    }

    /// `day 1`, `day 2`... under the middle of each day, where there is more than one.
    pub(super) fn day_labels(&self, how: Type, from: f64, to: f64) -> Vec<Tick> {
        if self.days.worked.len() < 2 {
            return Vec::new();
        }
        let labels = |word: &str| -> Vec<Tick> {
            let each = self.days.worked.iter();
            each.map(|(a, b)| Tick {
                at: f64::midpoint(self.x(*a), self.x(*b)),
                label: format!("{word}{}", ((self.days.start_s / 60.0 + a) / DAY_MIN).floor() as i64 + 1),
            })
            .collect()
        };
        let long = with_room(labels("day "), how, from, to);
        if long.len() == self.days.worked.len() { long } else { with_room(labels(""), how, from, to) }
    }

    /// What the axis shows, in words.
    pub(super) fn name(&self) -> &'static str {
        if self.days.worked.len() > 1 { "clock time; nights are squeezed to a strip" } else { "clock time" }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::{Break, Distribution};

    fn shift(end_h: Option<f64>) -> Shift {
        Shift {
            start_s: 8.0 * 3600.0,
            end_s: end_h.map(|h| h * 3600.0),
            breaks: vec![Break { start_s: 12.0 * 3600.0, end_s: 12.5 * 3600.0 }],
            set_up_s: Distribution::Constant(0.0),
            clean_up_s: Distribution::Constant(0.0),
        }
    }

    #[test]
    fn nights_are_squeezed_and_working_hours_are_to_scale() {
        let days = Days::new(&shift(Some(16.0)), 1_440.0 + 240.0, std::iter::empty(), System::Metric);
        assert_eq!(days.worked, [(0.0, 480.0), (1_440.0, 1_680.0)]);
        let scale = DayScale::new(&days, 100.0, 100.0 + 720.0 + 10.0, 10.0);
        assert_eq!((scale.x(0.0), scale.x(480.0)), (100.0, 580.0));
        assert_eq!(scale.x(960.0), 585.0, "the middle of the night lies in the middle of its strip");
        assert_eq!((scale.x(1_440.0), scale.x(1_680.0)), (590.0, 830.0));
        assert_eq!(scale.nights(), [(580.0, 590.0)]);
    }

    #[test]
    fn a_day_is_as_long_as_somebody_works() {
        let days = Days::new(&shift(Some(16.0)), 1_500.0, [470.0, 505.0].into_iter(), System::Metric);
        assert_eq!(days.worked, [(0.0, 505.0), (1_440.0, 1_500.0)]);
    }

    #[test]
    fn a_short_rest_of_a_day_gets_no_piece_of_its_own() {
        let cut = |until: f64| {
            let days = Days::new(&shift(None), until, std::iter::empty(), System::Metric);
            days.cut(60.0).into_iter().map(|piece| piece.worked[0]).collect::<Vec<_>>()
        };
        assert_eq!(cut(124.0), [(0.0, 60.0), (60.0, 124.0)]);
        assert_eq!(cut(130.0), [(0.0, 60.0), (60.0, 120.0), (120.0, 130.0)]);
        assert_eq!(cut(4.0), [(0.0, 4.0)]);
        let days = Days::new(&shift(Some(16.0)), 1_500.0, std::iter::empty(), System::Metric).cut(240.0);
        assert_eq!(
            days.iter().map(|d| d.worked[0]).collect::<Vec<_>>(),
            [(0.0, 240.0), (240.0, 480.0), (1_440.0, 1_500.0)]
        );
        assert_eq!(days[1].breaks, [(240.0, 270.0)]);
    }

    #[test]
    fn breaks_come_every_day_and_are_cut_where_the_axis_ends() {
        let days = Days::new(&shift(Some(16.0)), 1_440.0 + 250.0, std::iter::empty(), System::Metric);
        assert_eq!(days.breaks, [(240.0, 270.0), (1_680.0, 1_690.0)]);
    }

    #[test]
    fn a_crew_without_hours_has_no_nights() {
        let days = Days::new(&shift(None), 2_000.0, std::iter::empty(), System::Metric);
        assert_eq!(days.worked, [(0.0, 2_000.0)]);
    }
}
