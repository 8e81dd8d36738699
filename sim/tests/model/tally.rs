//! Section 6: what one run yields.

use super::jobs::*;
use super::log::*;
use sim::*;

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

/// Two loads into room for one, with prices; the log stands in `room`. The loader: 40 s of loading, 20 hauling, 20
/// returning, 10 dumping, 10 waiting for room, 40 done; the raker: 35 + 5 s of waiting, 100 raking; 140 s in all.
fn two_loads() -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 2.0;
    job.zones[0].room = Some(1);
    let loader = &mut job.loaders[0];
    (loader.fuel_working_l_per_h, loader.fuel_idling_l_per_h) = (36.0, 7.2);
    (loader.machine_cost_per_h, loader.operator_cost_per_h) = (36.0, 72.0);
    job.rakers[0].cost_per_h = 18.0;
    job.prices = Prices { fuel_per_l: 2.0, material: 100.0 };
    job
}

#[test]
fn every_second_of_everybody_is_entered_under_what_it_was() {
    use {LoaderActivity as L, RakerActivity as R};
    let run = only_run(&two_loads());
    let entered = |activities: &[(L, f64)]| {
        L::ALL.iter().all(|activity| {
            let expected = activities.iter().find(|(a, _)| a == activity).map_or(0.0, |(_, s)| *s);
            loader_s(&run, 0, *activity) == expected
        })
    };
    assert!(entered(&[
        (L::Loading, 40.0),
        (L::Hauling, 20.0),
        (L::Returning, 20.0),
        (L::Dumping, 10.0),
        (L::WaitingForRoom, 10.0),
        (L::Done, 40.0),
    ]));
    assert_eq!(raker_s(&run, 0, R::Waiting), 40.0);
    assert_eq!(raker_s(&run, 0, R::Raking), 100.0);
    assert_eq!(run.outcome.finish.working, Duration::from_secs(140));
}

#[test]
fn fuel_is_the_working_burn_while_working_and_the_idling_burn_while_waiting() {
    // 90 s x 36 l/h = 0.9 l; 10 s x 7.2 l/h = 0.02 l; nothing while done.
    near(only_run(&two_loads()).outcome.fuel_l, 0.92);
}

#[test]
fn the_engine_is_off_in_breaks_set_up_and_clean_up() {
    let mut job = two_loads();
    job.shift.breaks = vec![pause(&job, 80.0, 200.0)];
    // The wait of 10 s for room is now 5 s before and 5 s after 120 s of break.
    near(only_run(&job).outcome.fuel_l, 0.92);
    job.shift.breaks.clear();
    (job.shift.set_up_s, job.shift.clean_up_s) =
        (Distribution::Constant(600.0), Distribution::Constant(900.0));
    near(only_run(&job).outcome.fuel_l, 0.92);
}

#[test]
fn passing_and_waiting_for_gate_face_and_delivery_burn_fuel_too() {
    // Loader 1: 20 + 5 + 15 + 5 + 5, back from 0:50: 5 + 15 + 5, and so on: read off `breaks` and `passes`.
    let mut job = with_loaders(without_rakers(two_loads()), 2);
    job.zones[0].room = None;
    job.passes = vec![Pass { passing_s: 15.0, ..gate() }];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    // Loader 1 loads 0:00-0:20, drives, passes 0:25-0:40, dumps 0:45-0:50, drives to 0:55, waits until loader 2 is
    // through (0:45-1:00), passes 1:00-1:15; the job is over at 1:10: 65 s at work, 5 s waiting. Loader 2 waits 20 s for
    // the face and works the other 50 s.
    near(only_run(&job).outcome.fuel_l, (65.0 + 50.0) * 0.01 + (5.0 + 20.0) * 0.002);
    // A delivery 65 s after it was wanted, at 1:40; then 10 + 20 + 10 + 5 s of work. Before it, 35 s.
    let mut job = without_rakers(two_loads());
    job.zones[0].room = None;
    job.stockpiles[0].on_hand_m3 = 1.0;
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: job.shift.start_s + 100.0, late_s, volume_m3: 1.0 }];
    near(only_run(&job).outcome.fuel_l, 80.0 * 0.01 + 65.0 * 0.002);
}

#[test]
fn labour_is_one_person_a_loader_and_the_rakers_from_start_to_finish_breaks_paid() {
    near(only_run(&two_loads()).outcome.labour_h, 2.0 * 140.0 / 3_600.0);
    let mut job = two_loads();
    job.rakers.push(raker("b", 0));
    job.shift.clean_up_s = Distribution::Constant(60.0);
    job.shift.breaks = vec![pause(&job, 80.0, 200.0)];
    // 140 s, a break of 120 s, and 60 s of clean-up.
    near(only_run(&job).outcome.labour_h, 3.0 * 320.0 / 3_600.0);
}

