//! How far the work will be at what time: the middle run and the band in which eight runs of ten lie.

mod sketch;

pub(crate) use sketch::draw;

use super::days::Days;
use crate::findings::Calendar;
use crate::findings::about_duration;
use sim::{Duration, Job, PROGRESS_PARTS, Sorted, Study};

/// Progress of many runs, ready to be drawn. Times are on the clock, from the start of the first day \[min\].
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ProgressData {
    /// The finding.
    pub title: String,
    /// Number of runs.
    pub runs: usize,
    /// When each share of the volume was raked out, rising; the first is 0 % at minute 0.
    pub steps: Vec<Step>,
    /// The days shown, with their breaks.
    pub days: Days,
    /// When deliveries are promised \[min\], rising.
    pub deliveries: Vec<f64>,
}

/// When a share of the volume was raked out \[min\].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Step {
    /// Share of the volume placed \[%\].
    pub percent: f64,
    /// In the early runs (P10).
    pub early: f64,
    /// In the middle run (P50).
    pub middle: f64,
    /// In the late runs (P90).
    pub late: f64,
}

/// Prepares the figure.
pub(crate) fn prepare(study: &Study, job: &Job, calendar: Calendar) -> ProgressData {
    let parts: Vec<Sorted> =
        (0..PROGRESS_PARTS).map(|part| study.sorted(|o| minutes(o.progress[part]))).collect();
    let mut steps = vec![Step { percent: 0.0, early: 0.0, middle: 0.0, late: 0.0 }];
    if study.runs() > 0 {
        steps.extend(parts.iter().enumerate().map(|(part, times)| {
            let at = |share| times.percentile(share).value;
            let percent = (part + 1) as f64 * 100.0 / PROGRESS_PARTS as f64;
            Step { percent, early: at(0.1), middle: at(0.5), late: at(0.9) }
        }));
    }
    let last = steps.last().map_or(0.0, |step| step.late);
    let seen = study.outcomes.iter().flat_map(|o| o.progress).map(minutes);
    let days = Days::new(&job.shift, last * 1.02, seen, calendar.units);
    ProgressData {
        title: title(&steps, study.runs(), job.shift.start_s, calendar),
        runs: study.outcomes.len(),
        deliveries: deliveries(job, days.until()),
        steps,
        days,
    }
}

fn minutes(time: Duration) -> f64 {
    time.as_secs_f64() / 60.0
}

/// When deliveries are promised, as far as the axis goes.
fn deliveries(job: &Job, until: f64) -> Vec<f64> {
    let all = job.stockpiles.iter().flat_map(|pile| &pile.deliveries);
    let mut at: Vec<f64> = all.map(|d| (d.at_s - job.shift.start_s) / 60.0).collect();
    at.retain(|min| (0.0..=until).contains(min));
    at.sort_by(f64::total_cmp);
    at
}

/// Runs shorter than this are told by the seconds they take and not by the clock \[min\].
const SHORT_MIN: f64 = 15.0;

fn title(steps: &[Step], runs: u32, start_s: f64, calendar: Calendar) -> String {
    let [Some(half), Some(all)] = [steps.get(PROGRESS_PARTS / 2), steps.last()] else {
        return "No run was made".into();
    };
    let short = runs > 0 && all.late < SHORT_MIN;
    let at = |min: f64| calendar.done(min * 60.0, start_s + min * 60.0).clock;
    let say = |min: f64| if short { about_duration(min * 60.0) } else { at(min) };
    let (early, late) = (say(half.early), say(half.late));
    let by = if short { "after" } else { "by" };
    if early == late {
        let whose = match runs {
            1 => " in the one run made",
            _ if half.early < half.late => " in nine runs of ten",
            _ => " in every run",
        };
        return format!("Half of the volume is raked out {by} {late}{whose}");
    }
    // When all of it is done is said once, by the finish.
    format!("Half of the volume is raked out between {early} and {late} in eight runs of ten")
}

#[cfg(test)]
mod tests;
