//! What a page may load and run: itself and nothing else.

use base64::prelude::{BASE64_STANDARD, Engine};
use sha2::{Digest, Sha256};

/// The SHA-256 of something, as pages name it.
pub(crate) fn digest(bytes: impl AsRef<[u8]>) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(bytes)))
}

/// The content security policy of a page: its scripts by their digests, a worker made from a text in it, pictures and reports made
/// in it; `own` is where else these may come from, `more` what else is allowed.
///
/// Reports are shown in a frame, which takes over the policy of the page: they bring their style with them, and no script.
pub(crate) fn policy(scripts: &[String], own: &str, more: &str) -> String {
    format!(
        "default-src 'none'; script-src {own}{} 'wasm-unsafe-eval'; style-src {own}'unsafe-inline'; worker-src {own}blob:; \
         img-src {own}data: blob:; frame-src blob:; {more}base-uri 'none'; form-action 'none'",
        scripts.iter().map(|one| format!("'{one}'")).collect::<Vec<_>>().join(" "),
    )
}
