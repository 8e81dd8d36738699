//! The trade's words for what can be turned: one word that changes several keys of a file.

use crate::clearance::fits;
use std::fmt;

/// What can be turned.
///
/// ```
/// use scenarios::Knob;
/// assert_eq!(Knob::of("rakers"), Knob::Rakers);
/// assert_eq!(Knob::of("loader.tractor.heaped"), Knob::Key("loader.tractor.heaped".into()));
/// assert_eq!(Knob::Bucket.words(), "bucket, heaped");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Knob {
    /// How many rakers there are in all: further ones are copies of the last, of fewer the first stay.
    Rakers,
    /// How many loaders there are in all: further ones are copies of the last, of fewer the first stay.
    Loaders,
    /// Heaped capacity of every loader; struck capacity follows in proportion, everything else stays.
    Bucket,
    /// Mean haul: over the zones, by what they need, of the nearest way. All ways follow in proportion.
    Haul,
    /// Heaps that may lie in each zone at once.
    Room,
    /// A key of the file.
    Key(String),
}

impl Knob {
    /// The words of the trade, as typed.
    pub const WORDS: [&str; 5] = ["rakers", "loaders", "bucket", "haul", "room"];

    /// The knob of a word; any other word is a key of the file.
    pub fn of(word: &str) -> Self {
        match word.trim().to_ascii_lowercase().as_str() {
            "rakers" => Self::Rakers,
            "loaders" => Self::Loaders,
            "bucket" => Self::Bucket,
            "haul" => Self::Haul,
            "room" => Self::Room,
            _ => Self::Key(word.trim().to_owned()),
        }
    }

    /// Whether it takes whole numbers without a unit.
    pub fn is_count(&self) -> bool {
        matches!(self, Self::Rakers | Self::Loaders | Self::Room)
    }

    /// Where the knob stands in a job, in SI: how many rakers or loaders, the heaped
    /// capacity of the first loader \[m3\], the mean haul \[m\], the least room of a zone. `None` for a key, and where no room
    /// is limited.
    pub fn of_job(&self, job: &sim::Job) -> Option<f64> {
        match self {
            Self::Rakers => Some(job.rakers.len() as f64),
            Self::Loaders => Some(job.loaders.len() as f64),
            Self::Bucket => job.loaders.first().map(|loader| loader.heaped_m3),
            Self::Haul => Some(mean_haul(job)),
            Self::Room => job.zones.iter().filter_map(|zone| zone.room).min().map(f64::from),
            Self::Key(_) => None,
        }
    }

    /// What stands at an axis or above a column.
    pub fn words(&self) -> &str {
        match self {
            Self::Rakers => "rakers",
            Self::Loaders => "loaders",
            Self::Bucket => "bucket, heaped",
            Self::Haul => "mean haul",
            Self::Room => "room, heaps a zone",
            Self::Key(key) => key,
        }
    }
}

impl fmt::Display for Knob {
    /// As typed.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Rakers => "rakers",
            Self::Loaders => "loaders",
            Self::Bucket => "bucket",
            Self::Haul => "haul",
            Self::Room => "room",
            Self::Key(key) => key,
        })
    }
}

/// Mean over the zones, by what they need, of the nearest way that a loader fits through \[m\].
pub(crate) fn mean_haul(job: &sim::Job) -> f64 {
    let open = |way: &&sim::Way| {
        job.loaders
            .iter()
            .any(|loader| way.passes.iter().all(|entry| fits(loader.width_m, job.passes[entry.pass].width_m)))
    };
    let total: f64 = job.zones.iter().map(|zone| zone.need_m3).sum();
    let weighed = job.zones.iter().map(|zone| {
        let nearest = zone.ways.iter().filter(open).map(|way| way.distance_m).fold(f64::INFINITY, f64::min);
        let weight = if total > 0.0 { zone.need_m3 / total } else { 1.0 / job.zones.len() as f64 };
        if nearest.is_finite() { nearest * weight } else { 0.0 }
    });
    weighed.sum()
}

/// So many in all, shared out over things of which there are so many: the one copied is as often there as it takes, of fewer
/// the first stay.
pub(crate) fn shared_out(wanted: u32, all: &[u32]) -> Vec<u32> {
    let copied = copied(all);
    let mut left = wanted;
    let one = |(at, count): (usize, &u32)| {
        let new = if at == copied { left } else { left.min(*count) };
        left -= new;
        new
    };
    all.iter().enumerate().map(one).collect()
}

/// Which of several things is copied where more are wanted: the last of which there is one.
pub(crate) fn copied(all: &[u32]) -> usize {
    all.iter().rposition(|count| *count > 0).unwrap_or(all.len().saturating_sub(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_knob_stands_where_the_job_has_it() {
        let job = crate::testing::made(&[("distance = \"20 yd\"", "distance = \"20 yd\"\nroom = 3")]).job;
        let at = |knob: Knob| knob.of_job(&job);
        assert_eq!([at(Knob::Rakers), at(Knob::Loaders), at(Knob::Room)], [Some(1.0), Some(1.0), Some(3.0)]);
        assert!((at(Knob::Haul).unwrap() - 20.0 * 0.9144).abs() < 1e-12);
        assert_eq!((at(Knob::Bucket), at(Knob::Key("x".into()))), (Some(job.loaders[0].heaped_m3), None));
    }

    #[test]
    fn the_last_that_is_there_is_copied_and_of_fewer_the_first_stay() {
        for (wanted, all, shared) in [
            (4, vec![1, 2, 0], vec![1, 3, 0]),
            (2, vec![1, 2, 0], vec![1, 1, 0]),
            (1, vec![2, 2], vec![1, 0]),
            (0, vec![1, 1], vec![0, 0]),
            (3, vec![0, 0], vec![0, 3]),
            (3, vec![], vec![]),
        ] {
            assert_eq!(shared_out(wanted, &all), shared, "{wanted} of {all:?}");
        }
    }

    #[test]
    fn every_word_has_a_knob_that_is_written_so() {
        for word in Knob::WORDS {
            assert_ne!(Knob::of(word), Knob::Key(word.into()));
            assert_eq!(Knob::of(word).to_string(), word);
            assert_eq!(Knob::of(&word.to_uppercase()), Knob::of(word));
        }
        assert_eq!(Knob::of(" raker.helper.count ").words(), "raker.helper.count");
    }
}
