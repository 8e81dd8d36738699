//! `heapcast materials`: the built-in table of materials.

use crate::cli::MaterialsArgs;
use crate::failure::Failure;
use crate::say;
use scenarios::{Material, materials, materials_called};

pub(super) fn run(args: &MaterialsArgs) -> Result<(), Failure> {
    let words = args.words.join(" ");
    let found: Vec<&Material> =
        if words.trim().is_empty() { materials().iter().collect() } else { materials_called(&words) };
    if found.is_empty() {
        return Err(Failure::asked(format!(
            "no material of the built-in table goes by \"{words}\"; heapcast materials lists them all. For any other write its \
             name, density and fill_factor under [material]"
        )));
    }
    say::out(&reports::materials::materials(&found, args.units, say::width()))
}
