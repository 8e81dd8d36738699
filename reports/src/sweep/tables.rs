//! `sweep.csv`: one row a point.

use crate::findings::{Estimate, is_priced};
use crate::render::ExportError;
use crate::render::table::{Table, Unit};
use crate::sweep::findings::{PointFindings, Range, SHARES, SweepFindings, paired};
use crate::sweep::{Point, Run, Sweep};
use scenarios::Value;
use scenarios::units::System;

/// A point, what is said of it, and what it saves in time and money against the point before it along each thing.
struct Row<'a> {
    point: &'a Point,
    findings: &'a PointFindings,
    /// Counted from the start of the day and then told from midnight: the last digit is not the same as that of the sum.
    finish_clock_s: Range,
    saved: Vec<Option<[Option<Estimate>; 2]>>,
}

/// Every point of a sweep with the percentiles of its figures and their 95 % intervals (type 7, order statistics), the
/// chance of being done in time (Clopper and Pearson), and what it saves against the point before it along each thing (mean
/// of paired differences, Student's t). What is unknown is empty.
pub(crate) fn sweep_csv(sweep: &Sweep, findings: &SweepFindings) -> Result<Vec<u8>, ExportError> {
    let rows: Vec<Row<'_>> = (0..sweep.points.len()).map(|place| row(sweep, findings, place)).collect();
    let mut table = things(sweep)
        .plain("as_it_stands", |row: &Row<'_>| row.findings.as_it_stands)
        .plain("runs", |row| row.point.runs.len())
        .plain("loaders", |row| row.point.scenario.job.loaders.len())
        .plain("rakers", |row| row.point.scenario.job.rakers.len())
        .plain("currency", |_| sweep.base.currency.as_str());
    for (figure, of) in FIGURES {
        for (place, share) in SHARES.iter().enumerate() {
            let name = format!("{figure}_p{:.0}", share * 100.0);
            table = table.estimate(name, Unit::None, move |row| of(row).map(|range| range[place]));
        }
    }
    table = table.plain("by_clock_s", |_| sweep.deadline.map(|deadline| deadline.by_s)).estimate(
        "chance_by",
        Unit::None,
        |row| row.findings.chance,
    );
    for thing in 0..2 {
        for (place, figure) in ["s", "cost"].into_iter().enumerate() {
            let saved = move |row: &Row<'_>| row.saved.get(thing)?.and_then(|saved| saved[place]);
            table = table.estimate(format!("saved_along_{}_{figure}", thing + 1), Unit::None, saved);
        }
    }
    table.plain("who_waits", |row| row.findings.who_waits.clone()).csv(&rows)
}

/// Figures of which percentiles are told.
type Figure = fn(&Row<'_>) -> Option<Range>;

const FIGURES: [(&str, Figure); 5] = [
    ("finish_working_s", |row| Some(row.findings.finish_working_s)),
    ("finish_clock_s", |row| Some(row.finish_clock_s)),
    ("loads", |row| Some(row.findings.loads)),
    ("labour_h", |row| Some(row.findings.labour_h)),
    ("cost", |row| row.findings.cost.filter(|_| is_priced(&row.point.scenario.job))),
];

/// The value of each thing varied as typed, in metric and in US units, and its place among the values.
fn things(sweep: &Sweep) -> Table<'_, Row<'_>> {
    let mut table = Table::new();
    for at in 0..2 {
        let place = move |row: &Row<'_>| row.point.places.get(at).copied();
        let value = move |row: &Row<'_>| -> Option<&Value> { sweep.things.get(at)?.values.get(place(row)?) };
        let name = |column: &str| format!("value_{}_{column}", at + 1);
        table = table
            .plain(format!("thing_{}", at + 1), move |_| {
                sweep.things.get(at).map(|vary| vary.knob.to_string())
            })
            .plain(name("typed"), move |row| value(row).map(ToString::to_string));
        for (key, system) in [("metric", System::Metric), ("us", System::Us)] {
            table = table
                .plain(name(key), move |row| value(row).map(|value| value.number(system).0))
                .plain(name(&format!("{key}_unit")), move |row| {
                    value(row).map(|value| value.number(system).1)
                });
        }
        table = table.plain(name("place"), move |row| place(row).map(|place| (place + 1).to_string()));
    }
    table
}

fn row<'a>(sweep: &'a Sweep, findings: &'a SweepFindings, place: usize) -> Row<'a> {
    let (point, findings) = (&sweep.points[place], &findings.points[place]);
    let saved = |before: usize| {
        let priced = [before, place].iter().any(|at| is_priced(&sweep.points[*at].scenario.job));
        let mean = |figure: fn(&Run) -> f64| Estimate::from(paired(sweep, before, place, figure));
        [Some(mean(Run::working_s)), priced.then(|| mean(|run| run.cost))]
    };
    let saved = findings.saved.iter().map(|step| step.as_ref().map(|step| saved(step.against))).collect();
    let clock = point.sorted(Run::clock_s);
    let finish_clock_s = SHARES.map(|share| Estimate::from(clock.percentile(share)).plus(point.start_s()));
    Row { point, findings, finish_clock_s, saved }
}
