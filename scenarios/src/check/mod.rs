//! What the things of a file mean together: everything impossible is a problem here, before a job is made.

mod ground;
mod hours;
mod material;
pub(crate) mod names;
mod people;
pub(crate) mod references;
pub(crate) mod volumes;

pub(crate) use ground::{fits, micrometres};

use crate::diagnostics::{Diagnostics, Place};
use crate::raw::Raw;

/// Checks a file; problems go to the diagnostics.
pub(crate) fn check(raw: &Raw, diagnostics: &mut Diagnostics<'_>) {
    let whole = Place::default();
    let parts = [
        ("material", raw.material.is_none(), "begin with [material] and name = \"wood chips, green\""),
        ("zone", raw.zones.is_empty(), "write [[zone]] with a name, a volume and a distance"),
        ("stockpile", raw.stockpiles.is_empty(), "write [[stockpile]] with a name and on_hand or deliveries"),
        ("loader", raw.loaders.is_empty(), "write [[loader]] with a name and its heaped capacity"),
    ];
    for (part, missing, right) in parts {
        if missing && !raw.has(part) {
            diagnostics.problem(&whole, "", format!("there is no {part}"), right);
        }
    }
    material::check(raw, diagnostics);
    names::check(raw, diagnostics);
    references::check(raw, diagnostics);
    people::check(raw, raw.has("raker"), diagnostics);
    hours::check(&raw.shift, diagnostics);
    volumes::check(raw, diagnostics);
    ground::check(raw, diagnostics);
}
