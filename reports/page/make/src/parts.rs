//! What both kinds of page have in common: one script with all that runs, the worker in it as a text.

use crate::page::{Page, lean};
use crate::wasm::Wasm;
use anyhow::{Result, ensure};

/// A text as JavaScript writes it, such as can stand in HTML.
pub(crate) fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' | '\\' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            '<' | '\u{2028}' | '\u{2029}' | '\0'..='\u{1f}' => {
                out.push_str(&format!("\\u{:04x}", u32::from(letter)))
            }
            _ => out.push(letter),
        }
    }
    out.push('"');
    out
}

/// Everything that runs on the page; `engine` is a JavaScript expression that says where the engine is.
pub(crate) fn script(page: &Page, wasm: &Wasm, engine: &str) -> Result<String> {
    let mut worker = lean(&wasm.script)?;
    for name in ["unpack.js", "worker.js"] {
        worker.push_str(&lean(&page.beside_text(name)?)?);
    }
    let script = format!(
        "var heapcast = {{ build: {{ engine: {engine}, worker: {} }} }};\n{}",
        quoted(&worker),
        page.scripts
    );
    let ends = ["</script", "<!--"].into_iter().find(|end| script.contains(end));
    ensure!(ends.is_none(), "{ends:?} in a script would end it in the page");
    ensure!(!page.styles.contains("</style"), "</style in a style would end it in the page");
    Ok(script)
}
