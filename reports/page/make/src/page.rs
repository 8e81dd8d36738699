//! The page as it is written: its HTML, and the styles and scripts that it names, in its order.

use anyhow::{Context, Result, bail, ensure};
use std::fs;
use std::path::{Path, PathBuf};

/// The page as it is written.
pub(crate) struct Page {
    folder: PathBuf,
    /// HTML up to its first style or script, without a policy of its own.
    head: String,
    /// HTML after the last of them.
    rest: String,
    /// All styles.
    pub(crate) styles: String,
    /// All scripts.
    pub(crate) scripts: String,
}

impl Page {
    /// Reads it. A style or script stands on a line of its own in the HTML.
    pub(crate) fn read(folder: &Path) -> Result<Self> {
        let text = |name: &str| fs::read_to_string(folder.join(name)).with_context(|| name.to_owned());
        let mut page = Self {
            folder: folder.to_owned(),
            head: String::new(),
            rest: String::new(),
            styles: String::new(),
            scripts: String::new(),
        };
        for line in text("index.html")?.lines() {
            let named = |before: &str, after: &str| line.trim().strip_prefix(before)?.strip_suffix(after);
            if let Some(name) = named("<link rel=\"stylesheet\" href=\"", "\">") {
                page.styles.push_str(&text(name)?);
            } else if let Some(name) = named("<script defer src=\"", "\"></script>") {
                page.scripts.push_str(&text(name)?);
            } else if line.contains("<script") || line.contains("\"stylesheet\"") {
                bail!("index.html has a line that is not understood: {line}");
            } else if !line.contains("http-equiv=\"Content-Security-Policy\"") {
                let part = if page.scripts.is_empty() { &mut page.head } else { &mut page.rest };
                part.push_str(line);
                part.push('\n');
            }
        }
        ensure!(
            !page.scripts.is_empty() && !page.styles.is_empty(),
            "index.html names no style or no script"
        );
        ensure!(page.head.contains(CHARSET), "index.html has no {CHARSET}");
        page.styles = lean(&page.styles)?;
        for sign in ["{", ":", ";", ","] {
            page.styles = page.styles.replace(&format!("{sign} "), sign);
        }
        page.styles = page.styles.replace(" {", "{").replace("; }", "}").replace(";}", "}");
        page.scripts = lean(&page.scripts)?;
        Ok(page)
    }

    /// Another file beside it.
    pub(crate) fn beside(&self, name: &str) -> Result<Vec<u8>> {
        fs::read(self.folder.join(name)).with_context(|| name.to_owned())
    }

    /// Another file beside it that is a text.
    pub(crate) fn beside_text(&self, name: &str) -> Result<String> {
        Ok(String::from_utf8(self.beside(name)?)?)
    }

    /// The HTML with a policy, and with this in place of its styles and scripts.
    pub(crate) fn html(&self, policy: &str, parts: &str) -> String {
        // A policy in the page holds from where it stands on; before it goes only what says how to read it.
        let policy = format!("{CHARSET}\n<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
        format!("{}{parts}{}", self.head.replacen(CHARSET, &policy, 1), self.rest)
    }
}

pub(crate) const CHARSET: &str = "<meta charset=\"utf-8\">";

/// A script or a style without its notes, the types in it, and the spaces its lines begin with.
pub(crate) fn lean(text: &str) -> Result<String> {
    let (mut out, mut in_note) = (String::new(), false);
    for line in text.lines() {
        ensure!(line.matches('`').count() % 2 == 0, "a text over several lines would be changed: {line}");
        let mut rest = line.trim_start();
        // Within a script that begins otherwise the words have no effect.
        if rest.starts_with("//") || rest == "\"use strict\";" {
            continue;
        }
        loop {
            if in_note {
                let Some((_, after)) = rest.split_once("*/") else { break };
                (rest, in_note) = (after.trim_start(), false);
            }
            let Some((before, after)) = rest.split_once("/*") else { break };
            ensure!(before.matches('"').count() % 2 == 0, "a text would be taken for a note: {line}");
            out.push_str(before);
            (rest, in_note) = (after, true);
        }
        if !in_note {
            out.push_str(rest);
        }
        if !out.is_empty() && !out.ends_with('\n') {
            out.push('\n');
        }
    }
    Ok(out)
}
