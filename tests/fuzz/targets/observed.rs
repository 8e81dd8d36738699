//! Any bytes as a file of observed values.
#![no_main]

#[path = "../check/mod.rs"]
#[allow(dead_code, reason = "each target needs a part of it")]
mod check;

use libfuzzer_sys::fuzz_target;
use std::path::PathBuf;
use std::sync::LazyLock;

/// A folder of this process's own.
static FOLDER: LazyLock<PathBuf> = LazyLock::new(|| {
    let path = std::env::temp_dir().join(format!("heapcast-fuzz-{}", std::process::id()));
    std::fs::create_dir_all(&path).expect("a folder for files that come and go");
    path
});

fuzz_target!(|bytes: &[u8]| check::observed::check(bytes, &FOLDER));
