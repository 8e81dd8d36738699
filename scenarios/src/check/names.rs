//! Every thing of a kind has a name of its own, copies included.

use crate::diagnostics::{At, Diagnostics};
use crate::raw::Raw;
use crate::signs::likeness;
use std::collections::BTreeMap;

pub(super) fn check(raw: &Raw, diagnostics: &mut Diagnostics<'_>) {
    unique("zones", raw.zones.iter().map(|zone| (zone.named.name.as_ref(), 1)), diagnostics);
    unique("stockpiles", raw.stockpiles.iter().map(|pile| (pile.named.name.as_ref(), 1)), diagnostics);
    unique("passes", raw.passes.iter().map(|pass| (pass.named.name.as_ref(), 1)), diagnostics);
    let count = |count: &Option<At<u32>>| count.as_ref().map_or(1, |count| count.value);
    let loaders = raw.loaders.iter().map(|loader| (loader.named.name.as_ref(), count(&loader.count)));
    unique("loaders", loaders, diagnostics);
    let rakers = raw.rakers.iter().map(|raker| (raker.named.name.as_ref(), count(&raker.count)));
    unique("rakers", rakers, diagnostics);
}

fn unique<'r>(
    kind: &str,
    things: impl Iterator<Item = (Option<&'r At<String>>, u32)>,
    diagnostics: &mut Diagnostics<'_>,
) {
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
}

/// The names of the copies of a thing.
pub(crate) fn copies(name: &str, count: u32) -> Vec<String> {
    if count == 1 { vec![name.to_owned()] } else { (1..=count).map(|i| format!("{name} {i}")).collect() }
}
