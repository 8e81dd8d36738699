//! One run on the screen.

use crate::card::{Card, row};
use crate::findings::{
    Calendar, about_duration, about_money, about_volume, assumed, is_fuelled, is_priced, warnings,
};
use crate::provenance::Provenance;
use crate::render::screen::titled;
use crate::render::screen::{Layout, lines};
use crate::replay::REPLAY;
use scenarios::Scenario;
use scenarios::units::{System, fuel};
use sim::{Duration, Job, Replay};
use std::path::Path;

/// What one run yields and, in full, where everybody's time went.
pub(crate) fn replay(card: &Card, job: &Job, run: &Replay, full: bool, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    for row in std::iter::once(&card.job).chain(&card.rows) {
        layout.section(&row.label, [row.words.clone()]);
    }
    if full {
        let rows = lines(&["", "", "time", "share"], times(job, run), &[2, 3], width);
        layout.gap().section("Who did what", rows);
    }
    layout.text()
}

/// What one run yields.
pub(super) fn card(scenario: &Scenario, units: System, run: &Replay) -> Card {
    let (o, job) = (&run.outcome, &scenario.job);
    let finish = one_run(scenario, units, run);
    let mut took = vec![format!("{} loads", o.loads), format!("{} placed", about_volume(o.placed_m3, units))];
    if o.left_over_m3 > 0.0 {
        took.push(format!("{} left over", about_volume(o.left_over_m3, units)));
    }
    if o.short_m3 > 0.0 {
        took.push(format!("{} short", about_volume(o.short_m3, units)));
    }
    if is_fuelled(job) {
        took.push(format!("{} of fuel", fuel(o.fuel_l, units)));
    }
    took.push(format!("{:.1} hours of labour", o.labour_h));
    if is_priced(job) {
        took.push(about_money(o.cost, &scenario.currency));
    }
    let (warnings, assumed) = (warnings(&scenario.cautions), assumed(&scenario.assumptions).all);
    let mut card = Card::new(finish.clone(), row("The job", titled(scenario)), &warnings, &assumed);
    card.row("This run", format!("{finish}\n{}.", took.join(", ")));
    card.files = &REPLAY;
    card
}

/// When one run is done, in a line.
pub(crate) fn one_run(scenario: &Scenario, units: System, run: &Replay) -> String {
    let o = &run.outcome;
    let (working_s, clock_s) = (o.finish.working.as_secs_f64(), o.finish.clock.as_secs_f64());
    let at = Calendar::of(scenario, units).done(working_s, scenario.job.shift.start_s + clock_s);
    match o.ends_short {
        true => format!(
            "Run {}: not done, {} of material is missing; the crew stops after {}, at {}.",
            o.run,
            about_volume(o.short_m3, units),
            at.duration,
            at.clock
        ),
        false => format!("Run {}: {} on the job, done by {}.", o.run, at.duration, at.clock),
    }
}

/// Where the files of a replay are and how to get the same ones again.
pub(crate) fn replay_files(from: &Provenance, folder: &Path, columns: u16) -> String {
    Layout::new(columns)
        .gap()
        .section(
            "Files",
            [format!("{}: events.csv, loads.csv, run.csv, timeline.svg", scenarios::shown_path(folder))],
        )
        .section("Made with", [from.words()])
        .text()
}

/// Who spent how long on what, longest first, what took no time left out.
fn times(job: &Job, run: &Replay) -> Vec<Vec<String>> {
    let loaders = job.loaders.iter().zip(&run.accounts.loaders).map(|(l, times)| {
        let entries = times.iter().map(|(activity, time)| (activity.words(), time)).collect();
        (l.name.as_str(), entries)
    });
    let rakers = job.rakers.iter().zip(&run.accounts.rakers).map(|(r, times)| {
        let entries = times.iter().map(|(activity, time)| (activity.words(), time)).collect();
        (r.name.as_str(), entries)
    });
    loaders.chain(rakers).flat_map(|(name, entries)| one(name, entries)).collect()
}

fn one(name: &str, mut entries: Vec<(&str, Duration)>) -> Vec<Vec<String>> {
    let whole: Duration = entries.iter().map(|(_, t)| *t).sum();
    entries.retain(|(_, t)| *t > Duration::ZERO);
    entries.sort_by_key(|(_, t)| -*t);
    let row = |(i, (words, time)): (usize, (&str, Duration))| {
        let name = if i == 0 { name } else { "" };
        let share = crate::findings::percent(time / whole);
        vec![name.to_owned(), words.to_owned(), about_duration(time.as_secs_f64()), share]
    };
    entries.into_iter().enumerate().map(row).collect()
}
