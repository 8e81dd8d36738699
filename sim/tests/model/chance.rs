//! Section 2: chance has two layers, and each multiplies what it is said to multiply and nothing else.

use super::jobs::*;
use super::time_accounts;
use sim::*;

/// A job with every step in it: 3 loads of 1 m3 into each of two zones in turn, a gate, start-and-stop, the loader's own
/// spreading, walks, set-up and clean-up.
fn every_step() -> Job {
    let zones = vec![zone("north", 3.0, 0, 20.0), zone("south", 3.0, 0, 36.0)];
    let mut job = with_zones(one_and_one(), zones, 15.0);
    job.fill_order = FillOrder::InTurn;
    job.passes = vec![gate()];
    job.zones.iter_mut().for_each(|zone| zone.ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }]);
    job.loaders[0].start_stop_s = 3.0;
    job.loaders[0].spread_s_per_m3 = 10.0;
    job.raking.spread_share = 0.2;
    job.shift.set_up_s = Distribution::Constant(60.0);
    job.shift.clean_up_s = Distribution::Constant(300.0);
    job.stockpiles[0].on_hand_m3 = 100.0;
    job
}

/// Any value from half to one and a half.
fn wide() -> Distribution {
    Distribution::Uniform { least: 0.5, greatest: 1.5 }
}

/// What one load took, in seconds: loading, hauling, its passing, dumping, returning, its passing, raking; and its volume.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Steps {
    loading: f64,
    hauling: f64,
    passing_out: f64,
    dumping: f64,
    returning: f64,
    passing_back: f64,
    raking: f64,
    volume: f64,
}

/// The steps of every load, by its number. Of one loader, or of several that never stand in each other's time accounts.
fn steps(run: &Replay) -> Vec<Steps> {
    let mut all = vec![Steps::default(); run.outcome.loads as usize];
    for loader in 0..run.accounts.loaders.len() {
        let mut last_load = 0;
        let mut since: Option<(Duration, LoaderActivity, Option<u32>)> = None;
        let end = Entry { at: run.outcome.finish.clock, event: Event::WorkResumes };
        for entry in run.log.iter().chain([&end]) {
            let turn = match entry.event {
                Event::Loader { loader: who, activity, load, volume_m3, .. } if who == loader => {
                    if let Some(load) = load {
                        all[load as usize].volume = volume_m3;
                    }
                    Some((entry.at, activity, load))
                }
                _ => None,
            };
            if turn.is_none() && entry.at != run.outcome.finish.clock {
                continue;
            }
            if let Some((from, activity, load)) = since {
                let (steps, s) =
                    (&mut all[load.unwrap_or(last_load) as usize], (entry.at - from).as_secs_f64());
                match (activity, load) {
                    (LoaderActivity::Loading, _) => steps.loading += s,
                    (LoaderActivity::Hauling, _) => steps.hauling += s,
                    (LoaderActivity::Passing, Some(_)) => steps.passing_out += s,
                    (LoaderActivity::Dumping, _) => steps.dumping += s,
                    (LoaderActivity::Returning, _) => steps.returning += s,
                    (LoaderActivity::Passing, None) => steps.passing_back += s,
                    _ => {}
                }
            }
            last_load = turn.and_then(|(.., load)| load).unwrap_or(last_load);
            since = turn.or(since.map(|(_, activity, load)| (entry.at, activity, load)));
        }
    }
    for raker in 0..run.accounts.rakers.len() {
        let mut since: Option<(Duration, u32)> = None;
        for entry in &run.log {
            if let Event::Raker { raker: who, activity, load, .. } = entry.event
                && who == raker
            {
                if let Some((from, load)) = since {
                    all[load as usize].raking += (entry.at - from).as_secs_f64();
                }
                since = load.filter(|_| activity == RakerActivity::Raking).map(|load| (entry.at, load));
            }
        }
        if let Some((from, load)) = since {
            all[load as usize].raking += (run.outcome.finish.clock - from).as_secs_f64();
        }
    }
    all
}

fn replay(job: &Job, run: u32) -> Replay {
    let replay = Replay::new(&Plan::new(job).unwrap(), time_accounts::SEED, run).unwrap();
    time_accounts::check(job, &replay);
    replay
}

/// Microseconds are rounded once a step; a leg is up to two drives.
fn near(got: f64, expected: f64, what: &str) {
    assert!((got - expected).abs() < 2.5e-6, "{what}: {got} s, by the model {expected} s");
}

