//! Any text as a change of a job, or a sweep, typed on the command line.
#![no_main]

#[path = "../check/mod.rs"]
#[allow(dead_code, reason = "each target needs a part of it")]
mod check;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        check::change::check(text);
    }
});
