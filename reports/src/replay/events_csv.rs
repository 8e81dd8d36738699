//! `events.csv`: everything that happened in a replayed run, in order.

use crate::forecast::seconds;
use crate::render::csv::{ExportError, clock_s, clock_text, table, volumes};
use sim::{Entry, Event, Job, Replay};

/// `clock_s` counts from midnight of the first day. Loads are counted from 1.
const HEADER: [&str; 11] = [
    "clock_s",
    "clock",
    "who",
    "name",
    "event",
    "load",
    "zone",
    "stockpile",
    "pass",
    "volume_m3",
    "volume_yd3",
];

/// The whole event log of a replayed run.
///
/// # Errors
/// If the table cannot be written.
pub fn events_csv(job: &Job, replay: &Replay) -> Result<Vec<u8>, ExportError> {
    table(HEADER, replay.log.iter().map(|entry| row(job, entry)))
}

/// The columns after the time.
#[derive(Default)]
struct Told<'a> {
    who: &'static str,
    name: &'a str,
    event: &'static str,
    load: Option<u32>,
    zone: Option<usize>,
    stockpile: Option<usize>,
    pass: Option<usize>,
    volume_m3: Option<f64>,
}

fn row(job: &Job, entry: &Entry) -> Vec<String> {
    let told = told(job, entry.event);
    let name = |found: Option<&String>| found.cloned().unwrap_or_default();
    let [m3, yd3] = told.volume_m3.map_or_else(Default::default, volumes);
    vec![
        clock_s(job, entry.at),
        clock_text(job.shift.start_s + seconds(entry.at)),
        told.who.to_owned(),
        told.name.to_owned(),
        told.event.to_owned(),
        told.load.map_or_else(String::new, |load| (load + 1).to_string()),
        name(told.zone.and_then(|z| job.zones.get(z)).map(|z| &z.name)),
        name(told.stockpile.and_then(|p| job.stockpiles.get(p)).map(|p| &p.name)),
        name(told.pass.and_then(|p| job.passes.get(p)).map(|p| &p.name)),
        m3,
        yd3,
    ]
}

fn told(job: &Job, event: Event) -> Told<'_> {
    match event {
        Event::Loader { loader, activity, load, zone, stockpile, pass, volume_m3 } => Told {
            who: "loader",
            name: job.loaders.get(loader).map_or("", |l| l.name.as_str()),
            event: activity.words(),
            load,
            zone,
            stockpile,
            pass,
            volume_m3: Some(volume_m3),
        },
        Event::Raker { raker, activity, load, zone } => Told {
            who: "raker",
            name: job.rakers.get(raker).map_or("", |r| r.name.as_str()),
            event: activity.words(),
            load,
            zone: Some(zone),
            ..Told::default()
        },
        Event::HeapRakedOut { load, zone, volume_m3 } => Told {
            who: "heap",
            event: "raked out",
            load: Some(load),
            zone: Some(zone),
            volume_m3: Some(volume_m3),
            ..Told::default()
        },
        Event::Delivered { stockpile, volume_m3 } => Told {
            who: "truck",
            event: "delivered",
            stockpile: Some(stockpile),
            volume_m3: Some(volume_m3),
            ..Told::default()
        },
        Event::WorkPauses { end_of_day } => Told {
            who: "crew",
            event: if end_of_day { "end of the day" } else { "break begins" },
            ..Told::default()
        },
        Event::WorkResumes => Told { who: "crew", event: "work goes on", ..Told::default() },
    }
}
