//! Buckets compared with today's: the bundle that the screen, the page, the charts and the files are drawn from.

use crate::failure::Failure;
use crate::findings::tries;
use crate::provenance::Provenance;
use scenarios::units::System;
use scenarios::{Bucket, BucketList, Fitted, Scenario, with_bucket};
use sim::{Improvement, Job, Paired, Payback, Plan, Purchase, Relief, Runs, Study, paired};

/// What is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// The loader the buckets are for (index in the job).
    pub loader: usize,
    /// Row of the list that is today's bucket; `None` for the one in the file.
    pub today: Option<usize>,
    /// Hand barrows to try in place of the loader; 0 for none.
    pub barrows: u32,
    /// Seed of all random numbers.
    pub seed: u64,
    /// Runs of each.
    pub runs: u32,
    /// How the bucket would be used, if its worth is asked for.
    pub usage: Option<Usage>,
}

/// How much a bucket would be used, and what that is worth.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct Usage {
    /// Fewest and most jobs like this one in a year.
    pub jobs_per_year: (u32, u32),
    /// What an hour saved on a job is worth \[money/h\].
    pub hour_worth: f64,
    /// In which currency.
    pub currency: String,
    /// Years the bucket is used.
    pub years: u32,
    /// Yearly interest as a share.
    pub interest: f64,
}

/// Futures played for each bucket: the share of them that pays is then known to about 1 % (our own choice).
pub const FUTURES: u32 = 4_000;

/// Buckets compared with today's.
pub struct Buckets {
    /// The job with today's bucket.
    pub scenario: Scenario,
    /// The list as read.
    pub list: BucketList,
    /// What was wanted.
    pub wanted: Wanted,
    /// The runs with today's bucket.
    pub today: Study,
    /// Every bucket of the list, in its order.
    pub tried: Vec<Tried>,
    /// Hand barrows in place of the loader, or why they cannot be; `None` if they were not asked for.
    pub barrow: Option<Result<ByHand, String>>,
    /// What would help today's job, in the order of [`sim::relief`].
    pub relief: Vec<Relief>,
    /// Units to show.
    pub units: System,
    /// What it takes to get the same answer again.
    pub provenance: Provenance,
}

/// A bucket that was tried.
pub struct Tried {
    /// The bucket.
    pub bucket: Bucket,
    /// The same on the loader.
    pub fitted: Fitted,
    /// Its runs; `None` where the job cannot be done with it.
    pub study: Option<Study>,
    /// What it is worth, if that is asked for and there are runs. Without a price: of a bucket that costs nothing.
    pub payback: Option<Payback>,
}

/// The job done with hand barrows.
pub struct ByHand {
    /// The job.
    pub scenario: Scenario,
    /// Its runs.
    pub study: Study,
}

/// The job with today's bucket, with every bucket of the list and by hand, compiled.
pub struct Jobs {
    /// The job with today's bucket.
    pub scenario: Scenario,
    /// The list as read.
    pub list: BucketList,
    /// What is wanted.
    pub wanted: Wanted,
    /// The job with today's bucket, compiled.
    pub today: Plan,
    /// Every bucket of the list on the loader.
    fitted: Vec<(Fitted, Fit)>,
    /// Hand barrows in place of the loader, or why they cannot be; `None` if they were not asked for.
    barrow: Option<Result<(Scenario, Plan), String>>,
}

/// The job with a bucket of the list.
enum Fit {
    /// It cannot be done.
    Impossible,
    /// It is the job with today's bucket.
    Todays,
    /// Another job.
    Other(Box<Plan>),
}

impl Jobs {
    /// Puts every bucket on the loader and compiles the jobs.
    ///
    /// # Errors
    /// If today's bucket does not fit the job, or the model has no meaning for a job.
    pub fn new(mut scenario: Scenario, list: BucketList, wanted: Wanted) -> Result<Self, Failure> {
        let row = wanted.today.and_then(|row| list.buckets.get(row));
        let fitted: Vec<Fitted> =
            list.buckets.iter().map(|bucket| with_bucket(&scenario, wanted.loader, bucket, row)).collect();
        if let Some(today) = wanted.today {
            scenario.job = todays_job(&list.buckets[today], &fitted[today])?;
        }
        let refused = |error| Failure::Job { file: scenario.file.clone(), error };
        let today = Plan::new(&scenario.job).map_err(refused)?;
        let variant = |job: &Job| today.variant(job).map_err(refused);
        let fit = |fitted: Fitted| {
            let fit = match &fitted.job {
                None => Fit::Impossible,
                Some(job) if *job == scenario.job => Fit::Todays,
                Some(job) => Fit::Other(Box::new(variant(job)?)),
            };
            Ok((fitted, fit))
        };
        let fitted = fitted.into_iter().map(fit).collect::<Result<Vec<_>, Failure>>()?;
        let barrow = match wanted.barrows {
            0 => None,
            count => Some(match scenarios::barrow(&scenario, wanted.loader, count) {
                Ok(by_hand) => {
                    let plan = variant(&by_hand.job)?;
                    Ok((by_hand, plan))
                }
                Err(why) => Err(why),
            }),
        };
        Ok(Self { scenario, list, wanted, today, fitted, barrow })
    }