#[test]
fn cost_is_hours_fuel_and_material() {
    // (36 + 72 + 18) per hour x 140 s = 4.90; 0.92 l x 2 = 1.84; material 100.
    near(only_run(&two_loads()).outcome.cost, 106.74);
}

#[test]
fn nights_cost_nothing() {
    // Days of 90 s: the night lies between 90 s and the last 50 s.
    let mut job = two_loads();
    job.shift.end_s = Some(job.shift.start_s + 90.0);
    let run = only_run(&job);
    assert_eq!(run.outcome.finish.clock, Duration::from_secs(86_400 + 50));
    // Dumped 1:25 to 1:30, the loader goes back until 1:40 after hours, and the night falls.
    assert_eq!(run.outcome.finish.working, Duration::from_secs(150));
    near(run.outcome.labour_h, 2.0 * 150.0 / 3_600.0);
    near(run.outcome.cost, 126.0 * 150.0 / 3_600.0 + 1.84 + 100.0);
}

#[test]
fn progress_tells_when_each_twentieth_of_the_volume_was_raked_out() {
    // Heaps of 1, 1 and 0.5 m3 at 1:25, 2:15 and 2:40: 8, 16 and 20 twentieths of 2.5 m3.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 2.5;
    let run = only_run(&job);
    let expected = [[85; 8].as_slice(), &[135; 8], &[160; 4]].concat();
    let expected: Vec<Duration> = expected.into_iter().map(Duration::from_secs).collect();
    assert_eq!(run.outcome.progress.to_vec(), expected);
}

#[test]
fn a_heap_counts_towards_the_progress_only_when_it_is_raked_out_whole() {
    // One heap: all twentieths at its end.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.0;
    assert_eq!(only_run(&job).outcome.progress, [Duration::from_secs(85); PROGRESS_PARTS]);
}

#[test]
fn loads_and_volumes_are_counted_by_loader_and_zone() {
    let zones = vec![zone("north", 1.5, 0, 20.0), zone("south", 2.0, 0, 20.0)];
    let mut job = with_loaders(with_zones(without_rakers(one_and_one()), zones, 0.0), 2);
    job.loaders[1].heaped_m3 = 0.5;
    // Loader 1: 1 m3 (north); loader 2: 0.5 m3 (north), then both south in turn: 1, 0.5, 0.5 or the like.
    let run = only_run(&job);
    assert_eq!(run.accounts.zones[0].loads, 2);
    near(run.accounts.zones[0].placed_m3, 1.5);
    near(run.accounts.zones[1].placed_m3, 2.0);
    assert_eq!(run.accounts.loads.iter().sum::<u64>(), u64::from(run.outcome.loads));
    let by_log = |of: usize| {
        let loading = |entry: &&Entry| matches!(entry.event, Event::Loader { loader, activity: LoaderActivity::Loading, .. } if loader == of);
        run.log.iter().filter(loading).count() as u64
    };
    assert_eq!(run.accounts.loads, [by_log(0), by_log(1)]);
}

#[test]
fn the_time_accounts_of_a_study_are_those_of_its_runs_added_up() {
    // Two zones for which there is not enough, so that every entry of the time accounts has something in it.
    let zones = vec![zone("near", 6.0, 0, 20.0), zone("far", 6.0, 0, 60.0)];
    let mut job = with_lognormal_noise(with_zones(one_and_one(), zones, 10.0), 0.1, 0.3);
    job.stockpiles[0].on_hand_m3 = 5.0;
    job.rakers.push(raker("another", 1));
    let plan = Plan::new(&job).unwrap();
    let study = Study::new(&plan, 3, Runs::Exactly(20), |_| {}).unwrap();
    let mut accounts = Accounts::empty(1, 2, 2);
    for run in 0..20 {
        let one = Replay::new(&plan, 3, run).unwrap().accounts;
        assert!(one.zones.iter().any(|z| z.short_m3 > 0.0) && one.loads[0] > 0);
        for (zone, of_run) in accounts.zones.iter_mut().zip(&one.zones) {
            zone.loads += of_run.loads;
            zone.placed_m3 += of_run.placed_m3;
            zone.short_m3 += of_run.short_m3;
        }
        accounts.loads[0] += one.loads[0];
        one.loaders[0].iter().for_each(|(activity, time)| accounts.loaders[0].add(activity, time));
        for raker in 0..2 {
            one.rakers[raker].iter().for_each(|(activity, time)| accounts.rakers[raker].add(activity, time));
        }
    }
    assert_eq!(study.accounts, accounts);
}
