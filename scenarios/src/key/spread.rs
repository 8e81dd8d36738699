//! Keys of `[spread]`.

use super::{Holds, Key, LeftOut, key};
use crate::defaults::{DAYS, LOADS};

/// Job factors, in the model's order.
pub(crate) const DAYS_KEYS: &[Key] = &[
    factor(DAYS[0], "\"10 %\"", "How whole days differ for everybody: weather, light, ground."),
    factor(DAYS[1], "\"10 %\"", "How the pace of loading and dumping differs."),
    factor(DAYS[2], "\"10 %\"", "How driving times differ."),
    factor(DAYS[3], "\"10 %\"", "How the pace of raking differs."),
    factor(DAYS[4], "\"10 %\"", "How full buckets are on the whole."),
    factor(DAYS[5], "\"10 %\"", "What the ground really takes, compared with what was measured."),
    factor(DAYS[6], "\"10 %\"", "What a truck really brings, compared with what was ordered."),
];
/// Load noise, in the model's order.
pub(crate) const LOADS_KEYS: &[Key] = &[
    factor(LOADS[0], "\"20 %\"", "How full the bucket is."),
    factor(LOADS[1], "\"20 %\"", "How loading times differ."),
    factor(LOADS[2], "\"20 %\"", "How loaded trips differ."),
    factor(LOADS[3], "\"20 %\"", "How dumping times differ."),
    factor(LOADS[4], "\"20 %\"", "How empty trips differ."),
    factor(LOADS[5], "\"20 %\"", "How the raking of equal heaps differs."),
];
pub(crate) const KEYS: &[Key] = &[
    key(
        "days",
        Holds::Table(DAYS_KEYS),
        LeftOut::Taken("the built-in table, or what low, typical and high of the quantities say"),
        "{ day = \"10 %\" }",
        "How one day differs from the next; the same for all loads of a day.",
    ),
    key(
        "loads",
        Holds::Table(LOADS_KEYS),
        LeftOut::Taken("the built-in table, or the distributions of the quantities"),
        "{ loading = \"20 %\" }",
        "How one load differs from the next on the same day.",
    ),
];

/// A row of the built-in table as a key.
const fn factor(row: (&'static str, f64, &str), example: &'static str, means: &'static str) -> Key {
    key(row.0, Holds::Spread, LeftOut::Differs(row.1), example, means)
}
