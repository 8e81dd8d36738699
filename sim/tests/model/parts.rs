//! A study made in parts, by whoever and in whatever order, is the study made whole, to the last bit.

use super::jobs::*;
use sim::*;
use std::ops::Range;

const SEED: u64 = 23;

/// Two zones for which there is not quite enough, so that no sum of volumes is a round number.
fn two_zones() -> Job {
    let zones = vec![zone("north", 5.3, 0, 20.0), zone("south", 4.7, 0, 35.0)];
    let mut job = with_lognormal_noise(with_zones(one_and_one(), zones, 12.0), 0.1, 0.3);
    (job.stockpiles[0].on_hand_m3, job.zones[0].room) = (9.1, Some(2));
    job.rakers.push(raker("another", 1));
    job
}

fn part(plan: &Plan, runs: Range<u32>) -> StudyPart {
    StudyPart::new(plan, SEED, runs, |_| {}).unwrap()
}

/// Cut at these numbers, the last first.
fn merged(plan: &Plan, cuts: &[u32]) -> Result<Study, MergeError> {
    Study::merge(cuts.windows(2).rev().map(|cut| part(plan, cut[0]..cut[1])).collect())
}

#[test]
fn parts_cut_anywhere_merge_to_the_bits_of_the_whole() {
    let plan = Plan::new(&two_zones()).unwrap();
    let whole = Study::new(&plan, SEED, Runs::Exactly(1_130), |_| {}).unwrap();
    let placed = whole.accounts.zones[0].placed_m3;
    for cuts in [
        [0, 250, 500, 750, 1_130].as_slice(),
        &[0, 1, 249, 251, 1_130],
        &[0, 600, 601, 602, 740, 1_129, 1_130],
        &[0, 300, 300, 1_130],
        &[0, 1_130],
    ] {
        let merged = merged(&plan, cuts).unwrap();
        assert_eq!(merged, whole, "{cuts:?}");
        assert_eq!(merged.accounts.zones[0].placed_m3.to_bits(), placed.to_bits(), "{cuts:?}");
    }
    // The order of adding up does matter, or this would show nothing.
    let backwards = |all: &mut dyn DoubleEndedIterator<Item = f64>| all.rev().sum::<f64>();
    let runs: Vec<f64> =
        (0..1_130).map(|run| Replay::new(&plan, SEED, run).unwrap().accounts.zones[0].placed_m3).collect();
    assert_ne!(backwards(&mut runs.iter().copied()).to_bits(), placed.to_bits());
}

#[test]
fn a_merged_study_goes_on_as_the_whole_does() {
    let plan = Plan::new(&two_zones()).unwrap();
    let mut study = merged(&plan, &[0, 77, 410]).unwrap();
    study.extend(&plan, 1_001, |_| {}).unwrap();
    assert_eq!(study, Study::new(&plan, SEED, Runs::Exactly(1_001), |_| {}).unwrap());
}

#[test]
fn a_study_goes_on_to_the_same_bits_wherever_it_was_held_up() {
    let plan = Plan::new(&two_zones()).unwrap();
    let mut study = Study::new(&plan, SEED, Runs::Exactly(30), |_| {}).unwrap();
    for runs in [210, 250, 255, 700, 1_000] {
        study.extend(&plan, runs, |_| {}).unwrap();
        assert_eq!(study, Study::new(&plan, SEED, Runs::Exactly(runs), |_| {}).unwrap(), "{runs}");
    }
}

#[test]
fn a_part_is_written_and_read_to_the_same_bits() {
    let part = part(&Plan::new(&two_zones()).unwrap(), 190..520);
    let bytes = postcard::to_allocvec(&part).unwrap();
    let read: StudyPart = postcard::from_bytes(&bytes).unwrap();
    assert_eq!((read.seed(), read.runs(), read.job()), (SEED, 190..520, part.job()));
    assert_eq!(read, part);
}

#[test]
fn what_does_not_belong_together_is_not_merged() {
    let plan = Plan::new(&two_zones()).unwrap();
    assert_eq!(Study::merge(vec![]), Err(MergeError::NoParts));
    assert_eq!(Study::merge(vec![part(&plan, 40..40)]), Err(MergeError::NoParts));
    let gap = Study::merge(vec![part(&plan, 60..90), part(&plan, 0..50)]).unwrap_err();
    assert_eq!(gap, MergeError::Gap { missing: 50..60 });
    assert_eq!(gap.to_string(), "runs 50 to 59 are in no part");
    assert_eq!(Study::merge(vec![part(&plan, 10..90)]), Err(MergeError::Gap { missing: 0..10 }));
    let twice = Study::merge(vec![part(&plan, 0..50), part(&plan, 45..90)]).unwrap_err();
    assert_eq!(twice, MergeError::Overlap { twice: 45..50 });
    assert_eq!(twice.to_string(), "runs 45 to 49 are in more than one part");
    let inside = Study::merge(vec![part(&plan, 0..50), part(&plan, 10..20)]);
    assert_eq!(inside, Err(MergeError::Overlap { twice: 10..20 }));
    let other_seed = StudyPart::new(&plan, SEED + 1, 50..60, |_| {}).unwrap();
    let seeds = Study::merge(vec![part(&plan, 0..50), other_seed]);
    assert_eq!(seeds, Err(MergeError::OtherSeed { one: SEED, other: SEED + 1 }));
    let mut other = two_zones();
    other.loaders[0].load_s += 1e-12;
    let other = Plan::new(&other).unwrap();
    let jobs = Study::merge(vec![part(&plan, 0..50), part(&other, 50..60)]);
    assert_eq!(jobs, Err(MergeError::OtherJob { one: 0..50, other: 50..60 }));
}

#[test]
fn a_part_that_does_not_hold_what_it_says_is_refused() {
    let plan = Plan::new(&two_zones()).unwrap();
    let mut value = serde_json::to_value(part(&plan, 0..20)).unwrap();
    value["outcomes"].as_array_mut().unwrap().pop();
    let short: StudyPart = serde_json::from_value(value).unwrap();
    assert_eq!(Study::merge(vec![short]), Err(MergeError::Damaged { runs: 0..20 }));
}
