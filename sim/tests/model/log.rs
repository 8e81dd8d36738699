//! A replay told in plain lines, so that a test can state what happens and a failure can be read.
//!
//! One line an event: time from the start of the first day, who, what, which load, where. Left out is what lasts no
//! time and decides nothing: a wait or a rest that ends at once, what is
//! told twice, and whatever begins at the very finish.

use super::time_accounts;
use sim::*;

/// The only run of a job without chance, with its time accounts checked.
pub(crate) fn only_run(job: &Job) -> Replay {
    let run = Replay::new(&Plan::new(job).unwrap(), time_accounts::SEED, 0).unwrap();
    time_accounts::check(job, &run);
    run
}

/// Runs the job and compares the whole log, line by line.
#[track_caller]
pub(crate) fn expect(job: &Job, expected: &str) -> Replay {
    expect_of(job, &[""], expected)
}

/// Runs the job and compares the lines about these: "loader 2", "raker 1", "load" (heaps raked out), "work"...
#[track_caller]
pub(crate) fn expect_of(job: &Job, about: &[&str], expected: &str) -> Replay {
    let run = only_run(job);
    let told = lines(job, &run);
    let told = told.iter().filter(|line| {
        let what = line.split_once(' ').unwrap().1;
        about.iter().any(|about| what.starts_with(about))
    });
    let got = told.cloned().collect::<Vec<_>>().join("\n");
    let wanted: Vec<&str> = expected.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
    let wanted = wanted.join("\n");
    assert!(got == wanted, "\n--- by the model\n{wanted}\n--- by the engine\n{got}\n");
    run
}

/// The log in lines.
pub(crate) fn lines(job: &Job, run: &Replay) -> Vec<String> {
    let mut told = Vec::new();
    for (i, entry) in run.log.iter().enumerate() {
        let later = run.log[i + 1..].iter().take_while(|later| later.at == entry.at);
        let mut later = later.filter(|later| actor(later) == actor(entry));
        let before = run.log[..i].iter().rev().find(|before| actor(before) == actor(entry));
        let leaves_no_trace = actor(entry).is_some()
            && (before.is_some_and(|before| before.event == entry.event)
                || entry.at == run.outcome.finish.clock
                || (idle(&entry.event) && later.next().is_some()));
        if !leaves_no_trace {
            told.push(format!("{} {}", clock(entry.at), words(job, &entry.event)));
        }
    }
    told
}

/// `m:ss` or `h:mm:ss`, with the fraction of a second if there is one.
pub(crate) fn clock(at: Duration) -> String {
    let (seconds, fraction) = (at.as_micros() / 1_000_000, at.as_micros() % 1_000_000);
    let (h, m, s) = (seconds / 3_600, seconds / 60 % 60, seconds % 60);
    let whole = if h > 0 { format!("{h}:{m:02}:{s:02}") } else { format!("{m}:{s:02}") };
    let fraction = format!(".{fraction:06}");
    let fraction = fraction.trim_end_matches('0');
    if fraction == "." { whole } else { whole + fraction }
}

fn actor(entry: &Entry) -> Option<(bool, usize)> {
    match entry.event {
        Event::Loader { loader, .. } => Some((true, loader)),
        Event::Raker { raker, .. } => Some((false, raker)),
        _ => None,
    }
}

fn idle(event: &Event) -> bool {
    use {LoaderActivity as L, RakerActivity as R};
    match event {
        Event::Loader { activity, .. } => {
            !matches!(activity, L::Loading | L::Passing | L::Dumping | L::Stopped | L::CleanUp)
        }
        Event::Raker { activity, .. } => !matches!(activity, R::Raking | R::Walking),
        _ => false,
    }
}

fn words(job: &Job, event: &Event) -> String {
    use LoaderActivity as L;
    match event {
        Event::Loader { loader, activity, load, zone, stockpile, pass, .. } => {
            let load = load.map_or(String::new(), |load| format!(" load {load}"));
            let pile = || stockpile.map_or("?", |p| job.stockpiles[p].name.as_str());
            let zone = || zone.map_or("?", |z| job.zones[z].name.as_str());
            let gate = || pass.map_or("?", |p| job.passes[p].name.as_str());
            let what = match activity {
                L::Loading => format!("loading{load} at {} for {}", pile(), zone()),
                L::WaitingForFace => format!("waiting for the face of {} for {}", pile(), zone()),
                L::Hauling => format!("hauling{load} to {}", zone()),
                L::Returning => format!("returning to {}", pile()),
                L::Passing => format!("passing the {}{load}", gate()),
                L::WaitingForPass => format!("waiting at the {}{load}", gate()),
                L::WaitingForRoom => format!("waiting for room{load} at {}", zone()),
                L::Dumping => format!("dumping{load} at {}", zone()),
                other => format!("{}{load}", other.words()),
            };
            format!("loader {} {what}", loader + 1)
        }
        Event::Raker { raker, activity, load, zone } => {
            let load = load.map_or(String::new(), |load| format!(" load {load}"));
            let to = if *activity == RakerActivity::Walking { "to" } else { "at" };
            let zone = &job.zones[*zone].name;
            format!("raker {} {}{load} {to} {zone}", raker + 1, activity.words())
        }
        Event::HeapRakedOut { load, zone, .. } => {
            format!("load {load} raked out at {}", job.zones[*zone].name)
        }
        Event::Delivered { stockpile, volume_m3 } => {
            format!("delivered {volume_m3:.2} m3 to {}", job.stockpiles[*stockpile].name)
        }
        Event::WorkPauses { end_of_day: false } => "work pauses".into(),
        Event::WorkPauses { end_of_day: true } => "work ends for the day".into(),
        Event::WorkResumes => "work resumes".into(),
    }
}

/// Time a loader spends on this, in seconds.
pub(crate) fn loader_s(run: &Replay, loader: usize, activity: LoaderActivity) -> f64 {
    run.accounts.loaders[loader].time(activity).as_secs_f64()
}

/// Time a raker spends on this, in seconds.
pub(crate) fn raker_s(run: &Replay, raker: usize, activity: RakerActivity) -> f64 {
    run.accounts.rakers[raker].time(activity).as_secs_f64()
}

/// The zones loaded for, in the order of the loads' numbers.
pub(crate) fn served(job: &Job, run: &Replay) -> String {
    let zones = run.log.iter().filter_map(|entry| match entry.event {
        Event::Loader { activity: LoaderActivity::Loading, zone: Some(zone), .. } => Some(zone),
        _ => None,
    });
    zones.map(|zone| job.zones[zone].name.as_str()).collect::<Vec<_>>().join(" ")
}

/// The volumes loaded, in the order of the loads' numbers.
pub(crate) fn volumes(run: &Replay) -> Vec<f64> {
    let loads = run.log.iter().filter_map(|entry| match entry.event {
        Event::Loader { activity: LoaderActivity::Loading, volume_m3, .. } => Some(volume_m3),
        _ => None,
    });
    loads.map(|volume| (volume * 1e9).round() / 1e9).collect()
}
