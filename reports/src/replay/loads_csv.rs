//! `loads.csv`: one row a load of a replayed run.

use crate::forecast::seconds;
use crate::render::csv::{ExportError, clock_s, clock_text, exact_s, table, volumes};
use crate::replay::load_story::{LoadStory, load_stories};
use sim::{Duration, Job, LoaderActivity, Replay};

/// Loads are counted from 1 in the order their loading began. Times ending in `_clock_s` count from midnight of
/// the first day; the others are lengths of time.
const HEADER: [&str; 24] = [
    "load",
    "loader",
    "stockpile",
    "zone",
    "volume_m3",
    "volume_yd3",
    "waited_for_delivery_s",
    "waited_for_face_s",
    "load_start_clock_s",
    "load_start_clock",
    "load_end_clock_s",
    "waited_for_pass_s",
    "passing_s",
    "arrival_clock_s",
    "waited_for_room_s",
    "dump_start_clock_s",
    "dump_end_clock_s",
    "rake_start_clock_s",
    "raked_out_clock_s",
    "raked_out_clock",
    "raked_by",
    "stood_clear_s",
    "stopped_s",
    "on_break_s",
];

/// The loads of a replayed run, by number.
///
/// # Errors
/// If the table cannot be written.
pub fn loads_csv(job: &Job, replay: &Replay) -> Result<Vec<u8>, ExportError> {
    table(HEADER, load_stories(&replay.log).iter().map(|story| row(job, story)))
}

fn row(job: &Job, story: &LoadStory) -> Vec<String> {
    use LoaderActivity as A;
    let name = |found: Option<&String>| found.cloned().unwrap_or_default();
    let time = |activity: A| exact_s(story.times.time(activity));
    let at = |moment: Option<Duration>| moment.map_or_else(String::new, |m| clock_s(job, m));
    let clock = |moment: Option<Duration>| {
        moment.map_or_else(String::new, |m| clock_text(job.shift.start_s + seconds(m)))
    };
    let rakers: Vec<&str> =
        story.rakers.iter().filter_map(|r| job.rakers.get(*r)).map(|r| r.name.as_str()).collect();
    let [m3, yd3] = volumes(story.volume_m3);
    vec![
        (story.load + 1).to_string(),
        name(job.loaders.get(story.loader).map(|l| &l.name)),
        name(story.stockpile.and_then(|p| job.stockpiles.get(p)).map(|p| &p.name)),
        name(story.zone.and_then(|z| job.zones.get(z)).map(|z| &z.name)),
        m3,
        yd3,
        time(A::WaitingForDelivery),
        time(A::WaitingForFace),
        at(story.load_start),
        clock(story.load_start),
        at(story.load_end),
        time(A::WaitingForPass),
        time(A::Passing),
        at(story.arrival),
        time(A::WaitingForRoom),
        at(story.dump_start),
        at(story.dump_end),
        at(story.rake_start),
        at(story.raked_out),
        clock(story.raked_out),
        rakers.join(" + "),
        exact_s(story.stood_clear),
        time(A::Stopped),
        time(A::OnBreak),
    ]
}
