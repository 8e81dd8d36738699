//! The wasm file and the script that goes with it.

use anyhow::{Result, ensure};
use lzma_rust2::{LzmaOptions, LzmaWriter};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

const TARGET: &str = "wasm32-unknown-unknown";
/// Its name in the workspace's `Cargo.toml`.
const PROFILE: &str = "page";

/// What the page works with.
pub(crate) struct Wasm {
    /// The engine as it is run.
    pub(crate) bytes: Vec<u8>,
    /// The same as it is loaded: LZMA with its head.
    pub(crate) packed: Vec<u8>,
    /// What JavaScript calls it by: sets the global `wasm_bindgen`.
    pub(crate) script: String,
}

/// Builds it; `more` is typed after the rest.
pub(crate) fn made(root: &Path, more: &[String]) -> Result<Wasm> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let folder = root.join("target/web");
    let mut command = Command::new(cargo);
    // Of this kind alone: beside a library for other crates nothing would be optimised as a whole.
    command.current_dir(root).args(["rustc", "--locked", "--package", "heapcast-page", "--lib"]);
    command.args(["--crate-type", "cdylib"]);
    command.args(["--target", TARGET, "--profile", PROFILE]).arg("--target-dir").arg(&folder).args(more);
    // Those of this program's own build.
    for (name, _) in std::env::vars_os() {
        let name = name.to_string_lossy();
        if name.starts_with("CARGO_PKG_") || name.starts_with("CARGO_MANIFEST_") {
            command.env_remove(&*name);
        }
    }
    command.env("CARGO_ENCODED_RUSTFLAGS", flags());
    ensure!(
        command.status()?.success(),
        "the engine was not built; where {TARGET} is missing: rustup target add {TARGET}"
    );
    bound(&folder.join(TARGET).join(PROFILE).join("page.wasm"))
}

/// Flags of the compiler: those already wanted, that no folder of this machine is named in what is handed out, and that digests are
/// made by the smaller of two ways.
fn flags() -> String {
    let wanted = std::env::var("CARGO_ENCODED_RUSTFLAGS").or_else(|_| {
        std::env::var("RUSTFLAGS").map(|flags| flags.split_whitespace().collect::<Vec<_>>().join("\u{1f}"))
    });
    let home = std::env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cargo")));
    let remapped = home.map(|home| format!("--remap-path-prefix={}=cargo", home.display()));
    let digests = ["--cfg", "sha2_backend_soft=\"compact\""].map(str::to_owned);
    wanted
        .into_iter()
        .chain(remapped)
        .chain(digests)
        .filter(|flag| !flag.is_empty())
        .collect::<Vec<_>>()
        .join("\u{1f}")
}

fn bound(file: &Path) -> Result<Wasm> {
    let mut output = Bindgen::new()
        .input_path(file)
        .no_modules(true)?
        .typescript(false)
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate_output()?;
    // What only other tools read.
    output.wasm_mut().customs.remove_raw("target_features");
    let bytes = output.wasm_mut().emit_wasm();
    Ok(Wasm { packed: packed(&bytes)?, bytes, script: output.js().to_owned() })
}

/// LZMA with its head, as small as its ways of looking make it.
pub(crate) fn packed(bytes: &[u8]) -> Result<Vec<u8>> {
    let options =
        LzmaOptions { lc: 4, pb: 0, nice_len: 273, depth_limit: 2_000, ..LzmaOptions::with_preset(9) };
    let mut packer = LzmaWriter::new_use_header(Vec::new(), &options, Some(bytes.len() as u64))?;
    packer.write_all(bytes)?;
    Ok(packer.finish()?)
}
