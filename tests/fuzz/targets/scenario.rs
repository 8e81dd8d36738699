//! Any text as a scenario file, changed as a person would spoil it: see `mutate`.
#![no_main]

#[path = "../check/mod.rs"]
#[allow(dead_code, reason = "each target needs a part of it")]
mod check;
mod mutate;

use libfuzzer_sys::{fuzz_mutator, fuzz_target, fuzzer_mutate};
use scenarios::Texts;
use std::sync::LazyLock;

/// The one file of observed values that a shipped scenario names.
static FILES: LazyLock<Texts> = LazyLock::new(Texts::shipped);

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        check::reading::check(text, &FILES);
    }
});

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    let text = std::str::from_utf8(&data[..size]).ok().filter(|_| !seed.is_multiple_of(4));
    let Some(changed) = text.map(|text| mutate::changed(text, seed)) else {
        return fuzzer_mutate(data, size, max_size);
    };
    let length =
        (0..=changed.len().min(max_size)).rev().find(|at| changed.is_char_boundary(*at)).unwrap_or(0);
    data[..length].copy_from_slice(&changed.as_bytes()[..length]);
    length
});
