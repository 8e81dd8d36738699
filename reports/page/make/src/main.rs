//! Makes the planner page: a folder to put on any static host, and one HTML file with everything inside.
//!
//! ```sh
//! rustup target add wasm32-unknown-unknown
//! cargo run --manifest-path reports/page/make/Cargo.toml
//! ```
//!
//! Both are written to `target/page/` of the project. What is typed after `--` goes to the `cargo build` of the wasm file.

mod folder;
mod page;
mod parts;
mod policy;
mod single;
mod wasm;

use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};

fn main() -> Result<()> {
    let root = root()?;
    let more: Vec<String> = std::env::args().skip(1).collect();
    let wasm = wasm::made(&root, &more)?;
    let page = page::Page::read(&root.join("reports/page/web"))?;
    let out = root.join("target/page");
    let folder = out.join("folder");
    if folder.exists() {
        fs::remove_dir_all(&folder)?;
    }
    fs::create_dir_all(&folder)?;
    for (name, bytes) in folder::files(&page, &wasm)? {
        fs::write(folder.join(&name), &bytes).with_context(|| name.clone())?;
        told(&folder.join(&name), bytes.len());
    }
    // For tests: what is packed in both.
    fs::write(out.join("heapcast.wasm"), &wasm.bytes)?;
    told(&out.join("heapcast.wasm"), wasm.bytes.len());
    let single = single::file(&page, &wasm)?;
    let file = out.join("heapcast.html");
    fs::write(&file, &single)?;
    told(&file, single.len());
    Ok(())
}

/// The folder of the project: cargo says where this program is kept; started by itself it works where it is started.
fn root() -> Result<PathBuf> {
    let own = std::env::var_os("CARGO_MANIFEST_DIR").map(|own| Path::new(&own).join("../../.."));
    Ok(own.unwrap_or(std::env::current_dir()?).canonicalize()?)
}

fn told(file: &Path, bytes: usize) {
    println!("{:>9} bytes  {}", bytes, file.display());
}
