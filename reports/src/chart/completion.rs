//! When will it be done: how often each finishing time came out, and the chance of being done by then.

pub(super) mod labels;
mod sketch;

pub(crate) use sketch::draw;

use super::ticks::{multiples, time_step};
use crate::findings::{
    Calendar, Done, OrderFindings, PLAN_SHARE, about_duration, days_in, label, share_of_runs,
};
use scenarios::units::System;
use sim::{Handbook, Shift, Sorted, Study};

/// The finish of many runs, ready to be drawn. Times are working time from the start of the first day \[min\]; where
/// everything falls on one day that is also time on the clock.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct CompletionData {
    /// The finding.
    pub title: String,
    /// Number of runs.
    pub runs: usize,
    /// From and to of the axis \[min\].
    pub range: (f64, f64),
    /// Bars of the histogram, from the earliest: left edge \[min\] and share of the runs \[%\].
    pub bars: Vec<(f64, f64)>,
    /// Width of a bar \[min\].
    pub bar_min: f64,
    /// The rising curve: time \[min\] and chance of being done by then \[%\]; it ends at the share of the runs that are done.
    pub curve: Vec<(f64, f64)>,
    /// What is marked, from the earliest.
    pub marks: Vec<Mark>,
    /// Clock time of minute 0 \[s after midnight\] where everything falls on one day.
    pub one_day_from_s: Option<f64>,
    /// Which clock is shown.
    pub units: System,
    /// How many runs, and those beyond the axis if there are any.
    pub note: String,
}

/// A time that is marked and named.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Mark {
    /// When \[min\].
    pub at: f64,
    /// Chance of being done by then \[%\].
    pub chance: f64,
    /// What kind of time it is.
    pub kind: MarkKind,
    /// What it is called.
    pub name: String,
    /// When it is, in words.
    pub when: String,
    /// What that means.
    pub lines: Vec<String>,
}

/// What is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum MarkKind {
    /// A percentile of the runs.
    Percentile,
    /// The handbook figure.
    Handbook,
    /// The price to quote, where the axis is one of prices.
    Quote,
}

/// Points of the curve for many runs; fewer runs are drawn one by one.
const POINTS: usize = 200;
/// Most bars.
const BARS: f64 = 32.0;
/// Fewer runs are too few to speak of eight days in ten (our own choice).
const FEW: usize = 20;

/// Prepares the figure.
pub(crate) fn prepare(
    study: &Study,
    handbook: &Handbook,
    shift: &Shift,
    order: &OrderFindings,
    calendar: Calendar,
) -> CompletionData {
    let done = study.outcomes.iter().filter_map(sim::Outcome::done);
    let done = Sorted::new(done.map(|done| done.working.as_secs_f64() / 60.0));
    let finish = study.sorted(|o| o.finish.working.as_secs_f64() / 60.0);
    let by_clock = study.sorted(|o| o.finish.clock.as_secs_f64());
    let values = finish.values();
    let nights = study.outcomes.iter().any(|o| o.finish.clock != o.finish.working);
    let last = values.last().copied().unwrap_or(0.0);
    let one_day_from_s = Some(shift.start_s).filter(|start| !nights && start + last * 60.0 < 86_400.0);
    let times = Times {
        finish: &finish,
        done: &done,
        order,
        by_clock: &by_clock,
        start_s: shift.start_s,
        say: Say::of(one_day_from_s.is_some(), last),
        calendar,
    };
    let book_min = Some(handbook.time_s / 60.0).filter(|m| m.is_finite() && *m > 0.0);
    let (range, shown) = range(&finish, book_min);
    let (bar_min, bars) = bars(&values[..shown], values.len(), range, one_day_from_s.unwrap_or(0.0) / 60.0);
    let mut marks: Vec<Mark> = if values.is_empty() { Vec::new() } else { times.percentiles() };
    marks.extend(book_min.map(|at| times.handbook(at)));
    marks.sort_by(|a, b| a.at.total_cmp(&b.at));
    CompletionData {
        title: times.title(book_min),
        runs: values.len(),
        range,
        bars,
        bar_min,
        curve: rising(&done, values.len(), range.1),
        marks,
        one_day_from_s,
        units: calendar.units,
        note: note(values, shown, order),
    }
}

/// How a time is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Say {
    /// By the clock: everything falls on one day.
    Clock,
    /// By the time it takes: minutes are too coarse.
    After,
    /// By the time it takes, with day and clock.
    Days,
}

