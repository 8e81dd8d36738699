//! The material is known, or all that must be known of it is said.

use crate::ledger::Ledger;
use crate::materials::{find, materials};
use crate::nearest::nearest;
use crate::raw::Raw;

pub(super) fn check(raw: &Raw, ledger: &mut Ledger<'_>) {
    let Some(material) = &raw.material else { return };
    let Some(name) = &material.name else { return };
    if find(&name.value).is_some() || material.has_density && material.has_fill_factor {
        return;
    }
    let near = nearest(&name.value, materials().iter().map(|material| material.name.as_str()));
    let own = "or give density and fill_factor yourself";
    let right = match near {
        Some(near) => format!("the nearest in the built-in table is \"{near}\"; use it, {own}"),
        None => {
            let first: Vec<&str> =
                materials().iter().take(6).map(|material| material.name.as_str()).collect();
            format!("the built-in table has \"{}\" and more; use one, {own}", first.join("\", \""))
        }
    };
    ledger.wrong_at(name, "this material is not in the built-in table", right);
}
