//! Steps taken together against single steps: a study takes steps together where nobody can interfere before their end
//! (`run/steps.rs`), a replay takes every step by itself. The same to the last bit, whatever the job.

use super::any_job::{crowd, line, some_job, yard};
use super::jobs::*;
use sim::*;

const SEED: u64 = 20_261_125;

/// Compares every run of a study, and its time accounts, with replays.
fn compare(what: &str, job: &Job, runs: u32) -> u32 {
    let plan = Plan::new(job).unwrap();
    let study = match Study::new(&plan, SEED, Runs::Exactly(runs), |_| {}) {
        Ok(study) => study,
        Err(deadlock) => {
            assert_eq!(Replay::new(&plan, SEED, deadlock.run).unwrap_err(), deadlock, "{what}");
            return 0;
        }
    };
    let mut loads = 0;
    let mut accounts: Option<Accounts> = None;
    for (run, together) in study.outcomes.iter().enumerate() {
        let single = Replay::new(&plan, SEED, run as u32).unwrap();
        assert_eq!(*together, single.outcome, "{what}, run {run}");
        match &mut accounts {
            None => accounts = Some(single.accounts),
            Some(accounts) => accounts.add(&single.accounts),
        }
        loads += together.loads;
    }
    assert_eq!(Some(study.accounts), accounts, "{what}: time accounts");
    loads
}

#[test]
fn in_thousands_of_jobs_steps_taken_together_and_single_steps_agree_to_the_last_bit() {
    type Maker = fn(u64) -> Job;
    let makers: [(&str, Maker); 4] = [("some", some_job), ("line", line), ("yard", yard), ("crowd", crowd)];
    for (kind, maker) in makers {
        let loads: u32 = (0..1_500).map(|n| compare(&format!("{kind} {n}"), &maker(n), 4)).sum();
        assert!(loads > 40_000, "{kind}: {loads} loads");
    }
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

#[test]
fn who_tires_and_stands_clear_while_a_new_day_starts_agrees_to_the_last_bit() {
    let mut job = with_lognormal_noise(one_and_one(), 0.1, 0.3);
    job.shift.breaks = vec![Break { start_s: 9.0 * 3_600.0, end_s: 9.5 * 3_600.0 }];
    job.raking = Raking {
        stand_clear: true,
        fatigue: Some(Fatigue { share_per_h: 0.02, floor: 0.3 }),
        ..job.raking.clone()
    };
    job.loaders[0].dump_s = 30.0;
    job.zones[0] = Zone { room: Some(3), ..zone("north", 1_500.0, 0, 40.0) };
    job.stockpiles[0] = pile("pile", 2_000.0);
    let loads = compare("over a day and a night", &job, 12);
    assert!(loads > 12 * 1_300, "{loads} loads are too few for a second day");
}
