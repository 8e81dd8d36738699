//! One job compared with another, replication by replication, under common random numbers.

use crate::outcome::Outcome;
use crate::percentile::{Mean, Share, Sorted, mean, share};

/// What one job saves against another in one figure.
///
/// Both must have been run with the same seed: load *k* of run *r* then draws the same on both sides (common random
/// numbers; Law, Simulation Modeling and Analysis, ch. 11, from memory), most of the chance falls out of the difference,
/// and small true differences show in few runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Paired {
    /// Before less after, one for each run, rising; above 0 where the second job is the better.
    pub saved: Sorted,
    /// Mean of the differences with its interval.
    pub mean: Mean,
    /// Chance that the second job has the smaller figure.
    pub smaller: Share,
    /// Chance that both have the same.
    pub same: Share,
}

/// Compares as many runs as both jobs have.
///
/// ```
/// # use sim::*;
/// # fn two(before: &[Outcome], after: &[Outcome]) {
/// let minutes = paired(before, after, |o| o.finish.working.as_mins_f64());
/// let median = minutes.saved.percentile(0.5).value;
/// # }
/// ```
pub fn paired(before: &[Outcome], after: &[Outcome], figure: impl Fn(&Outcome) -> f64) -> Paired {
    Paired::of(before.iter().zip(after).map(|(b, a)| figure(b) - figure(a)).collect())
}

impl Paired {
    /// What is saved, run by run.
    pub fn of(saved: Vec<f64>) -> Self {
        let count = |such: fn(&f64) -> bool| share(saved.iter().filter(|s| such(s)).count(), saved.len());
        Self {
            mean: mean(&saved),
            smaller: count(|s| *s > 0.0),
            same: count(|s| *s == 0.0),
            saved: Sorted::new(saved),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tie_is_neither_a_gain_nor_a_loss() {
        let paired = Paired::of(vec![0.0, 4.0, 1.0, 3.0, -2.0]);
        assert_eq!((paired.smaller.value, paired.same.value), (0.6, 0.2));
        assert_eq!(paired.mean.value, 1.2);
        assert_eq!(paired.saved.values(), [-2.0, 0.0, 1.0, 3.0, 4.0]);
    }
}
