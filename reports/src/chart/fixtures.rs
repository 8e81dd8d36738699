//! Jobs and runs for the tests of the figures. All numbers are made up.

use crate::example;
use crate::findings::{Calendar, OrderFindings, order_of};
use scenarios::units::System;
use sim::{
    Accounts, Break, Delivery, Distribution, Duration, Handbook, Job, Loader, Moment, Outcome,
    PROGRESS_PARTS, Pass, PassOnWay, Plan, Raker, Replay, Runs, Stoppages, Study,
};

/// Names as long as people make them.
const LONG: [&str; 6] = [
    "the long-armed loader from the upper orchard",
    "barrow",
    "tractor with the wide bucket & <new> tyres",
    "small skid loader (hired)",
    "Supercalifragilisticexpialidociousloader",
    "second tractor",
];

/// A fixed row of numbers from 0 to 1 that look like chance (a linear congruential generator, Knuth's MMIX constants).
pub(super) fn wobble(n: usize) -> impl Iterator<Item = f64> {
    let mut state = 42_u64;
    (0..n).map(move |_| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / (1_u64 << 53) as f64
    })
}

/// Finishing times with a tail to the right \[min\].
pub(super) fn skewed(n: usize, least: f64, spread: f64) -> Vec<f64> {
    let draws: Vec<f64> = wobble(n * 3).collect();
    draws.chunks(3).map(|u| least + spread * (u[0] + u[1] + 0.35 * -(1.0 - u[2]).ln()) / 2.0).collect()
}

/// Material that is enough in every run.
pub(super) fn enough() -> OrderFindings {
    order_of([None].into_iter(), &example::scenario(), System::Us)
}

/// A clock without dates.
pub(super) fn dateless(units: System) -> Calendar {
    Calendar { units, first_day: None }
}

/// A study whose runs finish after these times \[min\], each in steady progress.
pub(super) fn study(minutes: &[f64]) -> Study {
    let outcome = |(run, min): (usize, &f64)| {
        let time = Duration::try_from_secs_f64(min * 60.0).expect("a time that fits");
        let moment = Moment { working: time, clock: time };
        Outcome {
            run: run as u32,
            completion: moment,
            finish: moment,
            progress: std::array::from_fn(|i| time * (i as i64 + 1) / PROGRESS_PARTS as i64),
            ..example::outcome(0)
        }
    };
    Study::of(1, minutes.iter().enumerate().map(outcome).collect(), Accounts::empty(1, 1, 1))
}

/// A handbook figure.
pub(super) fn handbook(minutes: f64) -> Handbook {
    let time_s = minutes * 60.0;
    Handbook { volume_m3: 27.0, loads: 71.0, cycle_s: vec![Some(80.0)], plain_s: time_s / 1.2, time_s }
}

/// A job in which everything varies.
pub(super) fn job() -> Job {
    let mut job = example::job();
    let spread = |mean, cv| Distribution::Lognormal { mean, cv };
    job.chance.days.day = spread(1.0, 0.1);
    job.chance.days.raker_pace = spread(1.0, 0.15);
    job.chance.loads.loading = spread(1.0, 0.25);
    job.chance.loads.raking = spread(1.0, 0.3);
    job.shift.breaks = vec![Break { start_s: 9.5 * 3600.0, end_s: 9.75 * 3600.0 }];
    job.shift.set_up_s = Distribution::Constant(600.0);
    job.shift.clean_up_s = Distribution::Constant(900.0);
    job
}

/// A job of several days with deliveries.
pub(super) fn days(volume_m3: f64) -> Job {
    let mut job = job();
    job.zones[0].need_m3 = volume_m3;
    job.stockpiles[0].on_hand_m3 = volume_m3 * 0.4;
    job.stockpiles[0].deliveries = [10.0, 34.5, 36.0]
        .into_iter()
        .map(|h| Delivery {
            at_s: h * 3600.0,
            late_s: Distribution::Constant(900.0),
            volume_m3: volume_m3 * 0.25,
        })
        .collect();
    job.shift.end_s = Some(16.5 * 3600.0);
    job.shift.breaks.push(Break { start_s: 12.0 * 3600.0, end_s: 12.75 * 3600.0 });
    job
}

/// A large crew with long names, a gate and stoppages.
pub(super) fn crew(loaders: usize, rakers: usize, volume_m3: f64) -> Job {
    let mut job = days(volume_m3);
    let (loader, raker) = (job.loaders[0].clone(), job.rakers[0].clone());
    job.loaders = (0..loaders)
        .map(|i| Loader {
            name: format!("{} {}", LONG[i % LONG.len()], i + 1),
            heaped_m3: 0.2 + 0.05 * (i % 5) as f64,
            stoppages: Some(Stoppages { mean_gap_s: 3_000.0, length_s: Distribution::Constant(400.0) }),
            ..loader.clone()
        })
        .collect();
    job.rakers = (0..rakers)
        .map(|i| Raker { name: format!("person with the rake number {}", i + 1), ..raker.clone() })
        .collect();
    job.passes = vec![Pass { name: "gate".into(), width_m: 2.0, passing_s: 12.0, at_once: 1 }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    if rakers == 0 {
        job.raking.spread_share = 1.0;
        job.loaders.iter_mut().for_each(|l| l.spread_s_per_m3 = 40.0);
    }
    job
}

/// Runs of a job.
pub(super) fn runs(job: &Job, runs: u32) -> (Study, Handbook) {
    let plan = Plan::new(job).expect("a job that can be run");
    (Study::new(&plan, 7, Runs::Exactly(runs), |_| ()).expect("runs that end"), Handbook::new(job))
}

/// One run of a job, watched.
pub(super) fn replay(job: &Job) -> Replay {
    Replay::new(&Plan::new(job).expect("a job that can be run"), 7, 3).expect("a run that ends")
}
