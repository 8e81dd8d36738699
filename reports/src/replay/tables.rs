//! `loads.csv`: one row a load of a replayed run. `events.csv`: everything that happened in it, in order.

use crate::findings::load_story::{LoadStory, load_stories};
use crate::render::ExportError;
use crate::render::table::{Table, Unit};
use sim::{Duration, Event, Job, LoaderActivity as A, Replay};

/// The loads of a replayed run, counted from 1 in the order their loading began. Moments of the clock count from midnight of
/// the first day; the others are lengths of time.
pub(crate) fn loads_csv(job: &Job, replay: &Replay) -> Result<Vec<u8>, ExportError> {
    load_columns(job).csv(&load_stories(&replay.log))
}

fn load_columns(job: &Job) -> Table<'_, LoadStory> {
    let start_s = job.shift.start_s;
    let raked_by = |story: &LoadStory| {
        let names = story.rakers.iter().filter_map(|r| job.rakers.get(*r)).map(|r| r.name.as_str());
        names.collect::<Vec<_>>().join(" + ")
    };
    Table::new()
        .plain("load", |load: &LoadStory| load.load + 1)
        .plain("loader", |load| name_of(&job.loaders, Some(load.loader), |l| &l.name))
        .plain("stockpile", |load| name_of(&job.stockpiles, load.stockpile, |p| &p.name))
        .plain("zone", |load| name_of(&job.zones, load.zone, |z| &z.name))
        .volume("volume", |load| load.volume_m3)
        .figure("waited_for_delivery", Unit::Seconds, |load| load.times.time(A::WaitingForDelivery))
        .figure("waited_for_face", Unit::Seconds, |load| load.times.time(A::WaitingForFace))
        .clock("load_start_clock", start_s, |load| load.load_start)
        .plain("load_start_clock", move |load| load.load_start.map(|at| clock_text(job, at)))
        .clock("load_end_clock", start_s, |load| load.load_end)
        .figure("waited_for_pass", Unit::Seconds, |load| load.times.time(A::WaitingForPass))
        .figure("passing", Unit::Seconds, |load| load.times.time(A::Passing))
        .clock("arrival_clock", start_s, |load| load.arrival)
        .figure("waited_for_room", Unit::Seconds, |load| load.times.time(A::WaitingForRoom))
        .clock("dump_start_clock", start_s, |load| load.dump_start)
        .clock("dump_end_clock", start_s, |load| load.dump_end)
        .clock("rake_start_clock", start_s, |load| load.rake_start)
        .clock("raked_out_clock", start_s, |load| load.raked_out)
        .plain("raked_out_clock", move |load| load.raked_out.map(|at| clock_text(job, at)))
        .plain("raked_by", raked_by)
        .figure("stood_clear", Unit::Seconds, |load| load.stood_clear)
        .figure("stopped", Unit::Seconds, |load| load.times.time(A::Stopped))
        .figure("on_break", Unit::Seconds, |load| load.times.time(A::OnBreak))
}

/// The whole event log of a replayed run; `clock_s` counts from midnight of the first day, loads are counted from 1.
pub(crate) fn events_csv(job: &Job, replay: &Replay) -> Result<Vec<u8>, ExportError> {
    let rows: Vec<EventRow<'_>> = replay.log.iter().map(|entry| (entry.at, what(job, entry.event))).collect();
    event_columns(job).csv(&rows)
}

type EventRow<'a> = (Duration, What<'a>);

fn event_columns(job: &Job) -> Table<'_, EventRow<'_>> {
    Table::new()
        .clock("clock", job.shift.start_s, |(at, _): &EventRow<'_>| *at)
        .plain("clock", |(at, _)| clock_text(job, *at))
        .plain("who", |(_, what)| what.who)
        .plain("name", |(_, what)| what.name)
        .plain("event", |(_, what)| what.event)
        .plain("load", |(_, what)| what.load.map(|load| (load + 1).to_string()))
        .plain("zone", |(_, what)| name_of(&job.zones, what.zone, |z| &z.name))
        .plain("stockpile", |(_, what)| name_of(&job.stockpiles, what.stockpile, |p| &p.name))
        .plain("pass", |(_, what)| name_of(&job.passes, what.pass, |p| &p.name))
        .volume("volume", |(_, what)| what.volume_m3)
}

/// The columns after the time.
#[derive(Default)]
struct What<'a> {
    who: &'static str,
    name: &'a str,
    event: &'static str,
    load: Option<u32>,
    zone: Option<usize>,
    stockpile: Option<usize>,
    pass: Option<usize>,
    volume_m3: Option<f64>,
}

fn what(job: &Job, event: Event) -> What<'_> {
    match event {
        Event::Loader { loader, activity, load, zone, stockpile, pass, volume_m3 } => What {
            who: "loader",
            name: job.loaders.get(loader).map_or("", |l| l.name.as_str()),
            event: activity.words(),
            load,
            zone,
            stockpile,
            pass,
            volume_m3: Some(volume_m3),
        },
        Event::Raker { raker, activity, load, zone } => What {
            who: "raker",
            name: job.rakers.get(raker).map_or("", |r| r.name.as_str()),
            event: activity.words(),
            load,
            zone: Some(zone),
            ..What::default()
        },
        Event::HeapRakedOut { load, zone, volume_m3 } => What {
            who: "heap",
            event: "raked out",
            load: Some(load),
            zone: Some(zone),
            volume_m3: Some(volume_m3),
            ..What::default()
        },
        Event::Delivered { stockpile, volume_m3 } => What {
            who: "truck",
            event: "delivered",
            stockpile: Some(stockpile),
            volume_m3: Some(volume_m3),
            ..What::default()
        },
        Event::WorkPauses { end_of_day } => What {
            who: "crew",
            event: if end_of_day { "end of the day" } else { "break begins" },
            ..What::default()
        },
        Event::WorkResumes => What { who: "crew", event: "work goes on", ..What::default() },
    }
}

fn name_of<T>(things: &[T], place: Option<usize>, name: fn(&T) -> &String) -> Option<String> {
    things.get(place?).map(|thing| name(thing).clone())
}

/// A time of the clock to the second, `day 1 08:03:20`, from one counted from the start of the first day.
fn clock_text(job: &Job, moment: Duration) -> String {
    let whole = (job.shift.start_s + moment.as_secs_f64()).round() as i64;
    let (day, of_day) = (whole.div_euclid(86_400) + 1, whole.rem_euclid(86_400));
    format!("day {day} {:02}:{:02}:{:02}", of_day / 3_600, of_day / 60 % 60, of_day % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_clock_is_told_with_its_day() {
        let mut job = crate::example::scenario().job;
        job.shift.start_s = 30_000.4;
        assert_eq!(clock_text(&job, Duration::from_hours(24)), "day 2 08:20:00");
    }
}
