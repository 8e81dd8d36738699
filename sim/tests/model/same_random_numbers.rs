//! Common random numbers are common: load `k` of run `r` has the same random numbers in every alternative, whoever loads, hauls and rakes
//! it and however long the job is; job factors and each loader's stoppages too. Seen in the event logs alone.

use super::any_job::Numbers;
use super::jobs::*;
use sim::*;
use std::collections::BTreeMap;

/// What a load drew, as time over mean time: loading, haul, dump, return, raking; then its fill.
type Draws = [Option<f64>; 6];

/// One loader, two rakers, ten heaps' worth of two kinds of chance.
fn job() -> Job {
    let mut job = with_lognormal_noise(one_and_one(), 0.15, 0.3);
    (job.zones[0].room, job.zones[0].need_m3, job.stockpiles[0].on_hand_m3) = (Some(2), 12.0, 100.0);
    job.rakers = vec![raker("a", 0), raker("b", 0)];
    job
}

/// How long the machine or the raker whose turn is entry `at` stays at it.
fn stays(log: &[Entry], at: usize) -> f64 {
    let same = |event: &Event| match (&log[at].event, event) {
        (Event::Loader { loader: a, .. }, Event::Loader { loader: b, .. }) => a == b,
        (Event::Raker { raker: a, .. }, Event::Raker { raker: b, .. }) => a == b,
        _ => false,
    };
    let next = log[at + 1..].iter().find(|entry| same(&entry.event));
    next.map_or(f64::NAN, |next| (next.at - log[at].at).as_secs_f64())
}

/// The draws of every load of a run without stoppages, gates, breaks or stand clear.
fn draws_of_loads(job: &Job, replay: &Replay) -> BTreeMap<u32, Draws> {
    let (mut all, mut volumes, mut last) = (BTreeMap::<u32, Draws>::new(), BTreeMap::new(), BTreeMap::new());
    for (at, entry) in replay.log.iter().enumerate() {
        match entry.event {
            Event::Loader { loader, activity, load, zone, volume_m3, .. } => {
                let machine = &job.loaders[loader];
                let metres = zone.map_or(0.0, |zone| job.zones[zone].ways[0].distance_m);
                if let Some(load) = load {
                    last.insert(loader, (load, metres));
                    volumes.insert(load, volume_m3);
                    all.entry(load).or_default()[5] = Some(volume_m3 / machine.heaped_m3);
                }
                let (place, mean_s) = match activity {
                    LoaderActivity::Loading => (0, machine.load_s),
                    LoaderActivity::Hauling => (1, metres / machine.loaded_m_per_s + machine.start_stop_s),
                    LoaderActivity::Dumping => (2, machine.dump_s),
                    LoaderActivity::Returning => {
                        (3, last[&loader].1 / machine.empty_m_per_s + machine.start_stop_s)
                    }
                    _ => continue,
                };
                all.entry(last[&loader].0).or_default()[place] = Some(stays(&replay.log, at) / mean_s);
            }
            Event::Raker { raker, activity: RakerActivity::Raking, load: Some(load), .. } => {
                let mean_s = volumes[&load] * 3_600.0 / job.rakers[raker].rate_m3_per_h;
                all.entry(load).or_default()[4] = Some(stays(&replay.log, at) / mean_s);
            }
            _ => {}
        }
    }
    // The last load takes what is still needed, not what its fill would give; nobody waits for the last way back.
    if let Some((_, draws)) = all.iter_mut().next_back() {
        (draws[3], draws[5]) = (None, None);
    }
    all
}

/// The job done differently, in every way in which the loads stay loads.
fn alternatives(n: &mut Numbers) -> Vec<(&'static str, Job)> {
    let with = |name, change: &mut dyn FnMut(&mut Job)| {
        let mut other = job();
        change(&mut other);
        (name, other)
    };
    vec![
        with("more room", &mut |job| job.zones[0].room = Some(5)),
        with("no limit of room", &mut |job| job.zones[0].room = None),
        with("one raker", &mut |job| job.rakers.truncate(1)),
        with("four rakers of different pace", &mut |job| {
            job.rakers = (0..4)
                .map(|i| Raker { rate_m3_per_h: n.between(20.0, 90.0), ..raker(&format!("{i}"), 0) })
                .collect();
        }),
        with("a larger bucket", &mut |job| job.loaders[0].heaped_m3 = n.between(1.0, 2.0)),
        with("a smaller bucket", &mut |job| job.loaders[0].heaped_m3 = n.between(0.5, 1.0)),
        with("a longer way", &mut |job| job.zones[0].ways[0].distance_m = n.between(20.0, 90.0)),
        with("slower loading and dumping", &mut |job| {
            (job.loaders[0].load_s, job.loaders[0].dump_s) = (44.0, 9.0)
        }),
        with("three loaders", &mut |job| *job = with_loaders(job.clone(), 3)),
        with("three loaders, two at the face", &mut |job| {
            *job = with_loaders(job.clone(), 3);
            job.stockpiles[0].face = 2;
        }),
        with("twice the ground", &mut |job| job.zones[0].need_m3 *= 2.0),
        with("set-up and clean-up", &mut |job| {
            (job.shift.set_up_s, job.shift.clean_up_s) =
                (Distribution::Exponential { mean: 90.0 }, Distribution::Constant(60.0));
        }),
    ]
}

