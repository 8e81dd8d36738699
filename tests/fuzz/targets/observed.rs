//! Any bytes as a file of observed values.
#![no_main]

#[path = "../check/mod.rs"]
#[allow(dead_code, reason = "each target needs a part of it")]
mod check;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| check::observed::check(bytes));
