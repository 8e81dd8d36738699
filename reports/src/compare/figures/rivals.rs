//! Several jobs' chance of being done by a time, from a comparison.

use crate::chart::completion::curve;
use crate::chart::rivals::{MOST_CURVES, Rank, Rival, RivalsData};
use crate::chart::words::short_name;
use crate::compare::{Choice, Comparison, Judged};
use crate::findings::{Calendar, PLAN_SHARE};
use scenarios::units::{clock, figure};
use sim::Sorted;

/// Prepares the figure.
pub(crate) fn prepare(comparison: &Comparison) -> RivalsData {
    let by_clock = comparison.time() == Judged::ClockTime;
    let nights = comparison.has_nights();
    let start_s = comparison.first().scenario.job.shift.start_s;
    let samples: Vec<Sorted> =
        comparison.choices.iter().map(|choice| finish(comparison, choice, start_s)).collect();
    let last = samples.iter().filter_map(|s| s.values().last()).copied().fold(0.0, f64::max);
    let one_day_from_s = Some(start_s).filter(|start| !nights && start + last * 60.0 < 86_400.0);
    let shown = shown(comparison, &samples);
    let best = &samples[comparison.best];
    let near = shown.iter().map(|place| &samples[*place]).filter(|sample| is_near(sample, best));
    let range = range(near);
    let when = |place: usize| {
        let choice = &comparison.choices[place];
        let finish = |o: &sim::Outcome| Judged::ClockTime.of(choice.scenario.job.shift.start_s, o);
        let by_s = choice.study.sorted(finish).percentile(PLAN_SHARE).value;
        let working = choice.study.sorted(|o| o.finish.working.as_secs_f64()).percentile(PLAN_SHARE).value;
        let done = Calendar::of(&choice.scenario, comparison.units).done(working, by_s);
        if one_day_from_s.is_some() || by_clock {
            done.clock
        } else {
            format!("{}, {} of work", done.clock, done.duration)
        }
    };
    let rival = |place: usize| Rival {
        letter: Choice::letter(place),
        name: comparison.choices[place].name.clone(),
        points: curve(samples[place].values(), samples[place].values().partition_point(|v| *v <= range.1)),
        p80: samples[place].percentile(PLAN_SHARE).value,
        when: when(place),
        rank: rank(comparison, place),
    };
    let axis = match one_day_from_s {
        Some(start) => format!("clock time, and time since {}", clock(start, comparison.units)),
        None if by_clock => {
            format!("time since {} of the first day, nights included", clock(start_s, comparison.units))
        }
        None => "working time from the start to the end of the job, nights left out".into(),
    };
    let (best, other) = (comparison.best, against(comparison, &samples));
    let name = |place: usize| format!("\"{}\"", short_name(&comparison.choices[place].name));
    RivalsData {
        title: format!(
            "Eight days in ten {} is done by {}, {} by {}",
            name(best),
            when(best),
            name(other),
            when(other)
        ),
        range,
        one_day_from_s,
        axis,
        units: comparison.units,
        curves: shown.iter().map(|place| rival(*place)).collect(),
        note: note(comparison, shown.len()),
    }
}

/// When each run is done \[min from the start of the first job\], in order.
fn finish(comparison: &Comparison, choice: &Choice, start_s: f64) -> Sorted {
    let own_start = choice.scenario.job.shift.start_s;
    let shift = if comparison.time() == Judged::ClockTime { start_s } else { 0.0 };
    choice.study.sorted(|o| (comparison.time().of(own_start, o) - shift) / 60.0)
}

fn rank(comparison: &Comparison, place: usize) -> Rank {
    match place {
        best if best == comparison.best => Rank::Best,
        0 => Rank::First,
        _ => Rank::Other,
    }
}

/// The job to name beside the best: the first, or where that is the best the next by its P80.
fn against(comparison: &Comparison, samples: &[Sorted]) -> usize {
    if comparison.best > 0 {
        return 0;
    }
    let p80 = |place: &usize| samples[*place].percentile(PLAN_SHARE).value;
    (1..samples.len()).min_by(|a, b| p80(a).total_cmp(&p80(b))).unwrap_or(0)
}

/// The best, the first, and those with the earliest P80 beside them, in their order.
fn shown(comparison: &Comparison, samples: &[Sorted]) -> Vec<usize> {
    let p80 = |place: usize| samples[place].percentile(PLAN_SHARE).value;
    let mut order: Vec<usize> = (0..samples.len()).collect();
    order.sort_by(|a, b| {
        let fixed = |place: usize| rank(comparison, place) == Rank::Other;
        fixed(*a).cmp(&fixed(*b)).then(p80(*a).total_cmp(&p80(*b)))
    });
    order.truncate(MOST_CURVES);
    order.sort_unstable();
    order
}

/// Most widths of the best job's range that another may come after it and still be drawn beside it (our own choice).
const FAR: f64 = 4.0;

/// Whether a job beside the best leaves room to see that one's curve.
fn is_near(sample: &Sorted, best: &Sorted) -> bool {
    let [early, late] = [0.005, 0.995].map(|share| best.percentile(share).value);
    sample.percentile(0.995).value <= late + FAR * (late - early).max(0.1 * late)
}

/// From and to of the axis: one run in two hundred at either end may lie outside.
fn range<'a>(samples: impl Iterator<Item = &'a Sorted>) -> (f64, f64) {
    let ends = samples.map(|s| (s.percentile(0.005).value, s.percentile(0.995).value));
    let (from, to) = ends.fold((f64::INFINITY, 0.0_f64), |(from, to), (a, b)| (from.min(a), to.max(b)));
    let spare = ((to - from) * 0.04).max(to * 0.004).max(0.02);
    ((from - spare).max(0.0), to + spare)
}

fn note(comparison: &Comparison, shown: usize) -> String {
    let runs = comparison.choices.iter().map(|choice| choice.study.runs());
    let (least, most) = (runs.clone().min().unwrap_or(0), runs.max().unwrap_or(0));
    let count = |n: u32| figure(f64::from(n));
    let runs = if least == most {
        format!("{} runs each", count(most))
    } else {
        format!("{} to {} runs each", count(least), count(most))
    };
    match comparison.choices.len() - shown {
        0 => runs,
        1 => format!("{runs}; one slower job is left out"),
        more => format!("{runs}; {more} slower jobs are left out"),
    }
}

#[cfg(test)]
mod tests;
#[cfg(test)]
pub(crate) use tests::nine;