    /// Runs made in all at the most.
    pub fn runs_at_most(&self) -> u64 {
        let Self { scenario, list, wanted, .. } = self;
        let improved = Improvement::ALL
            .iter()
            .filter(|i| i.of(&scenario.job, scenario.stated.truckload_m3).is_some())
            .count();
        let others = usize::from(wanted.barrows > 0);
        u64::from(wanted.runs) * (1 + list.buckets.len() + improved + others) as u64
    }
}

impl Buckets {
    /// Tries every bucket on the same days and loads. `made` is told of runs as they are finished, from any thread.
    ///
    /// # Errors
    /// If a run can make no progress, or the model has no meaning for an improved job.
    pub fn new(jobs: Jobs, command: String, made: impl Fn(u32) + Sync) -> Result<Self, Failure> {
        let Jobs { scenario, list, wanted, today: plan, fitted, barrow } = jobs;
        let run = |plan: &Plan| Study::new(plan, wanted.seed, Runs::Exactly(wanted.runs), &made);
        let today = run(&plan)?;
        let one = |(bucket, (fitted, fit)): (&Bucket, (Fitted, Fit))| {
            let (study, payback) = match fit {
                Fit::Impossible => (None, None),
                Fit::Todays => (Some(today.clone()), None),
                Fit::Other(plan) => {
                    let study = run(&plan)?;
                    let payback = worth(bucket, &today, &study, &wanted);
                    (Some(study), payback)
                }
            };
            Ok(Tried { bucket: bucket.clone(), fitted, study, payback })
        };
        let tried = list.buckets.iter().zip(fitted).map(one).collect::<Result<Vec<_>, Failure>>()?;
        let barrow = match barrow {
            Some(Ok((scenario, plan))) => Some(Ok(ByHand { study: run(&plan)?, scenario })),
            Some(Err(why)) => Some(Err(why)),
            None => None,
        };
        let usual_m3 = scenario.stated.truckload_m3;
        let relief = sim::relief(&scenario.job, &plan, &today, usual_m3, tries(&today), &made)?;
        let provenance = Provenance::new(&scenario, wanted.seed, wanted.runs, command);
        let units = scenario.units;
        Ok(Self { scenario, list, wanted, today, tried, barrow, relief, units, provenance })
    }

    /// Name of the loader the buckets are for.
    pub fn loader(&self) -> &str {
        self.scenario.job.loaders.get(self.wanted.loader).map_or("", |loader| loader.name.as_str())
    }

    /// Time saved against today's bucket, run by run \[s\].
    pub fn saved_s(&self, with: &Study) -> Paired {
        paired(&self.today.outcomes, &with.outcomes, |o| o.finish.working.as_secs_f64())
    }

    /// All that was used, in a line.
    pub fn made_with(&self) -> String {
        let hash = self.list.hash.get(..12).unwrap_or(&self.list.hash);
        format!("{}, list {hash}; as many runs of each", self.provenance.words())
    }
}

fn todays_job(bucket: &Bucket, fitted: &Fitted) -> Result<Job, Failure> {
    fitted.job.clone().ok_or_else(|| {
        let why = match fitted.gates.through {
            scenarios::Through::Refused => &fitted.gates.words,
            _ => &fitted.lift.words,
        };
        Failure::Asked(format!(
            "--today \"{}\": the job cannot be done with this bucket: {why} Name the bucket that is on the loader today; nothing \
             was written",
            bucket.name
        ))
    })
}

/// What a bucket is worth: minutes saved at what an hour is worth, over years of jobs.
fn worth(bucket: &Bucket, today: &Study, with: &Study, wanted: &Wanted) -> Option<Payback> {
    let usage = wanted.usage.as_ref()?;
    let hours = |study: &Study| {
        study.outcomes.iter().map(|o| o.finish.working.as_secs_f64() / 3_600.0).collect::<Vec<_>>()
    };
    let saved: Vec<f64> =
        hours(today).iter().zip(hours(with)).map(|(today, with)| (today - with) * usage.hour_worth).collect();
    let purchase = Purchase {
        price: bucket.price.unwrap_or(0.0),
        jobs_per_year: usage.jobs_per_year,
        years: usage.years,
        interest: usage.interest,
    };
    Some(purchase.payback(&saved, FUTURES, wanted.seed))
}
