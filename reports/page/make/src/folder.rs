//! A folder to put on any static host.

use crate::page::{Page, lean};
use crate::parts::{quoted, script};
use crate::policy::{digest, policy};
use crate::wasm::Wasm;
use anyhow::Result;

/// Name and bytes of every file. Each names those that it needs by their digests, so that no two versions are ever mixed.
pub(crate) fn files(page: &Page, wasm: &Wasm) -> Result<Vec<(String, Vec<u8>)>> {
    let engine = format!("{{ file: \"heapcast.lzma\", digest: \"{}\" }}", digest(&wasm.packed));
    let script = script(page, wasm, &engine)?;
    let parts = format!(
        "<link rel=\"stylesheet\" href=\"heapcast.css\" integrity=\"{}\">\n\
         <script defer src=\"heapcast.js\" integrity=\"{}\"></script>\n",
        digest(&page.styles),
        digest(&script),
    );
    let policy = policy(&[digest(&script)], "'self' ", "connect-src 'self'; manifest-src 'self'; ");
    let mut files = vec![
        ("index.html".to_owned(), page.html(&policy, &parts).into_bytes()),
        ("heapcast.css".to_owned(), page.styles.clone().into_bytes()),
        ("heapcast.js".to_owned(), script.into_bytes()),
        ("heapcast.lzma".to_owned(), wasm.packed.clone()),
        ("manifest.webmanifest".to_owned(), page.beside("manifest.webmanifest")?),
        ("icon.svg".to_owned(), page.beside("icon.svg")?),
    ];
    files.push(("sw.js".to_owned(), keeper(page, &files)?));
    Ok(files)
}

/// The service worker, which keeps all of them on the device.
fn keeper(page: &Page, files: &[(String, Vec<u8>)]) -> Result<Vec<u8>> {
    let list: Vec<String> =
        files.iter().map(|(name, bytes)| format!("[{}, {}]", quoted(name), quoted(&digest(bytes)))).collect();
    let list = list.join(", ");
    let name = digest(&list);
    let start = format!("const BUILD = {{ name: \"heapcast {name}\", files: [{list}] }};\n");
    Ok([start, lean(&page.beside_text("sw.js")?)?].concat().into_bytes())
}
