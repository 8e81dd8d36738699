//! Runs made the short ways (`run/line.rs`, `run/yard`) against the same runs made the long way: a study takes a short way
//! where the job allows one, a replay never does. The same to the last bit, whatever the job.

use super::any_job::{line, yard};
use super::jobs::*;
use sim::*;

const SEED: u64 = 20_261_125;

/// Compares every run of a study, and its books, with replays.
fn compare(what: &str, job: &Job, runs: u32) -> u32 {
    let plan = Plan::new(job).unwrap();
    let study = match Study::new(&plan, SEED, Runs::Exactly(runs), |_| {}) {
        Ok(study) => study,
        Err(stuck) => {
            assert_eq!(Replay::new(&plan, SEED, stuck.run).unwrap_err(), stuck, "{what}");
            return 0;
        }
    };
    let mut loads = 0;
    let mut books: Option<Books> = None;
    for (run, short) in study.outcomes.iter().enumerate() {
        let long = Replay::new(&plan, SEED, run as u32).unwrap();
        assert_eq!(*short, long.outcome, "{what}, run {run}");
        match &mut books {
            None => books = Some(long.books),
            Some(books) => books.add(&long.books),
        }
        loads += short.loads;
    }
    assert_eq!(Some(study.books), books, "{what}: books");
    loads
}

#[test]
fn in_thousands_of_lines_the_short_way_and_the_long_way_agree_to_the_last_bit() {
    let loads: u32 = (0..4_000).map(|number| compare(&format!("line {number}"), &line(number), 4)).sum();
    assert!(loads > 100_000, "{loads} loads");
}

#[test]
fn in_thousands_of_yards_the_short_way_and_the_long_way_agree_to_the_last_bit() {
    let loads: u32 = (0..2_000).map(|number| compare(&format!("yard {number}"), &yard(number), 4)).sum();
    assert!(loads > 100_000, "{loads} loads");
}

#[test]
fn one_and_one_and_a_yard_agree_to_the_last_bit_over_many_runs() {
    let mut one = with_lognormal_noise(one_and_one(), 0.1, 0.3);
    one.zones[0].room = Some(3);
    one.zones[0].need_m3 = 40.0;
    one.stockpiles[0].on_hand_m3 = 60.0;
    compare("one and one", &one, 250);
    one.raking.stand_clear = true;
    compare("one and one, standing clear", &one, 250);
    let gated = |name, need_m3| {
        let passes = vec![PassOnWay { pass: 0, share: 0.5 }];
        Zone {
            room: Some(3),
            ways: vec![Way { stockpile: 0, distance_m: 40.0, passes }],
            ..zone(name, need_m3, 0, 40.0)
        }
    };
    for face in [1, 2] {
        let zones = vec![gated("a", 30.0), gated("b", 30.0), gated("c", 30.0)];
        let mut yard = with_loaders(with_zones(one.clone(), zones, 0.0), 4);
        yard.passes = vec![gate()];
        yard.stockpiles[0] = Stockpile { face, ..pile("pile", 150.0) };
        yard.rakers = (0..6).map(|n| raker(&format!("raker {n}"), n / 2)).collect();
        yard.fill_order = FillOrder::InTurn;
        compare("a yard", &yard, 250);
        yard.zones.iter_mut().for_each(|z| z.walks_m.iter_mut().for_each(|w| *w += 10.0));
        yard.stockpiles[0].on_hand_m3 = 70.0;
        compare("a yard that runs out", &yard, 250);
    }
}