#[test]
fn every_load_has_the_same_random_numbers_in_every_alternative() {
    let (base, numbers) = (job(), &mut Numbers(4));
    let (mut compared, mut ran_out) = (0, 0);
    for run in 0..60 {
        let told = draws_of_loads(&base, &Replay::new(&Plan::new(&base).unwrap(), 9, run).unwrap());
        for (name, other) in alternatives(numbers) {
            let again = draws_of_loads(&other, &Replay::new(&Plan::new(&other).unwrap(), 9, run).unwrap());
            ran_out += u32::from(told.len() != again.len());
            for (load, (one, two)) in
                told.iter().filter_map(|(load, draws)| Some((load, (draws, again.get(load)?))))
            {
                for (kind, (one, two)) in one.iter().zip(two).enumerate() {
                    // Times are rounded to a microsecond, and the shortest mean is half a second.
                    let (Some(one), Some(two)) = (one, two) else { continue };
                    if one.is_nan() || two.is_nan() {
                        continue;
                    }
                    assert!(
                        (one - two).abs() < 5e-6,
                        "run {run}, {name}, load {load}, kind {kind}: {one} and {two}"
                    );
                    compared += 1;
                }
            }
        }
    }
    assert!(
        compared > 30_000 && ran_out > 100,
        "{compared} compared, {ran_out} with another number of loads"
    );
}

#[test]
fn a_law_changed_for_one_kind_leaves_every_other_kind_as_it_was() {
    type Change = fn(&mut Chance, Distribution);
    let kinds: [Change; 6] = [
        |chance, law| chance.loads.loading = law,
        |chance, law| chance.loads.haul = law,
        |chance, law| chance.loads.dump = law,
        |chance, law| chance.loads.return_leg = law,
        |chance, law| chance.loads.raking = law,
        |chance, law| chance.loads.fill = law,
    ];
    let base = job();
    for (changed, change) in kinds.into_iter().enumerate() {
        let mut other = base.clone();
        change(&mut other.chance, Distribution::Uniform { least: 0.9, greatest: 1.1 });
        let mut moved = 0;
        for run in 0..20 {
            let [one, two] = [&base, &other]
                .map(|job| draws_of_loads(job, &Replay::new(&Plan::new(job).unwrap(), 9, run).unwrap()));
            for (load, one) in &one {
                let Some(two) = two.get(load) else { continue };
                for (kind, pair) in one.iter().zip(two).enumerate() {
                    let (Some(one), Some(two)) = pair else { continue };
                    if one.is_nan() || two.is_nan() {
                        continue;
                    }
                    let same = (one - two).abs() < 5e-6;
                    assert!(same || kind == changed, "run {run}, load {load}, kind {kind} by {changed}");
                    moved += u32::from(!same);
                }
            }
        }
        assert!(moved > 150, "kind {changed} hardly changed: {moved}");
    }
}

/// Gaps in operating time and lengths of a loader's stoppages, in order.
fn stoppages(replay: &Replay, loader: usize) -> Vec<(Duration, Duration)> {
    let turns: Vec<(Duration, LoaderActivity)> = (replay.log.iter())
        .filter_map(|entry| match entry.event {
            Event::Loader { loader: who, activity, .. } if who == loader => Some((entry.at, activity)),
            _ => None,
        })
        .collect();
    let (mut all, mut operating) = (Vec::new(), Duration::ZERO);
    for pair in turns.windows(2) {
        let lasted = pair[1].0 - pair[0].0;
        match pair[0].1 {
            LoaderActivity::Stopped => all.push((std::mem::take(&mut operating), lasted)),
            LoaderActivity::Loading
            | LoaderActivity::Hauling
            | LoaderActivity::Dumping
            | LoaderActivity::Returning
            | LoaderActivity::Passing => operating += lasted,
            _ => {}
        }
    }
    all
}

#[test]
fn every_loader_has_the_same_stoppages_in_every_alternative() {
    let (numbers, mut compared) = (&mut Numbers(5), 0);
    let with_stoppages = |mut job: Job| {
        let length_s = Distribution::Exponential { mean: 15.0 };
        for loader in &mut job.loaders {
            loader.stoppages = Some(Stoppages { mean_gap_s: 60.0, length_s: length_s.clone() });
        }
        job
    };
    let base = with_stoppages(with_loaders(job(), 2));
    for run in 0..40 {
        let told = Replay::new(&Plan::new(&base).unwrap(), 9, run).unwrap();
        for (name, other) in alternatives(numbers) {
            let other = with_stoppages(other);
            let again = Replay::new(&Plan::new(&other).unwrap(), 9, run).unwrap();
            for loader in 0..other.loaders.len().min(2) {
                let (one, two) = (stoppages(&told, loader), stoppages(&again, loader));
                let both = one.len().min(two.len()).saturating_sub(1);
                assert_eq!(one[..both], two[..both], "run {run}, {name}, loader {loader}");
                compared += both;
            }
        }
    }
    assert!(compared > 1_000, "{compared} stoppages compared");
}

#[test]
fn a_run_in_which_the_change_makes_no_difference_is_the_same_bit_for_bit() {
    let (base, mut equal, mut differ) = (job(), 0, 0);
    let mut other = base.clone();
    other.zones[0].room = Some(3);
    let [one, two] = [&base, &other]
        .map(|job| Study::new(&Plan::new(job).unwrap(), 9, Runs::Exactly(400), |_| {}).unwrap());
    for (one, two) in one.outcomes.iter().zip(&two.outcomes) {
        if one.loaders.time(LoaderActivity::WaitingForRoom) == Duration::ZERO {
            assert_eq!(one, two, "nobody waited for room, and more room changed the run");
            equal += 1;
        } else {
            differ += u32::from(one != two);
        }
    }
    assert!(equal > 10 && differ > 10, "{equal} runs without waiting, {differ} with");
}