/// Runs shorter than this are told by the seconds they take and not by the clock \[min\].
const SHORT_MIN: f64 = 15.0;

impl Say {
    fn of(one_day: bool, longest_min: f64) -> Self {
        match one_day {
            true if longest_min < SHORT_MIN => Self::After,
            true => Self::Clock,
            false => Self::Days,
        }
    }
}

struct Times<'a> {
    finish: &'a Sorted,
    by_clock: &'a Sorted,
    start_s: f64,
    say: Say,
    calendar: Calendar,
    /// When the runs that are done are done \[min\].
    done: &'a Sorted,
    order: &'a OrderFindings,
}

impl Times<'_> {
    fn certain(&self) -> bool {
        self.finish.values().first() == self.finish.values().last()
    }

    /// How long a share of the runs take and when they end.
    fn end(&self, share: f64) -> Done {
        let by_s = self.start_s + self.by_clock.percentile(share).value;
        self.calendar.done(self.finish.percentile(share).value * 60.0, by_s)
    }

    /// Chance of being done by then \[0 to 1\].
    fn chance(&self, at: f64) -> f64 {
        let done = self.done.values().partition_point(|v| *v <= at);
        done as f64 / self.finish.values().len().max(1) as f64
    }

    /// When a share of the runs is done, in words.
    fn when(&self, share: f64) -> String {
        let Done { duration: takes, clock: by } = self.end(share);
        match self.say {
            Say::Clock => format!("by {by}"),
            Say::After => format!("after {takes}"),
            Say::Days => format!("by {by} ({takes} of work)"),
        }
    }

    fn percentiles(&self) -> Vec<Mark> {
        let shares: &[f64] = if self.certain() { &[0.5] } else { &[0.5, PLAN_SHARE] };
        shares.iter().map(|share| self.percentile(*share)).collect()
    }

    fn percentile(&self, share: f64) -> Mark {
        let at = self.finish.percentile(share).value;
        let Done { duration: takes, clock: by } = self.end(share);
        let name = match (self.certain(), self.order.enough) {
            (true, true) => "done".to_owned(),
            (true, false) => "stops".to_owned(),
            _ => label(share),
        };
        let (when, mut lines) = match self.say {
            Say::Clock => (by, Vec::new()),
            Say::After => (takes, Vec::new()),
            Say::Days => (takes, vec![by]),
        };
        lines.push(match self.finish.values().len() {
            1 => "the one run".into(),
            _ if self.certain() => "every run".into(),
            // The curve tells how often the job is done by then, which is less often than the crew stops.
            _ if !self.order.enough => "crew stops".into(),
            _ => days_in(share),
        });
        let chance = match (self.order.enough, self.certain()) {
            (false, _) => self.chance(at) * 100.0,
            (true, true) => 100.0,
            (true, false) => share * 100.0,
        };
        Mark { at, chance, kind: MarkKind::Percentile, name, when, lines }
    }

    fn handbook(&self, at: f64) -> Mark {
        let chance = self.chance(at);
        let lines = vec![share_of_runs(chance)];
        let (name, when) = ("handbook".into(), self.handbook_when(at));
        Mark { at, chance: chance * 100.0, kind: MarkKind::Handbook, name, when, lines }
    }

    fn handbook_when(&self, at: f64) -> String {
        match self.say {
            Say::Clock => self.calendar.about(self.start_s + at * 60.0),
            Say::After | Say::Days => about_duration(at * 60.0),
        }
    }

    fn title(&self, book_min: Option<f64>) -> String {
        let finding = match self.finish.values().len() {
            0 => return "No run was made".into(),
            _ if !self.order.enough => {
                let short = share_of_runs(self.order.chance_short.value);
                return format!("Short of material in {short}, so not done: order {}", self.order.more);
            }
            1 => format!("The one run made is done {}", self.when(0.5)),
            _ if self.certain() => format!("Every run is done {}", self.when(0.5)),
            few if few < FEW => {
                return format!("Of {few} runs, half are done {} and all {}", self.when(0.5), self.when(1.0));
            }
            _ => format!("Eight days in ten it is done {}", self.when(PLAN_SHARE)),
        };
        match book_min.map(|at| self.handbook_when(at)) {
            Some(book) => format!("{finding}; the handbook figure says {book}"),
            None => finding,
        }
    }
}

