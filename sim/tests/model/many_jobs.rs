//! A great many jobs (see `any_job`): whatever the job, the time accounts close, the volumes add up and nobody is where there is no
//! place for them (see `time_accounts` and `waits`).

use super::any_job::some_job;
use super::time_accounts;
use sim::*;

#[test]
fn in_thousands_of_jobs_the_time_accounts_close_and_nobody_is_where_they_may_not_be_or_idles_without_a_cause()
{
    let (mut loads, mut nights, mut seen) = (0, 0, [0; LoaderActivity::COUNT]);
    for number in 0..3_000 {
        let job = some_job(number);
        let plan = Plan::new(&job).unwrap();
        for run in 0..2 {
            let replay = Replay::new(&plan, time_accounts::SEED, run)
                .unwrap_or_else(|deadlock| panic!("job {number}: {deadlock}"));
            let said = std::panic::catch_unwind(|| time_accounts::check(&job, &replay));
            assert!(said.is_ok(), "job {number}, run {run}");
            loads += replay.outcome.loads;
            nights += i32::from(replay.outcome.finish.clock > replay.outcome.finish.working);
            for (total, (_, time)) in seen.iter_mut().zip(replay.outcome.loaders.iter()) {
                *total += i32::from(time > Duration::ZERO);
            }
        }
    }
    assert!(loads > 20_000 && nights > 200, "{loads} loads, {nights} runs with a night");
    assert!(seen.iter().all(|runs| *runs > 100), "runs with each activity: {seen:?}");
}
