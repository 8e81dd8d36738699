//! Every thing of a kind has a name of its own, copies included.

use crate::diagnostics::{At, Diagnostics};
use crate::raw::{Named, Raw};
use crate::signs::likeness;
use std::collections::BTreeMap;

pub(super) fn check(raw: &Raw) -> Diagnostics {
    fn once(named: &Named) -> (Option<&At<String>>, u32) {
        (named.name.as_ref(), 1)
    }
    let count = |count: &Option<At<u32>>| count.as_ref().map_or(1, |count| count.value);
    let loaders = raw.loaders.iter().map(|loader| (loader.named.name.as_ref(), count(&loader.count)));
    let rakers = raw.rakers.iter().map(|raker| (raker.named.name.as_ref(), count(&raker.count)));
    let all = [
        unique("zones", raw.zones.iter().map(|zone| once(&zone.named))),
        unique("stockpiles", raw.stockpiles.iter().map(|pile| once(&pile.named))),
        unique("passes", raw.passes.iter().map(|pass| once(&pass.named))),
        unique("loaders", loaders),
        unique("rakers", rakers),
    ];
    all.into_iter().collect()
}

fn unique<'r>(kind: &str, things: impl Iterator<Item = (Option<&'r At<String>>, u32)>) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let mut taken: BTreeMap<String, &At<String>> = BTreeMap::new();
    let mut typed: BTreeMap<String, &str> = BTreeMap::new();
    let right = "give each a name of its own";
    for (name, count) in things {
        let Some(name) = name else { continue };
        if let Some(other) = typed.insert(likeness(&name.value), &name.value) {
            let what = if other == name.value {
                format!("two {kind} have this name")
            } else {
                format!("two {kind} have names that look the same")
            };
            diagnostics.wrong_at(name, what, right);
            continue;
        }
        for copy in copies(&name.value, count) {
            if let Some(other) = taken.insert(copy.clone(), name) {
                let both = [&other.value, &name.value];
                let what =
                    format!("copies of \"{}\" and \"{}\" would both be called \"{copy}\"", both[0], both[1]);
                diagnostics.wrong_at(name, what, right);
                break;
            }
        }
    }
    diagnostics
}

/// The names of the copies of a thing.
pub(crate) fn copies(name: &str, count: u32) -> Vec<String> {
    if count == 1 { vec![name.to_owned()] } else { (1..=count).map(|i| format!("{name} {i}")).collect() }
}
