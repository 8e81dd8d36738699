//! What the things of a file mean together: everything impossible is a problem here, before a job is made.

mod ground;
mod hours;
mod material;
pub(crate) mod names;
mod people;
pub(crate) mod references;
pub(crate) mod volumes;

use crate::diagnostics::{Diagnostics, Place};
use crate::raw::Raw;

/// Everything that is impossible in a file.
pub(crate) fn check(raw: &Raw) -> Diagnostics {
    let all = [
        parts(raw),
        material::check(raw),
        names::check(raw),
        references::check(raw),
        people::check(raw),
        hours::check(&raw.shift),
        volumes::check(raw),
        ground::check(raw),
    ];
    all.into_iter().collect()
}

/// Something of each kind is there.
fn parts(raw: &Raw) -> Diagnostics {
    let parts = [
        ("material", raw.material.is_none(), "begin with [material] and name = \"wood chips, green\""),
        ("zone", raw.zones.is_empty(), "write [[zone]] with a name, a volume and a distance"),
        ("stockpile", raw.stockpiles.is_empty(), "write [[stockpile]] with a name and on_hand or deliveries"),
        ("loader", raw.loaders.is_empty(), "write [[loader]] with a name and its heaped capacity"),
    ];
    let mut diagnostics = Diagnostics::default();
    for (part, _, right) in parts.iter().filter(|(part, missing, _)| *missing && !raw.has(part)) {
        diagnostics.problem(&Place::default(), "", format!("there is no {part}"), *right);
    }
    diagnostics
}