/// How many times longer each kind of step of a run is than without chance: load, leg, dump, rake.
fn check_times(run: &Replay, plain: &[Steps], by: impl Fn(u32) -> [f64; 5]) {
    let steps = steps(run);
    assert_eq!(steps.len(), plain.len());
    for (load, (got, plain)) in steps.iter().zip(plain).enumerate() {
        let [loading, haul, dump, back, raking] = by(load as u32);
        near(got.loading, plain.loading * loading, "loading");
        near(got.hauling, plain.hauling * haul, "hauling");
        near(got.passing_out, plain.passing_out * haul, "passing loaded");
        near(got.dumping, plain.dumping * dump, "dumping");
        near(got.returning, plain.returning * back, "returning");
        near(got.passing_back, plain.passing_back * back, "passing empty");
        near(got.raking, plain.raking * raking, "raking");
        near(got.volume, plain.volume, "volume");
    }
    assert_eq!(run.accounts.loaders[0].time(LoaderActivity::SetUp), Duration::from_secs(60));
    assert_eq!(run.accounts.rakers[0].time(RakerActivity::CleanUp), Duration::from_secs(300));
    assert_eq!(run.accounts.rakers[0].time(RakerActivity::Walking) % Duration::from_secs(15), Duration::ZERO);
}

fn days(change: impl Fn(&mut JobFactors)) -> Job {
    let mut job = every_step();
    change(&mut job.chance.days);
    job
}

fn loads(change: impl Fn(&mut LoadNoise)) -> Job {
    let mut job = every_step();
    change(&mut job.chance.loads);
    job
}

fn factor(run: u32, which: Factor) -> f64 {
    Sampler::new(&wide()).at(Streams::new(time_accounts::SEED, run).factor(which))
}

fn noise(run: u32, load: u32, kind: LoadDraw) -> f64 {
    Sampler::new(&wide()).at(Streams::new(time_accounts::SEED, run).load(load).bits(kind))
}

#[test]
fn without_chance_every_step_takes_its_mean() {
    let steps = steps(&replay(&every_step(), 0));
    // North: (20 m / 2 m/s + 3 s), 5 s + 0.2 x 10 s, 0.8 x 50 s. The last return is not cut short by the clean-up.
    let north = Steps {
        loading: 20.0,
        hauling: 13.0,
        passing_out: 4.0,
        dumping: 7.0,
        returning: 13.0,
        passing_back: 4.0,
        raking: 40.0,
        volume: 1.0,
    };
    let south = Steps { hauling: 21.0, returning: 21.0, ..north };
    assert_eq!(steps, [north, south, north, south, north, south]);
}

#[test]
fn the_day_multiplies_every_working_time_and_nothing_else() {
    let (job, plain) = (days(|days| days.day = wide()), steps(&replay(&every_step(), 0)));
    for run in 0..20 {
        check_times(&replay(&job, run), &plain, |_| [factor(run, Factor::Day); 5]);
    }
}

#[test]
fn the_loader_pace_multiplies_loading_and_dumping_with_the_own_spreading() {
    let (job, plain) = (days(|days| days.loader_pace = wide()), steps(&replay(&every_step(), 0)));
    for run in 0..20 {
        let f = factor(run, Factor::LoaderPace);
        check_times(&replay(&job, run), &plain, |_| [f, 1.0, f, 1.0, 1.0]);
    }
}

#[test]
fn travel_multiplies_both_legs_whole() {
    let (job, plain) = (days(|days| days.travel = wide()), steps(&replay(&every_step(), 0)));
    for run in 0..20 {
        let f = factor(run, Factor::Travel);
        check_times(&replay(&job, run), &plain, |_| [1.0, f, 1.0, f, 1.0]);
    }
}

#[test]
fn the_raker_pace_multiplies_raking() {
    let (job, plain) = (days(|days| days.raker_pace = wide()), steps(&replay(&every_step(), 0)));
    for run in 0..20 {
        check_times(&replay(&job, run), &plain, |_| [1.0, 1.0, 1.0, 1.0, factor(run, Factor::RakerPace)]);
    }
}

#[test]
fn job_factors_and_load_noise_multiply_one_another() {
    let mut job = every_step();
    (job.chance.days.day, job.chance.days.travel, job.chance.loads.haul) = (wide(), wide(), wide());
    let plain = steps(&replay(&every_step(), 0));
    for run in 0..20 {
        let (day, travel) = (factor(run, Factor::Day), factor(run, Factor::Travel));
        check_times(&replay(&job, run), &plain, |load| {
            [day, day * travel * noise(run, load, LoadDraw::Haul), day, day * travel, day]
        });
    }
}

