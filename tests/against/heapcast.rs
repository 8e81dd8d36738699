//! The two jobs in heapcast, on one thread.

use crate::contest::{Answers, Contestant, Outcome, Pass, Work, ns_per};
use crate::jobs;
use sim::{Plan, Runs, Study};
use std::time::Instant;

/// Where heapcast stands among the contestants.
pub const ROW: usize = 1;

pub fn contestant() -> anyhow::Result<Contestant> {
    let one_thread = rayon::ThreadPoolBuilder::new().num_threads(1).build()?;
    let pass = move |work, runs, seed| {
        let job = if work == Work::Yard { jobs::yard() } else { jobs::one_and_one() };
        let start = Instant::now();
        // The plan with its tables is part of the price.
        let plan = Plan::new(&job)?;
        let study = one_thread.install(|| Study::new(&plan, seed, Runs::Exactly(runs), |_| {}))?;
        let spent = start.elapsed();
        let (mut answers, mut loads) = (Answers::default(), 0);
        for outcome in &study.outcomes {
            let completion_s = outcome.completion.working.as_secs_f64();
            loads += u64::from(outcome.loads);
            answers.add(&Outcome { loads: outcome.loads, completion_s });
        }
        Ok(Pass { ns_per_load: ns_per(spent, loads), answers: Some(answers) })
    };
    Ok(Contestant { name: "heapcast".into(), runs: [40_000, 1_500], pass: Box::new(pass) })
}
