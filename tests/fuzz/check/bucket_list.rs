//! A list of buckets is read or refused, and every bucket of it can be tried on a loader.

use super::reading;
use scenarios::{Scenario, Selection, Texts, buckets_text, read_text, shipped, with_bucket};
use sim::Plan;
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// A shipped job with a gate and a hydraulic lift.
static ARENA: LazyLock<Scenario> = LazyLock::new(|| {
    let (_, text) = shipped().iter().find(|(name, _)| *name == "riding-arena").expect("a shipped job");
    read_text(text, "arena.toml", Texts::default(), &Selection::default()).unwrap_or_else(|r| panic!("{r}"))
});

/// Takes the text as a list.
pub(crate) fn check(text: &str) {
    let list = match buckets_text(text, reading::FILE) {
        Err(refusal) => return reading::refused(&refusal, text),
        Ok(list) => list,
    };
    assert!((1..=100).contains(&list.buckets.len()), "{} buckets", list.buckets.len());
    let names: BTreeSet<&str> = list.buckets.iter().map(|bucket| bucket.name.as_str()).collect();
    assert_eq!(names.len(), list.buckets.len(), "{names:?}");
    let today = list.buckets.first();
    for bucket in &list.buckets {
        reading::printable(&bucket.name);
        assert_eq!(list.find(&bucket.name), Ok(bucket));
        let figures = [Some(bucket.heaped_m3), bucket.width_m, bucket.mass_kg];
        assert!(figures.into_iter().flatten().all(|figure| figure.is_finite() && figure > 0.0), "{bucket:?}");
        assert!(bucket.price.is_none_or(|price| price.is_finite() && price >= 0.0), "{bucket:?}");
        assert!(bucket.struck_m3.is_none_or(|struck| struck <= bucket.heaped_m3), "{bucket:?}");
        let fitted = with_bucket(&ARENA, 0, bucket, today);
        assert!(fitted.job.is_none_or(|job| Plan::check(&job) == Ok(())), "{bucket:?}");
        let said = [fitted.lift.words, fitted.gates.words];
        said.iter().for_each(|words| reading::printable(words));
    }
}