#[test]
fn each_kind_of_load_noise_multiplies_its_own_step_load_by_load() {
    let plain = steps(&replay(&every_step(), 0));
    type Change = fn(&mut LoadNoise, Distribution);
    let kinds: [(LoadDraw, Change, usize); 5] = [
        (LoadDraw::Loading, |noise, law| noise.loading = law, 0),
        (LoadDraw::Haul, |noise, law| noise.haul = law, 1),
        (LoadDraw::Dump, |noise, law| noise.dump = law, 2),
        (LoadDraw::Return, |noise, law| noise.return_leg = law, 3),
        (LoadDraw::Raking, |noise, law| noise.raking = law, 4),
    ];
    for (kind, change, place) in kinds {
        let job = loads(|noise| change(noise, wide()));
        for run in 0..10 {
            check_times(&replay(&job, run), &plain, |load| {
                let mut by = [1.0; 5];
                by[place] = noise(run, load, kind);
                by
            });
        }
    }
}

#[test]
fn the_fill_of_the_day_and_of_the_load_multiply_the_volume() {
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.stockpiles[0].on_hand_m3) = (7.0, 100.0);
    (job.chance.days.fill, job.chance.loads.fill) = (wide(), wide());
    for run in 0..20 {
        let steps = steps(&replay(&job, run));
        for (load, steps) in steps.iter().enumerate().take(steps.len() - 1) {
            let expected = factor(run, Factor::Fill) * noise(run, load as u32, LoadDraw::Fill);
            near(steps.volume, expected, "volume");
            near(steps.raking, 50.0 * expected, "raking");
        }
    }
}

#[test]
fn the_lift_limit_holds_for_a_bucket_that_happens_to_be_full() {
    // 0.9 m3 at most by lift, though the fill goes up to 1.5 m3.
    let mut job = one_and_one();
    job.loaders[0].lift_kg = Some(225.0);
    job.chance.loads.fill = wide();
    let steps = steps(&replay(&job, 0));
    for (load, steps) in steps.iter().enumerate().take(steps.len() - 1) {
        near(steps.volume, noise(0, load as u32, LoadDraw::Fill).min(0.9), "volume");
    }
}

#[test]
fn the_need_of_all_zones_is_multiplied_by_one_draw() {
    let zones = vec![zone("north", 2.0, 0, 20.0), zone("south", 5.0, 0, 20.0)];
    let mut job = with_zones(one_and_one(), zones, 0.0);
    job.chance.days.need = wide();
    job.stockpiles[0].on_hand_m3 = 100.0;
    for run in 0..20 {
        let f = factor(run, Factor::Need);
        let replay = replay(&job, run);
        // A rest under 0.05 m3 counts as nothing.
        assert!((0.0..0.05).contains(&(2.0 * f - replay.accounts.zones[0].placed_m3 + 1e-12)));
        assert!((0.0..0.05).contains(&(5.0 * f - replay.accounts.zones[1].placed_m3 + 1e-12)));
    }
}

#[test]
fn every_delivery_has_a_bulk_of_its_own_stock_on_hand_included() {
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1_000.0;
    job.chance.days.bulk = wide();
    job.stockpiles = vec![pile("near", 4.0), pile("far", 6.0)];
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 60.0, passes: vec![] });
    let late_s = Distribution::Constant(0.0);
    let at = |s: f64| Delivery { at_s: 8.0 * 3_600.0 + s, late_s: late_s.clone(), volume_m3: 5.0 };
    job.stockpiles[0].deliveries = vec![at(100.0), at(200.0)];
    job.stockpiles[1].deliveries = vec![at(150.0)];
    let mut seen = Vec::new();
    for run in 0..20 {
        let streams = Streams::new(time_accounts::SEED, run);
        let bulk = |n| Sampler::new(&wide()).at(streams.bulk(n));
        let replay = replay(&job, run);
        let came: Vec<f64> = replay
            .log
            .iter()
            .filter_map(|entry| match entry.event {
                Event::Delivered { volume_m3, .. } => Some(volume_m3),
                _ => None,
            })
            .collect();
        // In the order of the job: near, its two trucks, far, its truck. The far truck is the second to come.
        for (got, n) in came.iter().zip([1, 4, 2]) {
            assert!((got - 5.0 * bulk(n)).abs() < 1e-9, "run {run}: {came:?}");
        }
        let all = 4.0 * bulk(0) + 5.0 * (bulk(1) + bulk(2) + bulk(4)) + 6.0 * bulk(3);
        let outcome = &replay.outcome;
        assert!((outcome.placed_m3 + outcome.left_over_m3 - all).abs() < 1e-9);
        seen.extend((0..5).map(bulk));
    }
    seen.sort_unstable_by(f64::total_cmp);
    seen.dedup();
    assert_eq!(seen.len(), 100, "all draws differ");
}

