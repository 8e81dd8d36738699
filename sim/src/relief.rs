//! What would help: the same luck with one thing improved, and the minutes that saves.

use crate::activity::SECOND;
use crate::job::Job;
use crate::outcome::Outcome;
use crate::paired::paired;
use crate::percentile::Mean;
use crate::plan::{JobError, Plan};
use crate::run::RunError;
use crate::study::{Runs, Study};

/// One thing made better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Improvement {
    /// A copy of the last raker.
    AnotherRaker,
    /// Every raker a tenth faster.
    FasterRaking,
    /// Every bucket's heaped capacity a tenth larger, same lift and times.
    LargerBucket,
    /// Every way a tenth shorter.
    ShorterWays,
    /// A copy of the last loader.
    AnotherLoader,
    /// Room for one more heap in every zone whose room is limited.
    MoreRoom,
}

/// What an improvement saves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Relief {
    /// What was improved.
    pub improvement: Improvement,
    /// Working time to the finish saved \[s\]: mean of the paired differences.
    pub saved_s: Mean,
    /// Cost saved \[money\]: mean of the paired differences, below 0 where it costs more.
    pub saved_cost: Mean,
}

/// Why relief could not be worked out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReliefError {
    /// The improved job is refused.
    #[error(transparent)]
    Job(#[from] JobError),
    /// A run of the improved job is stuck.
    #[error(transparent)]
    Run(#[from] RunError),
}

impl Improvement {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::AnotherRaker,
        Self::FasterRaking,
        Self::LargerBucket,
        Self::ShorterWays,
        Self::AnotherLoader,
        Self::MoreRoom,
    ];

    /// The job with this improved; `None` where there is nothing to improve.
    pub fn of(self, job: &Job) -> Option<Job> {
        let mut job = job.clone();
        match self {
            Self::AnotherRaker => {
                let copy = job.rakers.last().filter(|_| job.rakers.len() < crate::plan::MOST_RAKERS)?.clone();
                job.rakers.push(copy);
            }
            Self::FasterRaking => {
                job.rakers.first()?;
                job.rakers.iter_mut().for_each(|r| r.rate_m3_per_h *= 1.1);
            }
            Self::LargerBucket => job.loaders.iter_mut().for_each(|l| l.heaped_m3 *= 1.1),
            Self::ShorterWays => {
                job.zones.iter_mut().flat_map(|z| &mut z.ways).for_each(|w| w.distance_m *= 0.9);
            }
            Self::AnotherLoader => {
                let copy =
                    job.loaders.last().filter(|_| job.loaders.len() < crate::plan::MOST_LOADERS)?.clone();
                job.loaders.push(copy);
            }
            Self::MoreRoom => {
                job.zones.iter().find_map(|z| z.room)?;
                job.zones.iter_mut().filter_map(|z| z.room.as_mut()).for_each(|r| *r += 1);
            }
        }
        Some(job)
    }
}

/// Each improvement that applies to the job, compared with the first `runs` runs of its study, most minutes first.
///
/// # Errors
/// If an improved job is refused or gets stuck, which the job itself was not.
pub fn relief(
    job: &Job,
    study: &Study,
    runs: u32,
    made: impl Fn(u32) + Sync,
) -> Result<Vec<Relief>, ReliefError> {
    let runs = runs.min(study.runs());
    let plan = Plan::new(job)?;
    let mut all = Vec::new();
    for improvement in Improvement::ALL {
        let Some(improved) = improvement.of(job) else { continue };
        let better = Study::new(&plan.variant(&improved)?, study.seed, Runs::Exactly(runs), &made)?;
        let saved = |figure: fn(&Outcome) -> f64| paired(&study.outcomes, &better.outcomes, figure).mean;
        all.push(Relief {
            improvement,
            saved_s: saved(|o| o.finish.working as f64 / SECOND as f64),
            saved_cost: saved(|o| o.cost),
        });
    }
    all.sort_by(|a, b| b.saved_s.value.total_cmp(&a.saved_s.value));
    Ok(all)
}
