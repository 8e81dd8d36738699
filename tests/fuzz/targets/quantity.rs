//! Any text as a quantity.
#![no_main]

#[path = "../check/mod.rs"]
#[allow(dead_code, reason = "each target needs a part of it")]
mod check;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| check::quantity::check(bytes));
