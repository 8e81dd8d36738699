//! One HTML file with everything inside.

use crate::page::Page;
use crate::parts::script;
use crate::policy::policy;
use crate::wasm::Wasm;
use anyhow::Result;
use base64::prelude::{BASE64_STANDARD, Engine};
use flate2::Compression;
use flate2::write::DeflateEncoder;
use std::io::Write;

/// The file. It may load nothing at all, not even from where it came from.
pub(crate) fn file(page: &Page, wasm: &Wasm) -> Result<String> {
    let script = script(page, wasm, "{ inside: \"engine\" }")?;
    let mut encoder = DeflateEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(&wasm.bytes)?;
    let packed = BASE64_STANDARD.encode(encoder.finish()?);
    let policy = policy(&script, "", "");
    // A script of another type is no script: a text that is kept in the page.
    let parts = format!(
        "<style>{}</style>\n<script type=\"text/plain\" id=\"engine\">{packed}</script>\n",
        page.styles
    );
    let html =
        page.html(&policy, &parts).replace("<link rel=\"manifest\" href=\"manifest.webmanifest\">\n", "");
    let icon = format!("data:image/svg+xml;base64,{}", BASE64_STANDARD.encode(page.beside("icon.svg")?));
    let html = html.replace("href=\"icon.svg\"", &format!("href=\"{icon}\""));
    // What is inside does not wait for the page as a file of its own does: it stands at its end.
    Ok(html.replacen("</body>", &format!("<script>{script}</script>\n</body>"), 1))
}
