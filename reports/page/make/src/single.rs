//! One HTML file with everything inside.

use crate::page::Page;
use crate::parts::script;
use crate::policy::policy;
use crate::wasm::Wasm;
use anyhow::{Result, ensure};
use base64::prelude::{BASE64_STANDARD, Engine};

/// The file. It may load nothing at all, not even from where it came from.
pub(crate) fn file(page: &Page, wasm: &Wasm) -> Result<String> {
    let script = script(page, wasm, "{ inside: \"engine\" }")?;
    let packed = texted(&wasm.packed);
    let policy = policy(&script, "", "");
    // A script of another type is no script: a text that is kept in the page.
    let parts = format!(
        "<style>{}</style>\n<script type=\"text/plain\" id=\"engine\">{packed}</script>\n",
        page.styles
    );
    let icon = format!("data:image/svg+xml;base64,{}", BASE64_STANDARD.encode(page.beside("icon.svg")?));
    let html = page.html(&policy, &parts);
    let html = exchanged(&html, "<link rel=\"manifest\" href=\"manifest.webmanifest\">\n", "")?;
    let html = exchanged(&html, "href=\"icon.svg\"", &format!("href=\"{icon}\""))?;
    // What is inside does not wait for the page as a file of its own does: it stands at its end.
    exchanged(&html, "</body>", &format!("<script>{script}</script>\n</body>"))
}

/// The page with this in place of that, which has to be there: what is left in by mistake would not be seen.
fn exchanged(html: &str, that: &str, this: &str) -> Result<String> {
    ensure!(html.contains(that), "index.html has no {}", that.trim());
    Ok(html.replacen(that, this, 1))
}

/// Bytes as a text in which two signs, of 91 that mean nothing in HTML, stand for 13 bits: a tenth shorter than base64.
fn texted(bytes: &[u8]) -> String {
    let signs: Vec<char> = ('!'..='~').filter(|sign| !['"', '<', '\\'].contains(sign)).collect();
    let (mut held, mut bits, mut text) = (0, 0, String::new());
    let mut put = |held: u32| text.extend([signs[held as usize / 91], signs[held as usize % 91]]);
    for byte in bytes {
        held |= u32::from(*byte) << bits;
        bits += 8;
        if bits >= 13 {
            put(held & 0x1fff);
            (held, bits) = (held >> 13, bits - 13);
        }
    }
    if bits > 0 {
        put(held);
    }
    text
}
