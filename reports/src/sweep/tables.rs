//! `sweep.csv`: one row a point.

use crate::findings::is_priced;
use crate::render::csv::{ExportError, number, table};
use crate::sweep::findings::{SHARES, SweepSays};
use crate::sweep::{Point, Run, Sweep};
use scenarios::units::System;
use sim::Paired;

/// A value of a thing as typed, in metric and in US units; then the figures.
const THING: [&str; 6] = ["typed", "metric", "metric_unit", "us", "us_unit", "place"];

type Figure = (&'static str, fn(&Run) -> f64);

/// Figures of which percentiles are told.
const FIGURES: [Figure; 5] = [
    ("finish_working_s", Run::working_s),
    ("finish_clock_s", Run::clock_s),
    ("loads", |run| run.loads as f64),
    ("labour_h", |run| run.labour_h),
    ("cost", |run| run.cost),
];

fn header() -> Vec<String> {
    let mut header = Vec::new();
    for thing in 1..=2 {
        header.push(format!("thing_{thing}"));
        header.extend(THING.iter().map(|column| format!("value_{thing}_{column}")));
    }
    header.extend(["as_it_stands", "runs", "loaders", "rakers", "currency"].map(str::to_owned));
    for (figure, _) in FIGURES {
        for share in SHARES {
            let name = format!("{figure}_p{:.0}", share * 100.0);
            header.extend([name.clone(), format!("{name}_low_95"), format!("{name}_high_95")]);
        }
    }
    header.extend(["by_clock_s", "chance_by", "chance_by_low_95", "chance_by_high_95"].map(str::to_owned));
    for thing in 1..=2 {
        for figure in ["s", "cost"] {
            let name = format!("saved_along_{thing}_{figure}");
            header.extend([name.clone(), format!("{name}_low_95"), format!("{name}_high_95")]);
        }
    }
    header.push("who_waits".into());
    header
}

/// Every point of a sweep with the percentiles of its figures and their 95 % intervals (type 7, order statistics), the
/// chance of being done in time (Clopper and Pearson), and what it saves against the point before it along each thing (mean
/// of paired differences, Student's t). What is unknown is empty.
///
/// # Errors
/// If the table cannot be written.
pub fn sweep_csv(sweep: &Sweep, says: &SweepSays) -> Result<Vec<u8>, ExportError> {
    let header = header();
    let rows = sweep.points.iter().zip(&says.points).map(|(point, told)| {
        let mut row = things(sweep, point);
        row.extend(crew(sweep, point, told.as_it_stands));
        row.extend(percentiles(point));
        row.extend(chance(sweep, point));
        for thing in 0..2 {
            let before = told.saved.get(thing).and_then(|saved| saved.as_ref()).map(|saved| saved.against);
            row.extend(saved(sweep, point, before));
        }
        row.push(told.who_waits.clone());
        row
    });
    table(header.iter().map(String::as_str), rows)
}

fn things(sweep: &Sweep, point: &Point) -> Vec<String> {
    let mut fields = Vec::new();
    for (vary, place) in sweep.things.iter().zip(&point.places) {
        let value = &vary.values[*place];
        fields.extend([vary.knob.to_string(), value.to_string()]);
        for system in [System::Metric, System::Us] {
            let (figure, unit) = value.number(system);
            fields.extend([number(figure), unit]);
        }
        fields.push((place + 1).to_string());
    }
    fields.resize(2 * (THING.len() + 1), String::new());
    fields
}

fn crew(sweep: &Sweep, point: &Point, as_it_stands: bool) -> [String; 5] {
    let job = &point.scenario.job;
    [
        if as_it_stands { "yes".into() } else { "no".into() },
        point.runs.len().to_string(),
        job.loaders.len().to_string(),
        job.rakers.len().to_string(),
        sweep.base.currency.clone(),
    ]
}

fn percentiles(point: &Point) -> Vec<String> {
    let priced = is_priced(&point.scenario.job);
    let mut fields = Vec::new();
    for (figure, of) in FIGURES {
        let sample = point.sorted(of);
        for share in SHARES {
            let p = sample.percentile(share);
            let from_midnight = if figure == "finish_clock_s" { point.start_s() } else { 0.0 };
            let known = |value: Option<f64>| {
                number(value.filter(|_| figure != "cost" || priced).map(|v| v + from_midnight))
            };
            fields.extend([Some(p.value), p.low, p.high].map(known));
        }
    }
    fields
}

fn chance(sweep: &Sweep, point: &Point) -> [String; 4] {
    let Some(deadline) = sweep.deadline else { return Default::default() };
    let share = point.share_done_by(deadline.by_s);
    [deadline.by_s, share.value, share.low, share.high].map(number)
}

/// Time \[s\] and cost saved against another point.
fn saved(sweep: &Sweep, point: &Point, before: Option<usize>) -> Vec<String> {
    let Some(before) = before.map(|before| &sweep.points[before]) else { return vec![String::new(); 6] };
    let priced = is_priced(&point.scenario.job) || is_priced(&before.scenario.job);
    let mean = |figure: fn(&Run) -> f64| {
        Paired::of(before.runs.iter().zip(&point.runs).map(|(b, a)| figure(b) - figure(a)).collect()).mean
    };
    let (time, cost) = (mean(Run::working_s), mean(|run| run.cost));
    let fields = [time.value, time.low, time.high].map(Some);
    let costs = [cost.value, cost.low, cost.high].map(|value| Some(value).filter(|_| priced));
    fields.into_iter().chain(costs).map(number).collect()
}