#[test]
fn set_up_clean_up_and_lateness_have_draws_of_their_own() {
    let mut job = every_step();
    job.shift.set_up_s = Distribution::Uniform { least: 50.0, greatest: 150.0 };
    job.shift.clean_up_s = Distribution::Uniform { least: 250.0, greatest: 350.0 };
    job.chance.days.day = wide();
    job.stockpiles[0].on_hand_m3 = 0.0;
    let late_s = Distribution::Uniform { least: 0.0, greatest: 1_000.0 };
    job.stockpiles[0].deliveries =
        vec![Delivery { at_s: job.shift.start_s, late_s: late_s.clone(), volume_m3: 6.0 }];
    for run in 0..20 {
        let streams = Streams::new(time_accounts::SEED, run);
        let replay = replay(&job, run);
        let draw = |law: &Distribution, which| Sampler::new(law).at(streams.factor(which));
        let told = |activity| replay.accounts.rakers[0].time(activity).as_secs_f64();
        near(told(RakerActivity::SetUp), draw(&job.shift.set_up_s, Factor::SetUp), "set-up");
        near(told(RakerActivity::CleanUp), draw(&job.shift.clean_up_s, Factor::CleanUp), "clean-up");
        let came = replay.log.iter().find(|entry| matches!(entry.event, Event::Delivered { .. })).unwrap();
        near(came.at.as_secs_f64(), Sampler::new(&late_s).at(streams.lateness(1)), "lateness");
    }
}

#[test]
fn a_load_keeps_its_draws_whoever_rakes_it_and_whatever_the_crew() {
    // The same job with another raker, who is slower, and with another loader: load k has the same random numbers.
    let mut job = without_rakers(one_and_one());
    (job.rakers, job.raking.spread_share) = (vec![raker("a", 0)], 0.0);
    job.shift.clean_up_s = Distribution::Constant(1_000.0);
    job = with_lognormal_noise(job, 0.2, 0.4);
    job.chance.loads.fill = Distribution::Constant(1.0);
    job.chance.days.fill = Distribution::Constant(1.0);
    job.chance.days.need = Distribution::Constant(1.0);
    job.chance.days.bulk = Distribution::Constant(1.0);
    let mut other = job.clone();
    other.rakers.push(Raker { rate_m3_per_h: 36.0, ..raker("b", 0) });
    let mut third = with_loaders(other.clone(), 2);
    third.stockpiles[0].face = 2;
    for run in 0..10 {
        let (one, two) = (replay(&job, run), replay(&other, run));
        let three = replay(&third, run);
        let by_b = |run: &Replay, load: u32| {
            run.log
                .iter()
                .any(|entry| matches!(entry.event, Event::Raker { raker: 1, load: Some(l), .. } if l == load))
        };
        for (load, steps) in steps(&one).iter().enumerate() {
            for other in [&two, &three] {
                let again = self::steps(other)[load];
                let slower = if by_b(other, load as u32) { 2.0 } else { 1.0 };
                near(again.loading, steps.loading, "loading");
                near(again.hauling, steps.hauling, "hauling");
                near(again.dumping, steps.dumping, "dumping");
                near(again.raking, steps.raking * slower, "raking");
            }
        }
    }
}

#[test]
fn a_kind_whose_family_is_changed_disturbs_no_other() {
    let job = with_lognormal_noise(every_step(), 0.2, 0.4);
    let mut other = job.clone();
    other.chance.loads.haul = Distribution::Exponential { mean: 1.0 };
    other.chance.days.loader_pace = Distribution::Constant(1.0);
    let mut differ = 0;
    for run in 0..10 {
        let pace = Sampler::new(&job.chance.days.loader_pace)
            .at(Streams::new(time_accounts::SEED, run).factor(Factor::LoaderPace));
        for (before, after) in steps(&replay(&job, run)).iter().zip(steps(&replay(&other, run))) {
            near(after.loading * pace, before.loading, "loading");
            near(after.returning, before.returning, "returning");
            near(after.raking, before.raking, "raking");
            near(after.volume, before.volume, "volume");
            differ += usize::from((before.hauling - after.hauling).abs() > 1e-3);
        }
    }
    assert!(differ > 50);
}
