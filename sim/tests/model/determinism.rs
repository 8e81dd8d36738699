//! Section 2: the same seed gives the same bits on any number of threads, in any order, and one run can be replayed.

use super::jobs::*;
use super::time_accounts;
use sim::*;

/// Two loaders, two rakers, a gate, a break, stoppages and chance everywhere.
fn lively() -> Job {
    let zones = vec![zone("north", 6.0, 0, 20.0), zone("south", 4.0, 0, 40.0)];
    let mut job = with_zones(with_loaders(one_and_one(), 2), zones, 30.0);
    job.rakers = vec![raker("a", 0), raker("b", 1)];
    job.passes = vec![gate()];
    job.zones[1].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
    job.zones[0].room = Some(2);
    job.raking.stand_clear = true;
    job.shift.breaks = vec![pause(&job, 200.0, 300.0)];
    for loader in &mut job.loaders {
        loader.stoppages =
            Some(Stoppages { mean_gap_s: 300.0, length_s: Distribution::Exponential { mean: 20.0 } });
        (loader.fuel_working_l_per_h, loader.machine_cost_per_h) = (3.3, 17.7);
    }
    job.prices = Prices { fuel_per_l: 1.37, material: 12.3 };
    with_lognormal_noise(job, 0.15, 0.4)
}

fn study_on(threads: usize, job: &Job, runs: Runs) -> Study {
    let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
    let plan = Plan::new(job).unwrap();
    pool.install(|| Study::new(&plan, 11, runs, |_| {})).unwrap()
}

#[test]
fn one_two_and_eight_threads_give_the_same_bits() {
    let [one, two, eight] = [1, 2, 8].map(|threads| study_on(threads, &lively(), Runs::Exactly(1_300)));
    // Equal, and equal to the last digit that tells two numbers apart.
    assert_eq!(one, two);
    assert_eq!(one, eight);
    assert_eq!(format!("{one:?}"), format!("{eight:?}"));
}

#[test]
fn a_replay_has_the_same_outcome_as_the_run_in_the_study() {
    let (job, plan) = (lively(), Plan::new(&lively()).unwrap());
    let study = Study::new(&plan, time_accounts::SEED, Runs::Exactly(300), |_| {}).unwrap();
    // Alone, and backwards.
    for run in (0..300).rev() {
        let replay = Replay::new(&plan, time_accounts::SEED, run).unwrap();
        assert_eq!(replay.outcome, study.outcomes[run as usize]);
        if run % 10 == 0 {
            time_accounts::check(&job, &replay);
        }
    }
}

#[test]
fn the_time_accounts_of_a_study_are_the_sum_of_its_runs() {
    let plan = Plan::new(&lively()).unwrap();
    let study = Study::new(&plan, 3, Runs::Exactly(100), |_| {}).unwrap();
    let mut sum = Accounts::empty(2, 2, 2);
    (0..100).for_each(|run| sum.add(&Replay::new(&plan, 3, run).unwrap().accounts));
    assert_eq!(
        (&sum.loaders, &sum.rakers, &sum.loads),
        (&study.accounts.loaders, &study.accounts.rakers, &study.accounts.loads)
    );
    for (a, b) in sum.zones.iter().zip(&study.accounts.zones) {
        assert_eq!(a.loads, b.loads);
        assert!((a.placed_m3 - b.placed_m3).abs() < 1e-6);
    }
}

#[test]
fn more_runs_begin_with_the_same_runs() {
    let plan = Plan::new(&lively()).unwrap();
    let few = Study::new(&plan, 7, Runs::Exactly(40), |_| {}).unwrap();
    let many = Study::new(&plan, 7, Runs::Exactly(600), |_| {}).unwrap();
    assert_eq!(few.outcomes[..], many.outcomes[..40]);
    assert!(many.outcomes.iter().enumerate().all(|(i, outcome)| outcome.run == i as u32));
}

#[test]
fn running_until_precise_is_running_so_many() {
    let until = Runs::UntilP80Within { half_width_s: 12.0, most: 20_000 };
    let [one, eight] = [1, 8].map(|threads| study_on(threads, &lively(), until));
    assert_eq!(one, eight);
    let p80 = one.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.8);
    assert!(p80.high.unwrap() - p80.value <= 12.0 && p80.value - p80.low.unwrap() <= 12.0);
    assert!(one.runs() < 20_000, "{} runs", one.runs());
    assert_eq!(one, study_on(2, &lively(), Runs::Exactly(one.runs())));
    let at_most = study_on(2, &lively(), Runs::UntilP80Within { half_width_s: 0.001, most: 1_500 });
    assert_eq!(at_most.runs(), 1_500);
}

#[test]
fn another_seed_is_other_random_numbers_and_so_is_another_run() {
    let plan = Plan::new(&lively()).unwrap();
    let study = |seed| Study::new(&plan, seed, Runs::Exactly(50), |_| {}).unwrap();
    let finishes = |study: &Study| study.outcomes.iter().map(|o| o.finish.working).collect::<Vec<_>>();
    let (one, two) = (finishes(&study(1)), finishes(&study(2)));
    let mut all = [one, two].concat();
    all.sort_unstable();
    all.dedup();
    assert_eq!(all.len(), 100);
}

#[test]
fn a_plan_made_from_another_is_the_same_as_one_made_afresh() {
    let mut other = lively();
    other.rakers.push(raker("c", 0));
    other.zones[0].room = Some(1);
    let plan = Plan::new(&lively()).unwrap();
    let (varied, fresh) = (plan.variant(&other).unwrap(), Plan::new(&other).unwrap());
    let study = |plan: &Plan| Study::new(plan, 4, Runs::Exactly(60), |_| {}).unwrap();
    assert_eq!(study(&varied), study(&fresh));
}
