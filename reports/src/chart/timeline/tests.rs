//! What the figure of one run says.

use super::*;
use crate::chart::fixtures::{crew, dateless, days, job, replay};
use scenarios::units::System;
use sim::{Entry, LoaderActivity, RakerActivity};

#[test]
fn the_blocks_of_a_run_fill_the_time_on_the_job_without_gap_or_overlap() {
    for job in [job(), days(250.0), crew(3, 2, 60.0)] {
        let replay = replay(&job);
        let data = prepare(&job, &replay, dateless(System::Metric));
        let on_the_job = minutes(replay.outcome.finish.working);
        for (i, row) in data.rows.iter().enumerate() {
            assert!(row.blocks.windows(2).all(|pair| pair[0].to <= pair[1].from), "{}", row.name);
            let total: f64 = row.blocks.iter().map(|b| b.to - b.from).sum();
            assert!((total - on_the_job).abs() < 1e-6, "{}: {total} of {on_the_job}", row.name);
            let shown =
                |b: &Block| data.days.worked.iter().any(|(a, z)| b.from >= a - 1e-6 && b.to <= z + 1e-6);
            assert!(row.blocks.iter().all(shown), "row {i} works at a time that is not shown");
        }
    }
}

#[test]
fn the_blocks_of_a_loader_add_up_to_its_accounts() {
    let job = days(250.0);
    let replay = replay(&job);
    let data = prepare(&job, &replay, dateless(System::Metric));
    for activity in LoaderActivity::ALL {
        let doing = Doing::of_loader(activity).expect("an activity on the job");
        let drawn: f64 = data.rows[0].blocks.iter().filter(|b| b.doing == doing).map(|b| b.to - b.from).sum();
        let booked = minutes(replay.accounts.loaders[0].time(activity));
        assert!((drawn - booked).abs() < 1e-6, "{activity:?}: {drawn} drawn, {booked} booked");
    }
}

#[test]
fn the_title_names_who_waits_longest() {
    let job = job();
    let mut replay = replay(&job);
    let loader = |at: i64, activity| Entry {
        at: Duration::from_mins(at),
        event: Event::Loader {
            loader: 0,
            activity,
            load: None,
            zone: None,
            stockpile: None,
            pass: None,
            volume_m3: 0.0,
        },
    };
    let raker = |at: i64, activity| Entry {
        at: Duration::from_mins(at),
        event: Event::Raker { raker: 0, activity, load: None, zone: 0 },
    };
    replay.outcome.finish = sim::Moment { working: Duration::from_hours(2), clock: Duration::from_hours(2) };
    replay.outcome.loads = 2;
    replay.log = vec![
        loader(0, LoaderActivity::Loading),
        raker(0, RakerActivity::Raking),
        raker(50, RakerActivity::Waiting),
        loader(60, LoaderActivity::WaitingForRoom),
        loader(90, LoaderActivity::Returning),
    ];
    let data = prepare(&job, &replay, dateless(System::Metric));
    assert_eq!(data.title, "Run 3: 2 loads, done by 10:00; helper spends 1 h 10 min waiting for a heap");
    assert_eq!(
        data.rows[1].blocks,
        [
            Block { doing: Doing::Raking, from: 0.0, to: 50.0 },
            Block { doing: Doing::WaitingForHeap, from: 50.0, to: 120.0 },
        ]
    );
    replay.log.truncate(2);
    let data = prepare(&job, &replay, dateless(System::Metric));
    assert_eq!(data.title, "Run 3: 2 loads, done by 10:00; nobody waits for long");
}

#[test]
fn deliveries_of_the_log_are_marked() {
    let job = days(250.0);
    let replay = replay(&job);
    let logged = replay.log.iter().filter(|entry| matches!(entry.event, Event::Delivered { .. })).count();
    assert_eq!(prepare(&job, &replay, dateless(System::Metric)).deliveries.len(), logged);
    assert_eq!(logged, 3);
}

/// A clock in a test is rough: what is held is that twenty times the loads take far less than four hundred times as long.
#[test]
fn what_is_drawn_of_a_hundred_thousand_loads_is_bounded() {
    let kinds = [LoaderActivity::Loading, LoaderActivity::Hauling, LoaderActivity::WaitingForRoom];
    let entry = |k: i64| Entry {
        at: Duration::from_mins(k),
        event: Event::Loader {
            loader: 0,
            activity: kinds[k as usize % 3],
            load: Some(k as u32 / 3),
            zone: None,
            stockpile: None,
            pass: None,
            volume_m3: 0.4,
        },
    };
    let job = job();
    let mut long = replay(&job);
    long.log = (0..300_000).map(entry).collect();
    long.outcome.finish.clock = Duration::from_mins(300_000);
    let svg = draw(&prepare(&job, &long, dateless(System::Metric)), crate::chart::Size::PAGE).unwrap();
    assert!(svg.len() < 2_000_000, "{} bytes", svg.len());
}
