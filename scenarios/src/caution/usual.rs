//! The usual cautions: they belong to every job with a loader and defer to those who know the machine and the place.

use super::entry::{Caution, Weight};

const MANUAL: &str =
    "The machine's manual, local codes and licensed practice come before anything printed here.";

const USUAL: [(&str, &str, &str); 5] = [
    (
        "ballast",
        "A loader with a full bucket can tip forward, or sideways in a turn.",
        "Ballast it as its manual says, lift no more than it allows, and turn slowly when loaded.",
    ),
    (
        "carry-low",
        "A bucket carried high moves the weight up and hides the way.",
        "Carry it as low as the ground allows, lift it only to dump, and lower it before leaving the seat.",
    ),
    (
        "slopes",
        "Slopes, soft edges and holes tip machines that stand well on level ground.",
        "Walk the way first, drive straight up and down with the heavy end uphill, and keep off slopes beyond the manual's limit.",
    ),
    (
        "people-near-loader",
        "People who rake near a moving loader are not always seen.",
        "Agree on signs, stand clear until the bucket is down and the driver has seen you, and keep children and animals away.",
    ),
    ("manual-first", "This forecast is about time, not about what a machine or a place allows.", MANUAL),
];

pub(super) fn cautions() -> Vec<Caution> {
    let usual = |(kind, cause, remedy): (&'static str, &str, &str)| Caution {
        weight: Weight::Usual,
        kind,
        cause: cause.into(),
        remedy: remedy.into(),
    };
    USUAL.into_iter().map(usual).collect()
}
