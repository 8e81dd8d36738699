//! One HTML file with everything inside.
//!
//! It is written in UTF-16 with its mark, which goes before whatever a host says of a file: so a sign of two bytes can hold 15 bits,
//! where a page in UTF-8 takes four signs for three bytes.

use crate::page::{CHARSET, Page, lean};
use crate::parts::script;
use crate::policy::{digest, policy};
use crate::wasm::{Wasm, packed};
use anyhow::{Result, ensure};
use base64::prelude::{BASE64_STANDARD, Engine};

/// The file. It may load nothing at all, not even from where it came from.
pub(crate) fn file(page: &Page, wasm: &Wasm) -> Result<Vec<u8>> {
    let script = script(page, wasm, "{ inside: \"engine\" }")?;
    let inside = packed(format!("{}\0{script}", page.styles).as_bytes())?;
    let first = lean(&[page.beside_text("unpack.js")?, page.beside_text("single.js")?].concat())?;
    let policy = policy(&[digest(&first), digest(&script)], "", "");
    // A script of another type is no script: a text that is kept in the page.
    let kept = |id: &str, bytes: &[u8]| {
        format!("<script type=\"text/plain\" id=\"{id}\">{}</script>\n", texted(bytes))
    };
    let parts = format!("{}<script>{first}</script>\n", kept("inside", &inside));
    let icon = format!("data:image/svg+xml;base64,{}", BASE64_STANDARD.encode(page.beside("icon.svg")?));
    let html = page.html(&policy, &parts);
    let html = exchanged(&html, &format!("{CHARSET}\n"), "")?;
    let html = exchanged(&html, "<link rel=\"manifest\" href=\"manifest.webmanifest\">\n", "")?;
    let html = exchanged(&html, "href=\"icon.svg\"", &format!("href=\"{icon}\""))?;
    let html = exchanged(&html, "</body>", &format!("{}</body>", kept("engine", &wasm.packed)))?;
    Ok(format!("\u{feff}{html}").encode_utf16().flat_map(u16::to_le_bytes).collect())
}

/// The page with this in place of that, which has to be there: what is left in by mistake would not be seen.
fn exchanged(html: &str, that: &str, this: &str) -> Result<String> {
    ensure!(html.contains(that), "index.html has no {}", that.trim());
    Ok(html.replacen(that, this, 1))
}

/// The first of 32,768 signs in a row, none of which means anything in HTML.
const FIRST: u32 = 0x1000;

/// Bytes as a text, 15 bits a sign, the lowest first.
fn texted(bytes: &[u8]) -> String {
    let (mut held, mut bits, mut text) = (0, 0, String::new());
    let mut put = |held: u32| text.extend(char::from_u32(FIRST + (held & 0x7fff)));
    for byte in bytes {
        held |= u32::from(*byte) << bits;
        bits += 8;
        if bits >= 15 {
            put(held);
            (held, bits) = (held >> 15, bits - 15);
        }
    }
    if bits > 0 {
        put(held);
    }
    text
}
