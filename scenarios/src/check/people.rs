//! Loaders and rakers: somebody hauls, somebody rakes, and not too many.

use crate::diagnostics::{At, Diagnostics, Place};
use crate::raw::{Raw, RawLoader};
use sim::{MOST_LOADERS, MOST_RAKERS};

/// Longest mean length of a stoppage over the mean gap that is believable.
const LONGEST_STOPPAGE: f64 = 10.0;

pub(super) fn check(raw: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let number = |count: &Option<At<u32>>| count.as_ref().map_or(1, |count| count.value as usize);
    let loaders: usize = raw.loaders.iter().map(|loader| number(&loader.count)).sum();
    if loaders == 0
        && let Some(count) = raw.loaders.iter().find_map(|loader| loader.count.as_ref())
    {
        diagnostics.wrong_at(count, "no loader is left", "keep at least one loader");
    }
    if loaders > MOST_LOADERS
        && let Some(loader) = raw.loaders.last()
    {
        let what = format!("there are {loaders} loaders in all");
        diagnostics.problem(&loader.named.place, "", what, format!("give at most {MOST_LOADERS}"));
    }
    let rakers: usize = raw.rakers.iter().map(|raker| number(&raker.count)).sum();
    if rakers > MOST_RAKERS
        && let Some(raker) = raw.rakers.last()
    {
        let what = format!("there are {rakers} rakers in all");
        diagnostics.problem(&raker.named.place, "", what, format!("give at most {MOST_RAKERS}"));
    }
    let share = raw.crew.spread_share.as_ref().map_or(0.0, |share| share.value);
    let unread = raw.has("raker") && raw.rakers.is_empty();
    if rakers == 0 && share < 1.0 && !raw.crew.spread_share_is_wrong && !unread {
        diagnostics.join(nobody_rakes(raw));
    }
    diagnostics.join(raw.loaders.iter().map(machine).collect());
    diagnostics
}

/// It works longer than it stands, and its bucket holds more heaped than struck.
fn machine(loader: &RawLoader) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    if let Some(stoppages) = &loader.stoppages
        && stoppages.length.value.mean() > LONGEST_STOPPAGE * stoppages.gap.value
    {
        let what = format!("it stands still more than {LONGEST_STOPPAGE} times as long as it works");
        diagnostics.wrong_at(
            &stoppages.length,
            what,
            "shorten the stoppages, or lengthen the gap between them",
        );
    }
    if let (Some(struck), Some(heaped)) = (&loader.struck, &loader.heaped)
        && struck.value > heaped.value
    {
        let what = format!("a bucket holds no more struck than heaped, which is {}", heaped.typed);
        diagnostics.wrong_at(struck, what, "check both; heaped is the larger figure");
    }
    diagnostics
}

fn nobody_rakes(raw: &Raw) -> Diagnostics {
    let right =
        "write [[raker]] with a name, or spread_share = \"100 %\" under [crew] if the loader spreads it all";
    let count = raw.rakers.iter().find_map(|raker| raker.count.as_ref());
    match (&raw.crew.spread_share, count) {
        (Some(share), _) => Diagnostics::of_value(share, "nobody rakes what the loaders leave", right),
        (None, Some(count)) => Diagnostics::of_value(count, "nobody is left to rake", right),
        (None, None) => Diagnostics::of(&Place::default(), "", "there is nobody to rake", right),
    }
}