/// From and to of the axis, and how many runs lie within. A few runs far beyond the rest are left out (and said to be),
/// lest they press all others together.
fn range(finish: &Sorted, book_min: Option<f64>) -> ((f64, f64), usize) {
    let values = finish.values();
    let (Some(first), Some(last)) = (values.first(), values.last()) else {
        return ((0.0, book_min.unwrap_or(1.0) * 1.1), 0);
    };
    let [low, high] = [0.01, 0.99].map(|share| finish.percentile(share).value);
    let far = high + 0.8 * (high - low);
    let end = if *last > far && values.len() >= 100 { far } else { *last };
    let (from, to) = (book_min.map_or(*first, |b| b.min(*first)), book_min.map_or(end, |b| b.max(end)));
    let spare = ((to - from) * 0.04).max(to * 0.004).max(0.02);
    let spare = if to > from { spare } else { (to * 0.05).max(0.1) };
    let range = ((from - spare).max(0.0), to + spare);
    (range, values.partition_point(|v| *v <= range.1))
}

/// Bars of a round width, at round clock times: as wide as the spread asks for (Freedman & Diaconis, Probability Theory
/// and Related Fields 57, 1981: `2 IQR / n^(1/3)`), and not many more than `BARS` of them.
fn bars(shown: &[f64], runs: usize, range: (f64, f64), start_min: f64) -> (f64, Vec<(f64, f64)>) {
    let (Some(first), Some(last)) = (shown.first(), shown.last()) else { return (1.0, Vec::new()) };
    let span = range.1 - range.0;
    if last - first < 1e-9 {
        let width = span / 25.0;
        return (width, vec![(first - width / 2.0, 100.0 * shown.len() as f64 / runs as f64)]);
    }
    let quarter = |q: usize| shown[(shown.len() - 1) * q / 4];
    let wanted = 2.0 * (quarter(3) - quarter(1)) / (shown.len() as f64).cbrt();
    let width =
        time_step((wanted.max(span / BARS).min((last - first) / 3.0)).max(span / 120.0) * 60.0) / 60.0;
    let edges = multiples(start_min + first - width, start_min + last, width);
    let bars = edges
        .into_iter()
        .map(|edge| edge - start_min)
        .map(|from| {
            let below = |limit: f64| shown.partition_point(|v| *v < limit - 1e-9);
            (from, 100.0 * (below(from + width) - below(from)) as f64 / runs as f64)
        })
        .skip_while(|(_, share)| *share == 0.0)
        .collect();
    (width, bars)
}

/// The rising curve of values in order, of which the first `shown` are drawn: value and share so far \[%\].
pub(crate) fn curve(values: &[f64], shown: usize) -> Vec<(f64, f64)> {
    let runs = values.len() as f64;
    let share = |count: usize| 100.0 * count as f64 / runs;
    let mut points = Vec::new();
    if shown <= POINTS {
        for (i, value) in values[..shown].iter().enumerate() {
            points.extend([(*value, share(i)), (*value, share(i + 1))]);
        }
        return points;
    }
    for step in 0..=POINTS {
        let i = step * (shown - 1) / POINTS;
        points.push((values[i], share(i + 1)));
    }
    points
}

/// The rising chance of being done: of so many runs, those that are done by then, as far as the axis reaches.
fn rising(done: &Sorted, runs: usize, end: f64) -> Vec<(f64, f64)> {
    let values = done.values();
    let share_done = values.len() as f64 / runs.max(1) as f64;
    let shown = values.partition_point(|v| *v <= end);
    curve(values, shown).into_iter().map(|(at, percent)| (at, percent * share_done)).collect()
}

fn note(values: &[f64], shown: usize, order: &OrderFindings) -> String {
    let runs = match values.len() {
        1 => "1 run".into(),
        n => format!("{} runs", scenarios::units::figure(n as f64)),
    };
    let words = match values.len() - shown {
        0 => runs,
        later => {
            let longest = about_duration(values.last().copied().unwrap_or(0.0) * 60.0);
            format!("{runs}; {later} of them end beyond the right edge, the last after {longest}")
        }
    };
    match order.chance_short.value {
        short if short > 0.0 => {
            let done = share_of_runs(1.0 - short);
            format!("{words}; the curve ends at the runs that are done: {done}")
        }
        _ => words,
    }
}

#[cfg(test)]
mod tests;
